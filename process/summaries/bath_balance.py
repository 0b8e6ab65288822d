"""Predicted against measured: what the anodes gave, what went on the cathodes, into sludge and out with the pieces."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from pint import Quantity

from process.chemistry.agreement import Agreement, Comparison, compare
from process.chemistry.baths import copper_gained, predicted_acid, predicted_salt
from process.models import Anode, Bath, BathAddition, BathService, Constituent
from process.summaries.analyses import AnalysisSummary, Found
from process.summaries.bath_amounts import acid_added, anode_loss_of, carried_out, salt_added, sludge_of, total_of
from process.summaries.bath_between import Between, BetweenRun
from process.summaries.evidence import quantity
from process.summaries.figures import apart, figure, quantity_of
from records.figures import Figure
from records.units import show, ureg

CLOSE_PCT = 1.0


@dataclass(frozen=True)
class Compared:
    """One constituent: what was to be expected beside what the titration found."""

    label: str
    predicted: Figure
    measured: Figure
    comparison: Comparison | None

    @property
    def state(self) -> str:
        if self.comparison is None or self.comparison.agreement is Agreement.UNKNOWN:
            return "open"
        return "done" if self.comparison.agreement is Agreement.WITHIN else "look"

    @property
    def word(self) -> str:
        return self.comparison.agreement.value if self.comparison else "not computed"

    @property
    def sentence(self) -> str:
        if self.comparison is None:
            return self.predicted.note
        gap = f"{show(abs(self.comparison.difference), '_g_l')} {'more' if self.comparison.difference > 0 else 'less'}"
        if self.comparison.allowed is None:
            share = abs(self.comparison.difference) / (self.measured.value or 1.0) * 100
            usual = f"within {CLOSE_PCT:g} % is usual" if share <= CLOSE_PCT else f"more than {CLOSE_PCT:g} % is much"
            return f"{gap} found than predicted; {usual}. Enter the ± of the burette to have it judged."
        return f"{gap} found than predicted; up to {show(self.comparison.allowed, '_g_l')} is the error of both."


@dataclass(frozen=True)
class Balance:
    """The stretch between two analyses with everything that moved copper or acid in it."""

    first: AnalysisSummary
    last: AnalysisSummary
    runs: list[BetweenRun]
    anodes: Figure
    deposits: Figure
    sludge: Figure
    gained: Figure
    out: Figure
    added: tuple[Figure, ...]
    compared: list[Compared]

    @property
    def agrees(self) -> bool:
        return bool(self.compared) and all(each.state == "done" for each in self.compared)


def balance_of(
    stretch: Between, first: AnalysisSummary, last: AnalysisSummary, anodes: Iterable[Anode],
    services: Iterable[BathService], additions: Iterable[BathAddition],
) -> Balance:  # fmt: skip
    """Everything between two analyses, added up and set against the second of them."""
    span = (first.analysis.sampled_at, last.analysis.sampled_at)
    work = [each for each in services if span[0] <= each.done_at < span[1]]
    put_in = [each for each in additions if span[0] <= each.added_at < span[1]]
    deposits = total_of("deposited", [each.deposit for each in stretch.runs], "_g")
    loss, sludge = anode_loss_of(anodes, span, stretch), sludge_of(work)
    gained = _gained(loss, deposits, sludge)
    out, salt, acid = carried_out(work), salt_added(put_in), acid_added(put_in)
    compared = [
        _compared(Constituent.COPPER_SULPHATE, first, last, predicted_salt, gained, out, salt),
        _compared(Constituent.SULPHURIC_ACID, first, last, predicted_acid, gained, out, acid),
    ]
    added = tuple(each for each in (salt, acid) if each.value)
    return Balance(
        first, last, stretch.runs, loss, deposits, sludge, gained, out, added, [each for each in compared if each]
    )


def _gained(loss: Figure, deposits: Figure, sludge: Figure) -> Figure:
    evidence = {"anode_loss": loss.kind, "deposited": deposits.kind, "sludge": sludge.kind}
    return figure(
        "copper gained by the bath", "_g", copper_gained, evidence=evidence, anode_loss=quantity_of(loss),
        deposited=quantity_of(deposits), sludge=quantity_of(sludge),
    )  # fmt: skip


def _compared(
    constituent: str, first: AnalysisSummary, last: AnalysisSummary, function, gained: Figure, out: Figure,
    added: Figure,
) -> Compared | None:  # fmt: skip
    before, after = first.of(constituent), last.of(constituent)
    if before is None or after is None:
        return None
    predicted = figure(
        f"{before.label} predicted", "_g_l", function, evidence={"gained": "calculated", "found": "measured"},
        found=before.quantity, gained=quantity_of(gained), drag_out=quantity_of(out),
        volume=_plain_volume(first.analysis.bath), added=quantity_of(added),
    )  # fmt: skip
    judged = compare(predicted.working.quantity, after.quantity) if predicted.working else None
    return Compared(before.label, predicted, _found(after), judged)


def _found(found: Found) -> Figure:
    """What the analysis gave, by its own kind: a titration is reckoned from what was read off the burette."""
    return replace(found.figure, label=f"{found.label} found")


def _plain_volume(bath: Bath) -> Quantity:
    """Without its ±: an error of the volume shifts both analyses alike."""
    return ureg.Quantity(apart(quantity(bath, "volume_l").m)[0], "L")
