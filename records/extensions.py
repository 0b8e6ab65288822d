"""The few named points where another app adds to the register's pages; filled in that app's `ready()`."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from datetime import date, datetime
from pathlib import Path
from typing import Any

from django.db.models import Q
from django.http import HttpRequest
from django.utils.module_loading import import_string


@dataclass(frozen=True)
class HomeCard:
    """One line of the day's list of verbs."""

    sentence: str
    url: str
    when: str = "now"  # now, week or later
    state: str = "open"  # blocked, look, done or open
    due_on: date | None = None
    template: str = ""  # a partial for what runs, instead of a sentence
    context: dict[str, Any] = field(default_factory=dict)
    things: tuple[str, ...] = ()  # numbers of the pieces that are to be taken in hand


@dataclass(frozen=True)
class Panel:
    """A part of a thing's page."""

    title: str
    template: str
    context: dict[str, Any]
    order: int = 50
    anchor: str = ""
    step: tuple[str, str] | None = None  # the next thing to do there: its verb and its address


@dataclass(frozen=True)
class Struck:
    """A kind of row that can be struck out: the rows, how one is called, where it is shown, what forbids it.

    `follow` is told of the row after it was struck out or put back, within the same transaction.
    """

    rows: Callable[[], Any]
    words: Callable[[Any], str]
    back: Callable[[Any], str]
    refuse: Callable[[Any], str] = lambda row: ""
    follow: Callable[[Any], None] = lambda row: None


@dataclass(frozen=True)
class SearchHit:
    number: str
    sentence: str
    kind: str
    url: str


@dataclass(frozen=True)
class KeptFile:
    """A file that the register stands behind, and that is read again to see whether it is as it came."""

    path: Path
    sha256: str
    words: str
    url: str


@dataclass(frozen=True)
class PaperKind:
    """A paper that can be issued: which things it is for, who may issue it, and the name of what makes it.

    The maker is named, not imported: nothing that only paper needs is read before the first paper is made.
    """

    code: str
    title: str
    applies_to: Callable[[Any], bool]
    refusals: Callable[[Any], list[str]]  # sentences that forbid issuing it now
    maker: str  # "records.reports.tags.make_tag": from a subject to its PDF and the attached record
    act: str = "issue paper"  # what a role must be allowed, as records.roles names it

    def build(self, subject: Any, context: "PaperContext") -> tuple[bytes, dict]:
        return import_string(self.maker)(subject, context)


@dataclass(frozen=True)
class CopyTraits:
    """What another app knows of a copy and the register does not: for its label and for judging its mark."""

    technique: str = ""  # a technique of records.wording: hollow, core, matrix
    one_sided: bool = False
    skin: str = ""  # silver or gold
    longest_mm: float | None = None
    thickness_mm: float | None = None
    coating_um: float | None = None  # all coats together


@dataclass(frozen=True)
class FamilyNote:
    """What another app knows of a mould or a copy of a family: its uses or its edition, and what became of it."""

    uses: str = ""
    fate: str = ""
    due: str = ""  # what must be decided, and by when
    is_gone: bool = False


@dataclass(frozen=True)
class SizeStep:
    """How large a piece of a line came out against the first one measured before it, and what was foretold of it."""

    item: Any
    size_mm: float
    against: str  # the number of the piece that it is compared with
    measured_pct: float
    plus_minus_pct: float | None = None
    foretold_pct: float | None = None


@dataclass(frozen=True)
class PieceTrait:
    """What another app knows of a piece by which it may be told from its like; `key` is one of records.telling."""

    key: str
    words: str
    value: float | None = None  # in the unit of the feature
    plus_minus: float | None = None
    decimals: int | None = None


@dataclass(frozen=True)
class Care:
    """What the composition of a piece asks of its keeper; `trait` is what is inside or on it."""

    sentence: str
    tag_words: str
    survey_months_count: int | None
    trait: str


@dataclass(frozen=True)
class Limit:
    """How a thing may be used: the sentence as it is printed, whose limit it is (“wall of S-05”), and why."""

    sentence: str
    source: str
    because: str = ""
    is_loss: bool = False  # of the original: it stands first, and in words of its own


@dataclass(frozen=True)
class OpenMatter:
    """Something that keeps the file of a commission open, and who can see to it."""

    sentence: str
    ask: str = ""
    url: str = ""


@dataclass(frozen=True)
class FilePart:
    """What another app knows of a commission: lines of gates (records.gate_overview.GateLine), and what is open."""

    lines: list[Any] = field(default_factory=list)
    matters: list[OpenMatter] = field(default_factory=list)


@dataclass(frozen=True)
class SurveyHistory:
    """How a copy came to be, as the table of surveys asks it: the code of a rule, and from what day it counts.

    `at_most_months` is what lies inside or on it, `inside`, and lets nobody wait longer than that.
    """

    code: str  # history_code of records.models.SurveyRule
    since: date | None  # None: it was not made here
    words: str  # "accepted", "made up"
    at_most_months: int | None = None
    inside: str = ""


@dataclass(frozen=True)
class PaperContext:
    """What every paper carries besides its subject."""

    edition_count: int
    issued_at: datetime
    issued_by: str
    role: str
    page_size: str = "A4"


# From what a thing is and what lies inside it (primary keys of things) to what that forbids.
limit_sources: list[Callable[[set[int]], Iterable[Limit]]] = []
limit_signs: list[Q] = []  # of an Item: whether a source may have something to say, asked of many things at once
care_sources: list[Callable[[Any], Iterable[Care]]] = []
home_cards: list[Callable[[HttpRequest], Iterable[HomeCard]]] = []
item_panels: list[Callable[[HttpRequest, Any], Panel | None]] = []
gate_checks: dict[str, dict[str, Callable[..., Any]]] = {}  # gate -> name of the check -> the check
file_parts: list[Callable[[Any, Iterable[Any]], FilePart]] = []  # of a commission, with its consents
gate_related: list[str] = []  # what the checks read of an item, to prefetch
gate_columns: dict[str, Callable[[], Any]] = {}  # and what rides along with the question for it
measurement_doubts: list[Callable[[Any, str], str]] = []  # a Measurement as typed, how it is known -> why not so
kept_files: list[Callable[[], Iterable[KeptFile]]] = []
job_kinds: dict[str, str] = {}  # kind of long work -> name of what does it (see services/jobs.py)
search_sources: list[Callable[[str], Iterable[SearchHit]]] = []
paper_kinds: dict[str, PaperKind] = {}
paper_subjects: list[type] = []  # models beyond the register's own that a paper can be about
strikables: dict[str, Struck] = {}
copy_traits: list[Callable[[Any], CopyTraits | None]] = []
family_notes: list[Callable[[Iterable[Any]], dict[int, FamilyNote]]] = []  # things -> notes by their key
# From things by number, each with the numbers along which it descends, to the sizes measured of them.
size_sources: list[Callable[[dict[str, Any], dict[str, tuple]], Iterable[SizeStep]]] = []
survey_histories: list[Callable[[Iterable[int]], dict[int, SurveyHistory]]] = []  # keys of copies -> their history
piece_traits: list[Callable[[Iterable[Any]], dict[int, list[PieceTrait]]]] = []  # things -> traits by their key
