"""What stands on a thing's page, gathered with few questions to the database."""

from typing import Any

from django.db.models import Exists, OuterRef, prefetch_related_objects
from django.http import HttpRequest
from django.urls import reverse

from records import access, extensions, object_id, sentences, units
from records.conditions import conditions_of
from records.hands import with_hands
from records.hanging import Everything, Hanging, hanging_on
from records.line import keep_line
from records.lineage import made_from
from records.lost import losses_among
from records.models import Concession, Item, Mark, Measurement
from records.original_marks import keep_marks
from records.portraits import best_of, in_order
from records.views.offered_papers import papers_of

THINGS = with_hands(Item.objects.select_related("owner", "place", "label__signed_by", "rule_facts")).annotate(
    is_marked=Exists(Mark.objects.filter(item=OuterRef("pk")))
)


def context_of(request: HttpRequest, item: Item) -> dict[str, Any]:
    """Everything the templates of the page read."""
    line = keep_line(item)
    chain, marks = line.descent, _marks(item)
    hanging = hanging_on(item, chain)
    if not hanging.concessions:  # nor does any gate need to look for one
        item._prefetched_objects_cache["concessions"] = Concession.objects.none()
    photos = in_order(hanging.photos)
    panels = _panels(request, item)
    measured = line.measured_on(item)
    return {
        "item": item,
        "descent": chain,
        "offspring": made_from(item, line.down),
        "sentence": sentences.sentence_of(item, chain, marks),
        "portrait": best_of(photos),
        "measurements": [MeasuredRow(row) for row in [*measured, *line.struck]],
        "photos": photos,
        "marks": marks,
        "hanging": hanging,
        "losses": losses_among(chain.forebears),
        "consents": [(consent, conditions_of(consent)) for consent in line.consents],
        "completeness": object_id.completeness(item, measurements=measured, marks=marks),
        "panels": panels,
        "papers": _papers(request, item),
        "next": next_step(request, item, marks, photos, hanging, panels),
    }


def _marks(item: Item) -> list[Mark]:
    """Left on the row for the parts of the page; where the row says there are none, they are not asked for.

    A copy made here has those of its line along, for its gates ask what became of each.
    """
    if item.made_here:
        keep_marks(item)
    elif item.is_marked:
        prefetch_related_objects([item], "marks")
    else:
        item._prefetched_objects_cache = {"marks": Mark.objects.none()}
    return list(item.marks.all())


class MeasuredRow:
    """A measurement as the table shows it: the column's suffix beside the number."""

    def __init__(self, row: Measurement) -> None:
        self.row = row
        self.field = row.value_field
        self.value = row.value
        self.suffix = self.field[self.field.index("_") :]
        typed = row.as_typed.get(self.field) or {}
        self.plus_minus = row.plus_minus(self.field)
        self.kind = row.evidence(self.field)
        self.method = typed.get("method") or ""
        self.as_written = _as_written(typed)
        self.digits = units.decimals_written(typed, self.suffix)


def _as_written(typed: dict[str, Any]) -> str:
    """“2.30 in” where the number was written in another unit than the table's."""
    text, unit = str(typed.get("text") or ""), str(typed.get("unit") or "")
    return "" if unit in ("", "mm", "g", "g/cm³", "°") or not text else f"{text} {unit}".removesuffix(f" {unit} {unit}")


def _panels(request: HttpRequest, item: Item) -> list[extensions.Panel]:
    found = (panel(request, item) for panel in extensions.item_panels)
    return sorted((panel for panel in found if panel), key=lambda panel: panel.order)


def _papers(request: HttpRequest, item: Item) -> list[dict[str, Any]]:
    """The papers that this thing can have, each with its verb or with what forbids it."""
    if not access.may(request.user, "issue paper"):
        return []
    return papers_of(item)


def next_step(
    request: HttpRequest,
    item: Item,
    marks: list[Mark],
    photos: list[Hanging],
    hanging: Everything,
    panels: list[extensions.Panel],
) -> tuple[str, str] | None:
    """The one next thing to do here that this person may do: its verb and its address."""
    may_mark = item.made_here and access.may(request.user, "write", "Mark")
    if may_mark and not any(m.is_photographed_copy_mark for m in marks):
        return "Record its mark", reverse("mark_add", args=[item.number])
    onward = next((panel.step for panel in panels if panel.step), None)
    return onward or _own_step(request, item, photos, hanging)


def _own_step(request: HttpRequest, item: Item, photos: list[Hanging], hanging: Everything) -> tuple[str, str] | None:
    if item.made_here and item.status != Item.Status.WORKSHOP and (step := _step_of_accepted(request, item, hanging)):
        return step
    steps = [
        (not item.made_here and item.kind != Item.Kind.SHELL and not photos, "Photo", "Add photographs", "photo_add"),
        (
            item.kind == Item.Kind.ORIGINAL and not hanging.reports,
            "ConditionReport",
            "Examine its condition",
            "condition_add",
        ),
    ]
    for due, model, verb, name in steps:
        if due and access.may(request.user, "write", model):
            return verb, reverse(name, args=[item.number])
    return None


def _step_of_accepted(request: HttpRequest, item: Item, hanging: Everything) -> tuple[str, str] | None:
    """An accepted copy gets its wording, the wording its approval, and then the copy its papers."""
    label = getattr(item, "label", None)
    address = reverse("label_edit", args=[item.number])
    if label is None:
        return ("Write its label", address) if access.may(request.user, "write", "LabelWording") else None
    if not label.is_signed:
        return ("Approve the label", address) if access.may(request.user, "approve label") else None
    if not hanging.documents and access.may(request.user, "issue paper"):
        return "Issue the papers", f"{item.get_absolute_url()}#papers"
    return None
