"""The laws are tried on the same examples each time, and a busy machine does not fail them."""

from hypothesis import settings

settings.register_profile("steady", deadline=None, derandomize=True, database=None)
settings.load_profile("steady")
