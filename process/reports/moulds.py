"""The moulds of a copy: what they were taken from, of what, how they changed, what became of them."""

from process.models import Mould, MouldWear
from process.reports.making import Making
from process.services.moulds import pulls_allowed
from process.summaries.gauges import gauging_of
from records.pdf import blocks as b
from records.pdf.tables import Row
from records.reports.figures import in_words, number_of
from records.reports.parts import local_day, sentences
from records.units import show

COLUMNS = (
    b.Column("Mould"), b.Column("Of"), b.Column("Material"), b.Column("Made"), b.Column("Change", "%", "right"),
    b.Column("Pulls", "used / allowed", "right"), b.Column("Fate"),
)  # fmt: skip


def moulds(m: Making) -> list[b.Block]:
    return [
        b.Heading("Moulds"), b.FigureTable(COLUMNS, tuple(map(_row, m.moulds)), empty="No mould is recorded."),
        *(b.Prose(words) for mould in m.moulds if (words := _notes(mould))),
    ]  # fmt: skip


def _row(mould: Mould) -> Row:
    fate = " ".join(filter(None, [mould.get_fate_display(), local_day(mould.fate_on)]))
    witness = f", witness {mould.fate_witness}" if mould.fate_witness else ""
    return (
        mould.item.number, f"{mould.model.number}, {mould.get_side_display()}", mould.material.label,
        local_day(mould.made_on),
        number_of(mould, "shrinkage_pct")[0], f"{len(mould.pulls.all())} / {pulls_allowed(mould)}", fate + witness,
    )  # fmt: skip


def _notes(mould: Mould) -> str:
    said = sentences(
        f"Barrier or release: {mould.barrier}" if mould.barrier else "",
        f"Time on {mould.model.number}: {mould.contact_h:g} h" if mould.contact_h is not None else "",
        mould.demoulding, _parts(mould), _worn(mould), _measured_again(mould),
    )  # fmt: skip
    return f"{mould.item.number}: {said}" if said else ""


def _parts(mould: Mould) -> str:
    parts = [f"{part.mark}, {part.what}" for part in mould.parts.all()]
    return f"Parts: {'; '.join(parts)}" if parts else ""


def _worn(mould: Mould) -> str:
    """Each feature with the use after which it was seen."""
    said = [wear_words(worn) for worn in mould.wear_seen.all()]
    return f"Wear: {'; '.join(said)}" if said else ""


def wear_words(worn: MouldWear) -> str:
    size = in_words(worn, "length_mm")
    after = f"after pull {worn.pull.number_count}" if worn.pull else ""
    return ", ".join(filter(None, [worn.feature.rstrip("."), size, after, worn.get_bearing_display()]))


def _measured_again(mould: Mould) -> str:
    """The change at each later measuring, against the piece at 20 °C."""
    lines = [line for line in gauging_of(mould, mould.gauges.all()).lines if line.change.value is not None]
    said = (f"{local_day(line.row.gauged_on)}: {show(line.change.value, '_pct', digits=2)}" for line in lines)
    return f"Linear change by measuring: {', '.join(said)}" if lines else ""
