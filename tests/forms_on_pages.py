"""Every form that a page shows, found by asking for every page; and what a browser would send of it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import FunctionType
from typing import Any

from django import forms
from django.forms.formsets import ManagementForm
from django.test import Client

from records.forms.quantities import QuantityField
from tests.addresses import address, routes

# Pages whose form depends on what is asked: route -> further questions.
VARIANTS: dict[str, tuple[str, ...]] = {
    "event_add": tuple(f"?kind={kind}" for kind in ("covered", "current", "interruption", "restart", "stop")),
}
SENT_TO = {"trace": "decisions/"}  # the form is answered by another address than the page's own
ASKING = {"mark_plan", "mixture"}  # forms that only ask, and keep nothing
NUMBERS = (QuantityField, forms.IntegerField)  # FloatField and DecimalField are IntegerFields


@dataclass
class Page:
    """An address with the forms that stand on it, rows of form sets among them."""

    route: str
    where: str
    forms: list[forms.BaseForm]

    @property
    def name(self) -> str:
        return f"{self.where} {type(self.forms[0]).__name__}"

    def sent(self, text: str | None = None, kind: Any = NUMBERS) -> dict[str, Any]:
        """What a browser sends of the page as it is shown; `text` in every field of a kind."""
        data: dict[str, Any] = {}
        for form in self.forms:
            data |= _sent(form)
            data |= {} if text is None else {form.add_prefix(name): text for name in fields_of(form, kind)}
        return data

    def send(self, client: Client, data: dict[str, Any]) -> Any:
        where = self.where + SENT_TO.get(self.route, "")
        return (client.get if self.route in ASKING else client.post)(where, data)

    def back(self, answer: Any) -> dict[str | None, forms.BaseForm]:
        """The same forms in the page's answer, by their prefixes."""
        return {form.prefix: form for form in forms_in(answer.context)}


def pages_with_forms(client: Client, rows: Mapping[str, Any]) -> list[Page]:
    """Each page that shows a form."""
    found = []
    for route in sorted(set(routes()) - {"sign_out"}):
        usual = address(route, rows)
        for where in (usual, *(usual.split("?")[0] + more for more in VARIANTS.get(route, ()))):
            shown = [form for form in forms_in(client.get(where).context) if not type(form).__name__.endswith("Filter")]
            if shown:
                found.append(Page(route, where, shown))
    return found


def forms_in(context: Any) -> list[forms.BaseForm]:
    """Forms and the rows of form sets, each once."""
    found: dict[int, forms.BaseForm] = {}
    for layer in context or ():
        for one in getattr(layer, "dicts", [layer]):
            for value in one.values():
                for form in _forms_of(value):
                    found[id(form)] = form
    return list(found.values())


def _forms_of(value: Any) -> Iterator[forms.BaseForm]:
    if isinstance(value, forms.BaseForm):
        yield value
        for each in vars(value).values():
            if isinstance(each, forms.BaseFormSet):
                yield from _forms_of(each)
    elif isinstance(value, forms.BaseFormSet):
        yield value.management_form
        yield from value.forms


def _sent(form: forms.BaseForm) -> dict[str, Any]:
    data: dict[str, Any] = {}
    for bound in form:
        value, widget = bound.value(), bound.field.widget
        if isinstance(widget, forms.MultiWidget):
            parts = value if isinstance(value, list) else widget.decompress(value)
            for ending, part in zip(widget.widgets_names, parts, strict=False):
                data[bound.html_name + ending] = "" if part is None else part
        elif isinstance(value, bool):
            data |= {bound.html_name: "on"} if value else {}
        elif value is not None:
            data[bound.html_name] = getattr(value, "pk", value)
    return data


def fields_of(form: forms.BaseForm, kind: Any) -> dict[str, forms.Field]:
    """The fields of one kind; those of a form set's own bookkeeping are none of a person's."""
    if isinstance(form, ManagementForm):
        return {}
    fits = kind if isinstance(kind, FunctionType) else (lambda field: isinstance(field, kind))
    return {name: field for name, field in form.fields.items() if fits(field)}
