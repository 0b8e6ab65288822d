"""Why a paper cannot be printed as it stands; its own kinds stand beside what they refuse."""


class CannotPrint(ValueError):
    """A text or a picture that would not come out as it was entered; the message says what to do."""
