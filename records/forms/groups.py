"""Fields grouped by the moment in which a person knows the answer."""

from typing import Any, NamedTuple

from django.forms import BoundField


class Group(NamedTuple):
    title: str
    folded: bool
    fields: list[BoundField]


def grouped(form: Any, groups: Any) -> list[Group]:
    """The groups in their order, then what is in none; a group folds away if nothing in it is needed."""
    visible = {field.name: field for field in form.visible_fields()}
    result = []
    for title, names in groups:
        fields = [visible.pop(name) for name in names if name in visible]
        if fields:
            result.append(Group(title, bool(result) and _may_fold(fields), fields))
    if visible:
        rest = list(visible.values())
        result.append(Group("Further details" if result else "", bool(result) and _may_fold(rest), rest))
    return result


def _may_fold(fields: list[BoundField]) -> bool:
    return not any(field.field.required or field.errors or _is_filled(field) for field in fields)


def _is_filled(field: BoundField) -> bool:
    """Something is written in it; the unit that stands chosen beside an empty number does not count."""
    value = field.value()
    if isinstance(value, list):
        return any(part for index, part in enumerate(value) if index != 1)
    return value not in (None, "", False)
