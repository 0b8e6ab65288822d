"""Fields for a record out of a list that grows without end: it is called by its number or name, never unrolled."""

from typing import Any

from django import forms
from django.core.exceptions import ValidationError
from django.db.models import Model
from django.urls import reverse

from records.lookups import LONGEST, LOOKUPS, last_of, split


class LookupWidget(forms.Widget):
    """A line (or several) of text; beneath it what the numbers stand for, and a few that fit what is typed."""

    template_name = "records/_lookup.html"

    def __init__(self, kind: str, several: bool = False, attrs: dict[str, Any] | None = None) -> None:
        self.kind, self.several = kind, several
        super().__init__(attrs)

    def get_context(self, name: str, value: Any, attrs: dict[str, Any] | None) -> dict[str, Any]:
        context = super().get_context(name, value, attrs)
        address = reverse("lookup", args=[self.kind]) + f"?name={name}" + ("&several=1" if self.several else "")
        return context | {"several": self.several, "address": address, "live": False, **self.shown(str(value or ""))}

    def shown(self, text: str) -> dict[str, Any]:
        """What stands beneath the field: the rows chosen, and where one is missing those it may be."""
        lookup = LOOKUPS[self.kind]
        text = text[:LONGEST]
        rows, missing = split(text, lookup) if self.several else one(text, lookup)
        typed = (last_of(text) if self.several else text).strip()
        wanted = typed if typed in missing else missing[0] if missing else ""
        return {
            "chosen": [(lookup.called(row), lookup.about(row)) for row in rows],
            "offered": [(lookup.called(row), lookup.about(row)) for row in lookup.suggest(wanted)],
            "wanted": wanted,
        }


class LookupField(forms.CharField):
    """One record by its number or name; cleans to the row, or None. `kind` is a key of `LOOKUPS`."""

    several = False

    def __init__(self, kind: str = "things", **kwargs: Any) -> None:
        self.kind = kind
        self.lookup = LOOKUPS[kind]
        kwargs.setdefault("widget", LookupWidget(kind, self.several))
        super().__init__(**kwargs)

    def prepare_value(self, value: Any) -> Any:
        """A form of a row begins with its key, a view with the row itself, a person with text."""
        if isinstance(value, int):
            value = self.lookup.everything().filter(pk=value).first()
        return self.lookup.called(value) if isinstance(value, Model) else value

    def has_changed(self, initial: Any, data: Any) -> bool:
        return super().has_changed(self.prepare_value(initial), data)

    def clean(self, value: Any) -> Any:
        text = super().clean(value)
        rows, missing = one(text, self.lookup)
        if missing:
            raise self.not_there(missing)
        return rows[0] if rows else None

    def not_there(self, names: list[str]) -> ValidationError:
        """Which names are not there, and whether they are there but not for this."""
        barred = self.lookup.named(names, self.lookup.everything())
        if barred:
            said = ", ".join(self.lookup.called(row) for row in barred.values())
            return ValidationError(f"{said} cannot stand here: {self.lookup.hint}.", code="barred")
        said = " nor ".join(f"“{name}”" for name in names)
        if self.lookup.key == "name":
            return ValidationError(
                f"No {self.lookup.noun} is called {said}: look at the spelling again.", code="missing"
            )
        enter = f"enter that {self.lookup.noun} first"
        return ValidationError(
            f"No {self.lookup.noun} has the number {said}: look at the number again, or {enter}.", code="missing"
        )


class LookupListField(LookupField):
    """Several records by their numbers, apart by commas or on lines of their own; cleans to a list of rows."""

    several = True

    def prepare_value(self, value: Any) -> Any:
        if value is None or isinstance(value, str):
            return value
        return "\n".join(self.lookup.called(row) for row in value)

    def clean(self, value: Any) -> list[Any]:
        text = forms.CharField.clean(self, value)
        rows, missing = split(text, self.lookup)
        if missing:
            raise self.not_there(missing)
        if self.required and not rows:
            raise ValidationError(self.error_messages["required"], code="required")
        return rows


def one(text: str, lookup: Any) -> tuple[list[Any], list[str]]:
    """The row of a single name, or the name that is not there. A comma is a part of it."""
    name = " ".join(text.replace("\0", "").split())
    rows = list(lookup.named([name]).values())[:1] if name else []
    return rows, [name] if name and not rows else []
