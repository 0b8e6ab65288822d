"""How fast it is, on the demo's records and 2000 more: `python -m tests.benchmarks`. No part of the tests."""
