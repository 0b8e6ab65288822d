"""What the workshop calls by numbers: moulds, cores, baths and runs."""

from django.db.models import QuerySet

from process.models import Bath, Core, Mould, Run
from records.lookups import LOOKUPS, USUAL, Lookup


def _moulds() -> QuerySet:
    rows = Mould.objects.filter(fate=Mould.Fate.IN_STORE).order_by("item__number")
    return rows.select_related("item", "model").prefetch_related("pulls", "model__consents")


def _cores() -> QuerySet:
    return Core.objects.select_related("item").order_by("item__number")


def pulls_left(mould: Mould) -> str:
    """By what the mould bears or by the owner's consent, the lower one."""
    limits = [mould.pulls_allowed_count, *(consent.pulls_max_count for consent in mould.model.consents.all())]
    allowed = min(limit for limit in limits if limit is not None)
    left = max(allowed - len(mould.pulls.all()), 0)
    return f"of {mould.model.number}: {left} of {allowed} pulls left"


LOOKUPS.update({
    "moulds": Lookup("mould", _moulds, "item__number", about=pulls_left,
                     hint="it is not in store any more", entered_at="mould_add",
                     at_hand=lambda rows: rows.order_by("-made_on", "-pk")),
    "cores": Lookup("core", _cores, "item__number", about=lambda row: row.material, entered_at="core_add",
                    at_hand=lambda rows: rows.filter(made_up__isnull=True).order_by("-cast_on", "-pk")),
    "cores-left": Lookup("core", lambda: _cores().filter(made_up__isnull=True), "item__number",
                         about=lambda row: row.material, hint="a copy was made of it", entered_at="core_add",
                         at_hand=lambda rows: rows.order_by("-cast_on", "-pk")),
    "baths": Lookup("bath", Bath.objects.all, about=lambda row: row.name, at_hand=lambda rows: rows),
    "baths-in-use": Lookup("bath", lambda: Bath.objects.filter(retired_on__isnull=True),
                           about=lambda row: row.name, hint="it is retired", entered_at="bath_add",
                           at_hand=lambda rows: rows),
    "runs": Lookup("run", lambda: Run.objects.select_related("bath"), about=lambda row: f"in {row.bath}",
                   entered_at="run_add", at_hand=lambda rows: rows),
})  # fmt: skip
USUAL.update({Mould: "moulds", Core: "cores", Bath: "baths-in-use", Run: "runs"})
