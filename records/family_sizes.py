"""How size drifts from generation to generation: what was measured of a family beside what was foretold of it."""

from collections.abc import Iterable
from dataclasses import dataclass
from statistics import fmean

from records import extensions
from records.extensions import SizeStep
from records.family import Family
from records.units import show

DIGITS = 2  # of a per cent; calipers tell a hundredth of a millimetre on pieces of some centimetres


@dataclass(frozen=True)
class SizeLine:
    """One measured piece, in the words of its generation."""

    step: SizeStep
    generation: int
    words: str

    @property
    def beyond_pct(self) -> float | None:
        """Measured less foretold: what the moulds do not explain."""
        step = self.step
        return None if step.foretold_pct is None else step.measured_pct - step.foretold_pct


@dataclass(frozen=True)
class Sizes:
    lines: list[SizeLine]

    @property
    def sentences(self) -> list[str]:
        """One for each generation: how many were measured, and the mean of both."""
        numbers = sorted({line.generation for line in self.lines})
        return [_sentence([line for line in self.lines if line.generation == number]) for number in numbers]


def sizes_of(family: Family) -> Sizes:
    things = {number: member.item for number, member in family.members.items()}
    paths = {number: member.lineage.path for number, member in family.members.items()}
    steps = (step for source in extensions.size_sources for step in source(things, paths))
    lines = [_line(step, family) for step in steps]
    return Sizes(sorted(lines, key=lambda line: (line.generation, line.step.item.number)))


def _line(step: SizeStep, family: Family) -> SizeLine:
    member = family.members[step.item.number]
    return SizeLine(step, member.lineage.generation, member.words)


def _sentence(lines: list[SizeLine]) -> str:
    """“First generation: 2 pieces, on average −0.09 % against the first measured; foretold −0.08 %.”"""
    words = lines[0].words.split(";")[0].split(",")[0]
    pieces = "1 piece" if len(lines) == 1 else f"{len(lines)} pieces, on average"
    mean = _mean(line.step.measured_pct for line in lines)
    head = f"{words[:1].upper()}{words[1:]}: {pieces} {mean} against the first measured"
    foretold = [line.step.foretold_pct for line in lines if line.step.foretold_pct is not None]
    if not foretold:
        return f"{head}; nothing was foretold."
    of = "" if len(foretold) == len(lines) else f" of {len(foretold)}"
    return f"{head}; foretold{of} {_mean(foretold)}."


def _mean(values: Iterable[float]) -> str:
    mean = fmean(values)
    return f"{'+' if mean > 0 else ''}{show(mean, '_pct', digits=DIGITS)}"
