"""What the failure library knows that a run about to begin should hear."""

from dataclasses import dataclass

from django.db.models import Prefetch, Q

from process.models import Cathode, Failure, Run, Shell

MOST = 5


@dataclass(frozen=True)
class Similar:
    """A failure, and what it shares with the run: the closest first."""

    failure: Failure
    shared: tuple[str, ...]

    @property
    def words(self) -> str:
        return f"the same {', '.join(self.shared)}"


def similar_failures(run: Run) -> tuple[Similar, ...]:
    """Failures with the same mould, model, coat or bath as this run, the more they share the earlier."""
    mine = _features([run.bath_id], list(run.cathodes.all()))
    rows = Failure.objects.filter(_alike(mine)).exclude(run=run).select_related("run").distinct()
    hung = Prefetch("run__cathodes", Cathode.objects.select_related("mould"))
    rows = rows.prefetch_related(
        hung, Prefetch("shells", Shell.objects.select_related("cathode__mould", "cathode__run"))
    )
    found = [Similar(failure, _shared(mine, failure)) for failure in rows]
    found.sort(key=lambda each: (len(each.shared), each.failure.number), reverse=True)
    return tuple(found[:MOST])


def _features(baths: list[int], cathodes: list[Cathode]) -> dict[str, set[int]]:
    """What could make a failure come again."""
    return {
        "mould": {c.mould_id for c in cathodes if c.mould_id},
        "model": {c.mould.model_id for c in cathodes if c.mould_id},
        "coat": {c.coat_id for c in cathodes if c.coat_id},
        "bath": set(baths),
    }


def _alike(mine: dict[str, set[int]]) -> Q:
    alike = Q(run__bath__in=mine["bath"])
    for cathodes in ("run__cathodes", "shells__cathode"):
        alike |= Q(**{f"{cathodes}__mould__in": mine["mould"]})
        alike |= Q(**{f"{cathodes}__mould__model__in": mine["model"]})
        alike |= Q(**{f"{cathodes}__coat__in": mine["coat"]})
    return alike


def _shared(mine: dict[str, set[int]], failure: Failure) -> tuple[str, ...]:
    shells = list(failure.shells.all())
    hung = [*(failure.run.cathodes.all() if failure.run else ()), *(shell.cathode for shell in shells)]
    baths = [failure.run.bath_id] if failure.run else [shell.cathode.run.bath_id for shell in shells]
    theirs = _features(baths, hung)
    return tuple(word for word in mine if mine[word] & theirs[word])
