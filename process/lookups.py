"""What the workshop calls by numbers: moulds, cores, baths and runs."""

from django.db.models import QuerySet
from django.utils import timezone

from process.models import Bath, BathAnalysis, Core, Mould, Run, Shell
from records.lookups import LOOKUPS, USUAL, Lookup


def _moulds() -> QuerySet:
    rows = Mould.objects.filter(fate=Mould.Fate.IN_STORE).order_by("item__number")
    return rows.select_related("item", "model").prefetch_related("pulls", "model__consents")


def _cores() -> QuerySet:
    return Core.objects.select_related("item").order_by("item__number")


def kept_shells() -> QuerySet[Shell]:
    """What a copy may be made of."""
    rows = Shell.objects.filter(fate=Shell.Fate.KEPT, making_up__isnull=True)
    rows = rows.exclude(cathode__run__outcome=Run.Outcome.FAILED)
    return rows.select_related(
        "item", "cathode__run", "cathode__mould__model", "cathode__core__item", "cathode__core__pull__mould__model"
    )


def _grown(shell: Shell) -> str:
    """What it shows, and the run it grew in."""
    mass = f", {shell.trimmed_mass_g:.2f} g trimmed" if shell.trimmed_mass_g else ", not trimmed yet"
    return f"{shell.cathode.label}, {shell.cathode.run.number}{mass}"


def _sampled(analysis: BathAnalysis) -> str:
    return f"of {timezone.localtime(analysis.sampled_at):%d %B %Y}".replace("of 0", "of ")


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
    "analyses-of": Lookup("analysis", lambda: BathAnalysis.objects.order_by("-sampled_at"), about=_sampled,
                          hint="it is of another bath", at_hand=lambda rows: rows,
                          within=lambda rows, number: rows.filter(bath__number=number)),
    "shells": Lookup("shell", lambda: Shell.objects.select_related("item", "cathode__run"), "item__number",
                     about=_grown, hint="it did not grow in this run",
                     within=lambda rows, number: rows.filter(cathode__run__number=number)),
    "shells-kept": Lookup("shell", kept_shells, "item__number", about=_grown,
                          hint="it is scrap, or a copy was made of it"),
    "runs": Lookup("run", lambda: Run.objects.select_related("bath"), about=lambda row: f"in {row.bath}",
                   entered_at="run_add", at_hand=lambda rows: rows),
})  # fmt: skip
USUAL.update({Mould: "moulds", Core: "cores", Bath: "baths-in-use", Run: "runs"})
