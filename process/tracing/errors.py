"""Why a file is not taken, or what must be said before it can be read."""


class TraceRefused(ValueError):
    """One sentence for the person: what is wrong and what to do, with the line where it stands."""

    def __init__(self, sentence: str, line: int | None = None) -> None:
        self.line = line
        super().__init__(f"Line {line}: {sentence}" if line else sentence[:1].upper() + sentence[1:])


class AskFirst(ValueError):
    """The file can be read once a person has answered: `field` is the entry of the mapping that is asked for."""

    def __init__(self, field: str, sentence: str) -> None:
        self.field = field
        super().__init__(sentence)
