"""What the wording needs to know about a copy, and the draft of a label."""

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True)
class CopyFacts:
    """A copy and what it repeats. Texts are phrases without a full stop; "" means “not known”.

    subject        what it repeats, with its article: "a cast bronze medal by Corvin Aldersey"
    original_date  as written: "1624", "about 1868"
    original_place where the original is: "in store", "on loan from the Thornwick Almshouse Trust"
    original_lost  for an untraced original: "has not been seen since 1811"
    model          for a copy of a copy, what the mould was taken from: "an electrotype of 1889"
    """

    number: str
    made_date: str = ""
    technique: str = "hollow"
    generation: int = 1
    at_least: bool = False
    historic: bool = False
    one_sided: bool = False
    skin: Literal["", "silver", "gold"] = ""
    subject: str = ""
    original_date: str = ""
    original_number: str = ""
    original_owner: str = ""
    original_place: str = ""
    original_lost: str = ""
    model: str = ""
    materials: str = ""
    mark_text: str = ""
    may_be_touched: bool = False
    mass_g: float | None = None
    original_mass_g: float | None = None

    @property
    def is_copy_of_copy(self) -> bool:
        return self.generation > 1


@dataclass(frozen=True)
class LabelDraft:
    """A label as typed: a heading, a body whose line breaks count, the number of the copy."""

    heading: str
    body: str = ""
    number: str = ""
    second_heading: str = ""
    second_text: str = ""

    @classmethod
    def from_text(cls, text: str, number: str = "") -> "LabelDraft":
        """A label from one text field: the first line is the heading."""
        heading, _, body = text.strip().partition("\n")
        return cls(heading.strip(), body.strip(), number)

    @property
    def text(self) -> str:
        return f"{self.heading}\n{self.body}".strip()

    @property
    def lines(self) -> list[str]:
        return [line.strip() for line in self.text.splitlines() if line.strip()]


@dataclass(frozen=True)
class Complaint:
    """What is wrong with a wording, why it matters, what to do; “ask” wants an answer, “warn” is advice."""

    code: str
    severity: Literal["refuse", "ask", "warn"]
    sentence: str


def refuse(code: str, sentence: str) -> Complaint:
    return Complaint(code, "refuse", sentence)


def ask(code: str, sentence: str) -> Complaint:
    return Complaint(code, "ask", sentence)


def warn(code: str, sentence: str) -> Complaint:
    return Complaint(code, "warn", sentence)
