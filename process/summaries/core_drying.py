"""Whether a core has come to constant mass before it is waterproofed and goes into the bath."""

from dataclasses import dataclass
from datetime import date

from django.utils import timezone

from process.chemistry.judgement import is_dry
from process.models import Core, Weighing
from process.summaries.drying import pairs_of
from records.clock import day_words
from records.units import show

HOW = "Two weighings at least 24 h apart must agree within 0.1 %; plaster is dried at no more than 45 °C."
NOT_WEIGHED = f"No weighing shows that it is dry. {HOW}"


@dataclass(frozen=True)
class CoreDrying:
    """`code`: not weighed, drying, constant."""

    code: str
    sentence: str

    @property
    def words(self) -> str:
        return f"{self.code.capitalize()}: {self.sentence}"

    @property
    def is_constant(self) -> bool:
        return self.code == "constant mass"

    @property
    def shape(self) -> str:
        return "done" if self.is_constant else "look"


def core_drying(core: Core, on: date | None = None) -> CoreDrying:
    """By what had been weighed until then; weighings come with the core where they were prefetched."""
    rows = [each for each in core.item.weighings.all() if each.kind == Weighing.Kind.CORE]
    rows = sorted((each for each in rows if on is None or timezone.localdate(each.at) <= on), key=lambda each: each.at)
    if not rows:
        return CoreDrying("not weighed", NOT_WEIGHED)
    last = f"{show(rows[-1].mass_g, '_g', digits=1)} on {day_words(rows[-1].at)}"
    if is_dry(pairs_of(rows)):
        return CoreDrying("constant mass", f"{last}, weighed a day or more apart within 0.1 %.")
    return CoreDrying("drying", f"{last}. {HOW}")
