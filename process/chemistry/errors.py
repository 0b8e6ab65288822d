"""What the kit says when it is asked for something that cannot be computed."""


class ChemistryError(ValueError):
    """A figure cannot be computed; the message names the input and says what to do."""

    def __init__(self, name: str, problem: str) -> None:
        self.input = name
        self.problem = problem
        super().__init__(f"{name.replace('_', ' ')}: {problem}")
