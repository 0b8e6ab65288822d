"""Hallmarks and makers' marks that a copy could carry on: which there are along its line, and which are still open."""

from collections.abc import Iterable, Iterator

from django.db.models import F, OuterRef, Q, QuerySet, Subquery, Value
from django.db.models.expressions import RawSQL
from django.db.models.functions import JSONObject

from records.lineage import forebears_of, walk_up_from
from records.models import Item, Mark, SuppressedMark
from records.models.json_rows import JsonRows

FORESEEN = (Mark.Purpose.HALLMARK, Mark.Purpose.MAKER)


def foreseen_marks(copy: Item) -> list[Mark]:
    """Along all that the copy was made from, with `told_how` and `told_photo` of what became of each; one query."""
    kept = getattr(copy, "_foreseen", None)
    return list(_marks(copy).filter(purpose__in=FORESEEN).exclude(item=copy)) if kept is None else kept


def keep_marks(copy: Item) -> None:
    """Read its own marks and those foreseen at once, and leave both on the row for the parts of a page."""
    rows = list(_marks(copy).filter(Q(item=copy) | Q(purpose__in=FORESEEN)))
    own = copy.marks.all()
    own._result_cache = [mark for mark in rows if mark.item_id == copy.pk]
    copy._prefetched_objects_cache = {"marks": own}
    copy._foreseen = [mark for mark in rows if mark.item_id != copy.pk]


def with_foreseen(things: QuerySet[Item]) -> QuerySet[Item]:
    """Many things, each with the marks foreseen along its line beside it; `keep_foreseen` reads them off the row."""
    told = SuppressedMark.objects.filter(copy=OuterRef(OuterRef("pk")), mark=OuterRef("pk"))
    each = JSONObject(
        id=F("id"), text=F("text"), purpose=F("purpose"), number=F("item__number"), told_how=F("told_how"),
        told_photo=F("told_photo"),
    )  # fmt: skip
    # The walk begins at the row of the question around it: its own tables are renamed, that one is not.
    line = RawSQL(walk_up_from(f'"{Item._meta.db_table}"."id"'), [])
    marks = Mark.objects.filter(purpose__in=FORESEEN, item__in=line).exclude(item=OuterRef("pk")).order_by()
    marks = marks.annotate(told_how=Subquery(told.values("how")[:1]), told_photo=Subquery(told.values("photo")[:1]))
    rows = marks.annotate(one=Value(1)).values("one").annotate(rows=JsonRows(each)).values("rows")
    return things.annotate(foreseen_rows=Subquery(rows))


def keep_foreseen(copy: Item) -> None:
    """From a row that was read `with_foreseen`."""
    copy._foreseen = [_read(**values) for values in copy.foreseen_rows or []]


def _read(number: str, told_how: str | None, told_photo: int | None, **columns: object) -> Mark:
    """A mark that is judged and never saved."""
    mark = Mark(item=Item(number=number), **columns)
    mark.told_how, mark.told_photo = told_how, told_photo
    return mark


def _marks(copy: Item) -> QuerySet[Mark]:
    told = SuppressedMark.objects.filter(copy=copy, mark=OuterRef("pk"))
    rows = Mark.objects.filter(item__in=forebears_of(copy)).select_related("item")
    return rows.annotate(told_how=Subquery(told.values("how")[:1]), told_photo=Subquery(told.values("photo")[:1]))


def marks_left_open(marks: Iterable[Mark]) -> list[str]:
    """One sentence for each mark that may still be taken for the original's own."""
    return [sentence for mark in marks for sentence in _open(mark)]


def _open(mark: Mark) -> Iterator[str]:
    named = f"“{mark.text}” ({mark.get_purpose_display()} on {mark.item.number})"
    if mark.told_how is None:
        yield f"What became of {named} is not recorded: mask it in the mould or remove it, and photograph the place."
    elif mark.told_how == SuppressedMark.How.LEFT:
        if mark.purpose == Mark.Purpose.HALLMARK:
            yield f"{named} was left on the copy: a hallmark is removed."
    elif mark.told_photo is None:
        yield f"{named} was {SuppressedMark.How(mark.told_how).label}, and no photograph shows the place."
