"""What the balance says of a run: gain against theory, the efficiency and its band, planned against delivered."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from pint import Quantity

from process.chemistry.deposit import efficiency
from process.chemistry.faraday import deposited_mass
from process.chemistry.judgement import Band, Weighing, judge_efficiency
from process.chemistry.metals import Ion
from process.models import Cathode
from process.summaries.cathodes import gain_of
from process.summaries.figures import apart, figure
from records.figures import Figure

SENTENCES = {
    Band.REJECT: "Under 80 %: the deposit is not to be kept without looking into the cause.",
    Band.LOW: "Between 80 and 95 %: lower than usual; look at contact, bath and meter.",
    Band.USUAL: "Between 95 and 100.5 %: usual.",
    Band.DOUBTFUL: "Over 100.5 %: doubtful; weigh again, and check the meter and the times.",
    Band.IMPOSSIBLE: "Over 101 %: impossible for metal alone; wrong charge, wrong weighing, or something absorbed.",
    Band.ABSORBED: "Over 100 % on a core: it has absorbed electrolyte. Keep drying and do not close it.",
}
SHAPES = {Band.USUAL: "done", Band.REJECT: "blocked", Band.IMPOSSIBLE: "blocked", Band.ABSORBED: "blocked"}


@dataclass(frozen=True)
class Result:
    """Known once every cathode's shell is weighed; efficiency belongs to the rail, not to the piece."""

    gain: Figure
    efficiency: Figure
    band: Band | None

    @property
    def sentence(self) -> str:
        return SENTENCES[self.band] if self.band else ""

    @property
    def shape(self) -> str:
        return SHAPES.get(self.band, "look")


def theory_of(metal: Ion | None, charge: Quantity) -> Figure | None:
    """R2: what the charge deposits if all of it makes metal."""
    return figure("Theoretical mass", "_g", deposited_mass, ion=metal, charge=charge) if metal else None


def result_of(
    cathodes: list[Cathode], charge: Quantity, metal: Ion | None, weighings: Callable[[], Sequence[Weighing]] = tuple
) -> Result | None:
    """R3, or None while a shell is still to be weighed; over 100 % on a core the weighings are asked for."""
    gains = [gain_of(cathode) for cathode in cathodes]
    if metal is None or not gains or any(gain is None or apart(gain.m)[0] <= 0 for gain in gains):
        return None
    whole = sum(gains[1:], start=gains[0])
    number, spread = apart(whole.m_as("g"))
    parts = " + ".join(f"{apart(gain.m_as('g'))[0]:.2f}" for gain in gains)
    gain = Figure("Gain on the balance", number, "_g", "measured", spread, f"{parts} g" if len(gains) > 1 else "")
    found = figure(
        "Efficiency", "_pct", efficiency, evidence={"mass": "measured"}, ion=metal, mass=whole, charge=charge
    )
    on_core = any(cathode.core_id for cathode in cathodes)
    band = judge_efficiency(found.working.quantity, on_core=on_core) if found.working else None
    if band is Band.ABSORBED:
        band = judge_efficiency(found.working.quantity, on_core=True, weighings=weighings())
    return Result(gain, found, band)
