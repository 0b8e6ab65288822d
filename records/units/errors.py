"""The one exception that reading a person's text may raise."""


class UnitsError(ValueError):
    """A typed quantity cannot be read; the message is one sentence that says what to do."""
