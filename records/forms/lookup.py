"""Fields for a record out of a list that grows without end: it is called by its number or name, never unrolled."""

from dataclasses import replace
from typing import Any
from urllib.parse import urlencode

from django import forms
from django.core.exceptions import ValidationError
from django.db.models import Model, QuerySet
from django.urls import reverse

from records import access
from records.forms.newcomers import Typed, begin, new_field, read
from records.lookups import LONGEST, LONGEST_LIST, LOOKUPS, MOST, USUAL, Lookup, last_of, split

SEVERAL = "By their numbers, a comma or a new line between."


class LookupWidget(forms.Widget):
    """A line (or several) of text; beneath it what the numbers stand for, and a few that fit what is typed."""

    template_name = "records/_lookup.html"

    def __init__(self, kind: str, several: bool = False, attrs: dict[str, Any] | None = None, inside: str = "") -> None:
        self.kind, self.several, self.inside = kind, several, inside
        self.lookup = LOOKUPS[kind].inside(inside)
        self.known: dict[str, Model] = {}  # rows that were looked up already while the form was read or filled
        self.may_add = False
        super().__init__(attrs)

    def get_context(self, name: str, value: Any, attrs: dict[str, Any] | None) -> dict[str, Any]:
        context = super().get_context(name, value, attrs)
        asked = {"name": name} | ({"several": 1} if self.several else {}) | ({"in": self.inside} if self.inside else {})
        address = f"{reverse('lookup', args=[self.kind])}?{urlencode(asked)}"
        shown = self.shown(str(value or ""))
        return context | {
            "several": self.several, "address": address, "live": False, **shown,
            "new": new_field(self.lookup, name, value, shown["wanted"]) if self.may_add else None,
            "elsewhere": self._entered_elsewhere(shown["wanted"]),
            "at_hand": [] if self.several else self._named(self.lookup.nearest()),
        }  # fmt: skip

    def value_from_datadict(self, data: Any, files: Any, name: str) -> Any:
        return read(data, name)

    def shown(self, text: str) -> dict[str, Any]:
        """What stands beneath the field: the rows chosen, and where one is missing those it may be."""
        text = text[: LONGEST_LIST if self.several else LONGEST]
        rows, missing = split(text, self.lookup) if self.several else self._one(text)
        typed = (last_of(text) if self.several else text).strip()
        wanted = typed if typed in missing else missing[0] if missing else ""
        return {
            "chosen": self._named(rows),
            "offered": self._named(self.lookup.suggest(wanted)),
            "wanted": wanted,
        }

    def _named(self, rows: list[Model]) -> list[tuple[str, str]]:
        return [(self.lookup.called(row), self.lookup.about(row)) for row in rows]

    def _one(self, text: str) -> tuple[list[Model], list[str]]:
        name = one_line(text)
        if name in self.known:
            return [self.known[name]], []
        return one(name, self.lookup)

    def _entered_elsewhere(self, wanted: str) -> str:
        """Where a thing that is not there yet is entered, on a page of its own."""
        return reverse(self.lookup.entered_at) if wanted and self.lookup.entered_at else ""


class LookupField(forms.CharField):
    """One record by its number or name; cleans to the row, or None. `kind` is a key of `LOOKUPS`.

    `within` narrows it to the rows of one record, by its number, or `rows` to just these; with `few` they are set out
    to be chosen as long as they are no more than `MOST`. A row that stands there from before may stay, whatever is
    offered now. Whoever may write such rows can have a new one begun with the form: it cleans to a row without a key,
    which `newcomers.keep` saves with the rest.
    """

    several = False
    set_out: type[forms.Select] = forms.Select

    def __init__(
        self,
        kind: str = "things",
        *,
        words: str = "",
        within: str = "",
        rows: QuerySet | None = None,
        few: bool = False,
        **kwargs: Any,
    ) -> None:
        """`words` stand in the line while it is empty, in the sentence of a filter."""
        self.kind, self.words = kind, words
        self.lookup = LOOKUPS[kind].inside(within)
        if rows is not None:
            self.lookup = replace(self.lookup, rows=rows.all)
        self.before: Any = None
        self.first: Model | None = None  # of the rows that are set out
        self.by_key: dict[int, Model | None] = {}
        self.may_add = False
        choices = self._set_out(kwargs.get("required", True)) if few else None
        line = LookupWidget(kind, self.several, {"placeholder": words} if words else None, within)
        widget = self.set_out(choices=choices) if choices else line
        super().__init__(**{"widget": widget, "max_length": LONGEST_LIST if self.several else LONGEST} | kwargs)

    def _set_out(self, required: bool) -> list[tuple[str, str]] | None:
        """Choices of the few rows there are, or nothing where they are many; none at all are asked by number, too."""
        rows = list(self.lookup.rows()[: MOST + 1])
        self.first, self.by_key = (rows[0] if rows else None), {row.pk: row for row in rows}
        if not 0 < len(rows) <= MOST:
            return None
        named = [(self.lookup.called(row), self.lookup.about(row)) for row in rows]
        choices = [(called, f"{called} {about}".strip()) for called, about in named]
        return choices if self.several else [("", "choose" if required else "not said"), *choices]

    def let_add(self, user: Any) -> None:
        """Offer a new row to those who may write it."""
        self.may_add = bool(self.lookup.begun) and access.may(user, "write", self.lookup.model)
        if isinstance(self.widget, LookupWidget):
            self.widget.may_add = self.may_add

    def prepare_value(self, value: Any) -> Any:
        """A form of a row begins with its key, a view with the row itself, a person with text."""
        if isinstance(value, int):
            if value not in self.by_key:
                self.by_key = self.by_key | {value: self.lookup.everything().filter(pk=value).first()}
            value = self.by_key[value]
        if isinstance(value, Model):
            self._know(value)
            return self.lookup.called(value)
        return value

    def has_changed(self, initial: Any, data: Any) -> bool:
        return super().has_changed(self.prepare_value(initial), data)

    def clean(self, value: Any) -> Any:
        value = self.prepare_value(value)  # a field that may not be changed comes with its row's key
        text = super().clean(value)
        typed = value if isinstance(value, Typed) else Typed(text)
        if typed.is_new and text:
            return begin(self.lookup, text, typed, self.may_add)
        rows, missing = one(text, self.lookup)
        if missing:
            rows = self._from_before(missing)
        if rows:
            self._know(rows[0], text)
        return rows[0] if rows else None

    def _from_before(self, missing: list[str]) -> list[Model]:
        named = self.lookup.named(missing, self.lookup.everything())
        rows = [row for row in named.values() if row.pk == self.before]
        if not rows:
            raise self.not_there(missing)
        return rows

    def _know(self, row: Model, text: str = "") -> None:
        if isinstance(self.widget, LookupWidget):
            names = {self.lookup.called(row), one_line(text)} - {""}
            self.widget.known = self.widget.known | dict.fromkeys(names, row)

    def not_there(self, names: list[str]) -> ValidationError:
        """Which names are not there, and whether they are there but not for this, or stand for several."""
        lookup = self.lookup
        barred = lookup.named(names, lookup.everything()) if lookup.hint else {}
        if barred:
            said = ", ".join(lookup.called(row) for row in barred.values())
            return ValidationError(f"{said} cannot stand here: {lookup.hint}.", code="barred")
        several = [name for name, rows in lookup.alike(names).items() if len(rows) > 1]
        if several:
            return ValidationError(f"“{several[0]}” may be one of several: write it in full.", code="several")
        said = " nor ".join(f"“{name}”" for name in names)
        called = "is called" if lookup.key == "name" else "has the number"
        return ValidationError(f"No {lookup.noun} {called} {said}: {self._what_to_do()}.", code="missing")

    def _what_to_do(self) -> str:
        if self.words:
            return "look at the spelling again, or write less of it"
        if self.may_add:
            return "look at the spelling again, or tick that it is a new one"
        if self.lookup.begun:
            return "look at the spelling again, or ask the registrar to enter it"
        return f"look at the number again, or enter that {self.lookup.noun} first"


class LookupListField(LookupField):
    """Several records by their numbers, apart by commas or on lines of their own; cleans to a list of rows."""

    several = True
    set_out = forms.CheckboxSelectMultiple

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        if isinstance(self.widget, LookupWidget):
            self.help_text = self.help_text or SEVERAL

    def prepare_value(self, value: Any) -> Any:
        if value is None or isinstance(value, str):
            return value
        names = [each if isinstance(each, str) else self.lookup.called(each) for each in value]
        return "\n".join(names) if isinstance(self.widget, LookupWidget) else names

    def has_changed(self, initial: Any, data: Any) -> bool:
        return forms.CharField.has_changed(self, self._lines(self.prepare_value(initial)), self._lines(data))

    def _lines(self, value: Any) -> str:
        return "\n".join(value) if isinstance(value, list) else value or ""

    def clean(self, value: Any) -> list[Any]:
        text = forms.CharField.clean(self, self._lines(value))
        rows, missing = split(text, self.lookup)
        if missing:
            raise self.not_there(missing)
        if self.required and not rows:
            raise ValidationError(self.error_messages["required"], code="required")
        return rows


def instead_of(
    field: forms.ModelChoiceField, kind: str = "", before: Any = None, row: Model | None = None
) -> LookupField:
    """The look-up in place of a choice out of all rows; `before` is the key of the row so far, `row` itself if read."""
    common = {key: getattr(field, key) for key in ("required", "label", "help_text", "initial", "disabled")}
    found = LookupField(kind or USUAL[field.queryset.model], **common)
    found.before = before
    found.by_key = {row.pk: row} if row is not None and "__" not in found.lookup.key else {}
    return found


def one_line(text: str) -> str:
    return " ".join(text.replace("\0", "").split())


def one(text: str, lookup: Lookup, rows: QuerySet | None = None) -> tuple[list[Any], list[str]]:
    """The row of a single name, or the name that is not there. A comma is a part of it."""
    name = one_line(text)
    found = list(lookup.named([name], rows).values()) if name else []
    return found, [name] if name and not found else []
