"""The form of a record: numbers with their units, instants, uncertain dates, and no silent overwriting."""

from collections.abc import Iterable
from typing import Any

from django import forms

from records import dating, units
from records.forms.bounds import CountField, FactorField
from records.forms.conflicts import VersionLock
from records.forms.dates import DayField, EdtfField, InstantField
from records.forms.duplicates import name_the_duplicate
from records.forms.groups import Group, grouped
from records.forms.lookup import instead_of
from records.forms.newcomers import new_rows
from records.forms.numbers import NumberField
from records.forms.quantities import QuantityField
from records.lookups import USUAL

# What is made or finished may come from a firm; these need eyes and a hand.
SEEN_BY = {
    "accepted_by", "added_by", "analyst", "assessor", "examiner", "fate_witness", "handed_by", "inspector",
    "made_up_by", "measured_by", "operator", "person", "placed_by", "present", "supervised_by", "taken_back_by",
    "taken_by", "tester", "witness",
}  # fmt: skip
MAY_LIE_AHEAD = ("due_on", "_by", "_to", "_from", "_until")
DATE_COMPANIONS = ("edtf", "earliest", "latest")


class RecordForm(VersionLock, forms.ModelForm):
    """A model form that reads its fields' names.

    A float whose name ends in a unit suffix becomes a number with its unit; the column gets the plain number,
    the row's `as_typed` what was written. A date and time becomes an instant. Text named `…_words` beside a
    column `…_edtf` becomes an uncertain date. In Meta: `evidence_fields` show how the number is known,
    `future_fields` may lie ahead (a day named `due_on`, `…_by`, `…_to`, `…_from`, `…_until` may anyway), `bounds` are
    closer ones than `units.reach_of` has, `groups` is a list of (title, fields). A choice of people, places, things …
    becomes a look-up.

    After cleaning, `cleaned_data` holds plain numbers and words; `entered` the `units.Parsed` of each number.
    """

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.entered: dict[str, units.Parsed | None] = {}
        self.datings: dict[str, dating.Dating | None] = {}
        for name, field in list(self.fields.items()):
            self.fields[name] = self._fitting(name, field)
            _name_the_empty_choice(self.fields[name])
            if isinstance(self.fields[name], QuantityField):
                self._recall_what_was_typed(name)
        self.lock_version()

    def offer(self, name: str, value: Any) -> None:
        """A first value for a field that has none; a new row's own empty columns do not count as one."""
        if self.initial.get(name) in (None, ""):
            self.initial[name] = value

    def grouped(self) -> list[Group]:
        """(title, folded, bound fields) as Meta.groups says; fields without a group come last."""
        return grouped(self, self._from_meta("groups"))

    def _from_meta(self, name: str) -> Any:
        return getattr(type(self).Meta, name, ())

    def _fitting(self, name: str, field: forms.Field) -> forms.Field:
        """The field that this name asks for."""
        if self._grows_without_end(field):
            before, row = getattr(self.instance, f"{name}_id", None), self.instance._state.fields_cache.get(name)
            return instead_of(field, "people" if name in SEEN_BY else "", before, row)
        common = {key: getattr(field, key) for key in ("required", "label", "help_text", "initial", "disabled")}
        if isinstance(field, forms.IntegerField):
            return self._fitting_number(name, field, common)
        if type(field) is forms.DateTimeField:
            return InstantField(allow_future=name in self._from_meta("future_fields"), **common)
        if type(field) is forms.CharField and name == "number":
            return NumberField(max_length=field.max_length, widget=field.widget, **common)
        if type(field) is forms.CharField and name.endswith("_words") and self._has_column(f"{name[:-5]}edtf"):
            return EdtfField(**common)
        if type(field) is forms.DateField:
            ahead = name in self._from_meta("future_fields") or name.endswith(MAY_LIE_AHEAD)
            return DayField(allow_future=ahead, **common)
        return field

    def _grows_without_end(self, field: forms.Field) -> bool:
        """A choice out of all people, places, things …"""
        return type(field) is forms.ModelChoiceField and field.queryset.model in USUAL

    def _fitting_number(self, name: str, field: forms.Field, common: dict[str, Any]) -> forms.Field:
        """A number with its bounds: those that the form gives, else those of its name or unit."""
        reach, suffix = dict(self._from_meta("bounds")).get(name) or units.reach_of(name), units.suffix_of(name)
        if type(field) is forms.FloatField and suffix:
            return QuantityField(suffix, name in self._from_meta("evidence_fields"), units.Reach(*reach), **common)
        if type(field) is forms.FloatField:
            return FactorField(units.Reach(*reach), **common)
        return CountField(units.Reach(*reach), **common) if type(field) is forms.IntegerField else field

    def _has_column(self, name: str) -> bool:
        return any(column.name == name for column in self._meta.model._meta.get_fields())

    def _recall_what_was_typed(self, name: str) -> None:
        """Show the words in which the number was entered, unless it was changed in another way since."""
        typed, value = getattr(self.instance, "as_typed", {}).get(name), getattr(self.instance, name, None)
        if not typed or value is None or self.initial.get(name) != value:
            return
        try:
            read = units.parse(str(typed.get("text")), units.suffix_of(name) or "", typed.get("unit"))
        except units.UnitsError:
            return
        if read.canonical == value:
            self.initial[name] = typed

    def _clean_fields(self) -> None:
        """Keep what was entered apart and hand plain values on, so that `clean` and the model see numbers."""
        super()._clean_fields()
        for name, field in self.fields.items():
            if name not in self.cleaned_data:
                continue
            value = self.cleaned_data[name]
            if isinstance(field, QuantityField):
                self.entered[name] = value
                self.cleaned_data[name] = None if value is None else value.canonical
            elif isinstance(field, EdtfField):
                self.datings[name] = value
                self.cleaned_data[name] = "" if value is None else value.words

    def _get_validation_exclusions(self) -> set[str]:
        """A newcomer has no key yet: it is saved first, when the whole form is."""
        return {*super()._get_validation_exclusions(), *(name for name, _ in new_rows(self))}

    def _post_clean(self) -> None:
        self._keep_what_was_typed()
        self._keep_bounds()
        super()._post_clean()

    def save(self, commit: bool = True) -> Any:
        self._tell_of_lists()
        return super().save(commit)

    def _tell_of_lists(self) -> None:
        """A list of records (objects, photographs) has no column in the history: its change stands in the reason."""
        if self.errors or self.instance._state.adding:
            return
        told = [getattr(self.instance, "_change_reason", None) or ""]
        for column in self.instance._meta.many_to_many:
            if column.name in self.changed_data and column.name in self.cleaned_data:
                before, after = getattr(self.instance, column.name).all(), self.cleaned_data[column.name]
                told.append(f"{self.fields[column.name].label}: {_listed(before)} → {_listed(after)}.")
        self.instance._change_reason = " ".join(filter(None, told)) or None

    def _update_errors(self, errors: Any) -> None:
        super()._update_errors(name_the_duplicate(self, errors))

    def _keep_what_was_typed(self) -> None:
        if not hasattr(self.instance, "as_typed"):
            return
        kept = dict(self.instance.as_typed)
        for name, parsed in self.entered.items():
            before = kept.pop(name, None)
            if parsed is not None:
                kept[name] = self._with_earlier_evidence(name, parsed.as_typed(), before)
        self.instance.as_typed = kept

    def _with_earlier_evidence(self, name: str, typed: dict[str, Any], before: dict[str, Any] | None) -> dict[str, Any]:
        """A form that does not ask for evidence leaves it as it was while the number is the same."""
        same = before and (before.get("number"), before.get("unit")) == (typed["number"], typed["unit"])
        if self.fields[name].evidence or not before or not same:
            return typed
        return {**before, **{key: value for key, value in typed.items() if value not in ("", None)}}

    def _keep_bounds(self) -> None:
        for name, read in self.datings.items():
            for companion in DATE_COMPANIONS:
                column = f"{name[:-5]}{companion}"
                if self._has_column(column):
                    empty = "" if companion == "edtf" else None
                    setattr(self.instance, column, getattr(read, companion) if read else empty)


def _listed(rows: Iterable[Any]) -> str:
    return ", ".join(sorted(map(str, rows))) or "none"


def _name_the_empty_choice(field: forms.Field) -> None:
    """A row of dashes says nothing: the empty choice says whether it may stay."""
    words = "choose" if field.required else "not said"
    if isinstance(field, forms.ModelMultipleChoiceField):
        return
    if isinstance(field, forms.ModelChoiceField) and field.empty_label is not None:
        field.empty_label = words
    elif isinstance(field, forms.ChoiceField) and not isinstance(field, forms.ModelChoiceField):
        field.choices = [(key, words if key in ("", None) else label) for key, label in field.choices]
