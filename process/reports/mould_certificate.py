"""The certificate of a mould's end, destroyed or returned: which, by what consent, when, and before whom."""

from typing import Any

from process.models import Mould
from records.extensions import PaperContext
from records.lineage import descent_of
from records.models import Concession, Consent, Item
from records.pdf import blocks as b
from records.pdf.document import build
from records.reports.attached import record
from records.reports.parts import head, local_day, losses

Fate = Mould.Fate
KINDS = {Fate.DESTROYED: "Mould destruction certificate", Fate.RETURNED: "Mould return certificate"}
ASKS = {Fate.DESTROYED: Consent.MouldFate.DESTROY, Fate.RETURNED: Consent.MouldFate.RETURN}
ENDS = {Fate.DESTROYED: "destroyed", Fate.RETURNED: "returned"}


def make(item: Item, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    rows = Mould.objects.select_related("item", "model__owner", "material", "fate_witness")
    mould = rows.prefetch_related("pulls__cathode__shell__item", "pulls__core__item", "parts").get(pk=item.pk)
    consents = list(
        Consent.objects.filter(items=mould.model, mould_fate=ASKS[Fate(mould.fate)]).select_related("owner", "given_by")
    )
    kind, end = KINDS[Fate(mould.fate)], ENDS[Fate(mould.fate)]
    summary = f"{item.number} was {end} on {local_day(mould.fate_on)} before {mould.fate_witness}."
    conceded = Concession.objects.filter(items=item).select_related("given_by")
    data = record(
        kind, item.number, context, {"mould": [mould], "thing": [item], "consents": consents, "concessions": conceded}
    )
    paper = head(kind, item.number, f"A mould was {end}", summary, context)
    return build(paper, _blocks(mould, consents, context), data, context.issued_at), data


def _blocks(mould: Mould, consents: list[Consent], context: PaperContext) -> list[b.Block]:
    end = ENDS[Fate(mould.fate)]
    facts = (
        b.Fact("Mould", mould.item.number), b.Fact("Side", mould.get_side_display()),
        b.Fact("Taken from", f"{mould.model.number}, {mould.model.title}"),
        b.Fact("Owner of that", str(mould.model.owner or "")), b.Fact("Material", mould.material.label),
        b.Fact("Made", local_day(mould.made_on)),
        b.Fact("Parts", "; ".join(f"{part.mark}, {part.what}" for part in mould.parts.all())),
        b.Fact("Uses made of it", str(len(mould.pulls.all()))),
        b.Fact("Came out of it", ", ".join(_offspring(mould))),
        b.Fact(end.capitalize(), local_day(mould.fate_on)), b.Fact("How", mould.fate_how),
        b.Fact("Witness", str(mould.fate_witness)),
    )  # fmt: skip
    asked = [_asked(consent, end) for consent in consents] or [
        f"No consent asks for it; it was {end} by the museum’s decision."
    ]
    return [
        *losses(descent_of(mould.item).forebears), b.FactList(tuple(fact for fact in facts if fact.value)),
        b.Heading("Why"), *map(b.Prose, asked),
        b.Prose("The record of the mould and of every piece made in it stays in the register for ever."),
        b.Signatures((
            b.Signer(context.issued_by, context.role.capitalize(), local_day(context.issued_at)),
            b.Signer(str(mould.fate_witness), "Witness"),
        )),
    ]  # fmt: skip


def _offspring(mould: Mould) -> list[str]:
    """What grew or was cast in it, by number: the mould is gone, these are not."""
    found = []
    for pull in mould.pulls.all():
        cathode = getattr(pull, "cathode", None)
        for made in (getattr(pull, "core", None), getattr(cathode, "shell", None)):
            found += [made.item.number] if made else []
    return found


def _asked(consent: Consent, end: str) -> str:
    by = f" by {local_day(consent.mould_fate_by)}" if consent.mould_fate_by else ""
    return f"The consent of {consent.owner}, {local_day(consent.given_on)}, asks that the moulds are {end}{by}."
