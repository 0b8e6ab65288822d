"""What the search box finds of the making, besides things: runs by number, bath and what hung in them."""

from collections.abc import Iterable

from django.db.models import Q

from process.models import Bath, Failure, Run
from records.extensions import SearchHit, search_sources

SHOWN = 20


def runs(typed: str) -> Iterable[SearchHit]:
    named = Q(number__icontains=typed) | Q(cathodes__label__icontains=typed) | Q(outcome_words__icontains=typed)
    named |= Q(cathodes__mould__item__number__icontains=typed) | Q(cathodes__core__item__number__icontains=typed)
    rows = Run.objects.filter(named).select_related("bath").prefetch_related("cathodes").distinct()
    for run in rows[:SHOWN]:
        labels = ", ".join(cathode.label for cathode in run.cathodes.all())
        sentence = ", ".join(filter(None, [f"run in {run.bath.number}", labels, run.get_outcome_display()]))
        yield SearchHit(run.number, sentence, "run", run.get_absolute_url())


def baths(typed: str) -> Iterable[SearchHit]:
    for bath in Bath.objects.filter(Q(number__icontains=typed) | Q(name__icontains=typed))[:SHOWN]:
        yield SearchHit(bath.number, bath.name, "bath", bath.get_absolute_url())


def failures(typed: str) -> Iterable[SearchHit]:
    said = Q(number__icontains=typed) | Q(title__icontains=typed) | Q(what__icontains=typed)
    said |= Q(cause__icontains=typed) | Q(lesson__icontains=typed) | Q(action__icontains=typed)
    said |= Q(shells__defects__term__label__icontains=typed) | Q(run__number__icontains=typed)
    for row in Failure.objects.filter(said).select_related("run").distinct()[:SHOWN]:
        yield SearchHit(row.number, row.title, "failure", row.get_absolute_url())


search_sources += [runs, baths, failures]
