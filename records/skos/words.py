"""A word as it travels: what SKOS has a place for, and three columns of our own."""

from dataclasses import dataclass, field

from rdflib import Namespace

# What the register keeps of a word and SKOS has no property for.
OWN = Namespace("urn:electrotype-register:vocabulary:")
LANGUAGE = "en"


@dataclass(frozen=True)
class Word:
    """A term of one scheme; `line` is where it stands in the file that was read."""

    scheme: str
    group: str
    label: str
    definition: str = ""
    default_stability: str = ""
    pattern: str = "plain"
    caution: str = ""
    source: str = ""
    identifiers: tuple[str, ...] = ()
    is_retired: bool = False
    line: int = field(default=0, compare=False)

    @property
    def key(self) -> tuple[str, str, str]:
        return self.scheme, self.group, self.label

    def __str__(self) -> str:
        return f"{self.label} ({self.group})" if self.group else self.label


class NotTaken(ValueError):
    """What is wrong with a file, where, and what to do."""

    def __init__(self, sentence: str, line: int = 0) -> None:
        super().__init__(f"Line {line}: {sentence}" if line else sentence)
        self.line = line
