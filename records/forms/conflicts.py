"""Two people at the same record: the second sees what the first changed; nothing is overwritten silently."""

from typing import Any, NamedTuple

from django import forms
from django.core.exceptions import FieldDoesNotExist
from django.db import models, transaction

from records import units

CHANGED = (
    "Someone else saved this record after you opened it: compare the fields below, mend yours where theirs "
    "is right, and save again."
)
MOVED_ON = "Someone else changed this after you opened it: look at it as it stands now, and send it again."
REMOVED = "This record has been removed meanwhile: copy what you typed, it cannot be saved here."


class Difference(NamedTuple):
    label: str
    theirs: str
    yours: str


class StaleRecord(RuntimeError):
    """The row changed between the check of the form and its saving: the form has to be sent again."""


class VersionLock:
    """For a model form of a row with a `version`: posts it hidden, compares it, raises it on saving."""

    conflict: list[Difference]

    def lock_version(self) -> None:
        self.conflict = []
        self._locked = hasattr(self.instance, "version") and not self.instance._state.adding
        self._version_seen = getattr(self.instance, "version", 0)
        if self._locked:
            self.fields["version"] = forms.CharField(
                required=False, widget=forms.HiddenInput, initial=self._version_seen
            )

    def _post_clean(self) -> None:
        super()._post_clean()
        if not self._locked:
            return
        current = type(self.instance)._base_manager.filter(pk=self.instance.pk).first()
        if current is None:
            self.add_error(None, REMOVED)
        elif self.cleaned_data.get("version") != str(current.version):
            self.conflict = differences(self, current)
            self.add_error(None, CHANGED)
            # What is sent next has seen this version.
            self.data = self.data.copy()
            self.data[self.add_prefix("version")] = str(current.version)
        else:
            self._version_seen = current.version

    def save(self, commit: bool = True) -> Any:
        if self.errors or not self._locked:
            return super().save(commit)
        with transaction.atomic():
            self._refuse_if_stale()
            self.instance.version = self._version_seen
            return super().save(commit)

    def _refuse_if_stale(self) -> None:
        rows = type(self.instance)._base_manager.select_for_update().filter(pk=self.instance.pk)
        if rows.values_list("version", flat=True).first() != self._version_seen:
            raise StaleRecord(CHANGED)


class AsItStood(forms.Form):
    """For a form about a row that is not the row's own form: what was answered to an older state is shown again first.

    `stands` is set before the fields are made; a sending without a version, as from a script, is taken.
    """

    stands: models.Model

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["version"] = forms.CharField(
            required=False, widget=forms.HiddenInput, initial=self.stands.version, max_length=20
        )

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if cleaned.pop("version", "") not in ("", str(self.stands.version)):
            self.add_error(None, MOVED_ON)
            self.data = self.data.copy()
            self.data[self.add_prefix("version")] = str(self.stands.version)
        return cleaned


def differences(form: Any, current: models.Model) -> list[Difference]:
    """The fields of this form in which the stored row and the posted one differ."""
    found = []
    for name in form.fields:
        try:
            column = current._meta.get_field(name)
        except FieldDoesNotExist:
            continue
        if name == "version" or _is_same(form, name, column, current):
            continue
        theirs, yours = _stored(current, column), _posted(form, name, column)
        if theirs != yours:
            found.append(Difference(str(form[name].label), theirs, yours))
    return found


def _is_same(form: Any, name: str, column: models.Field, current: models.Model) -> bool:
    """Equal as stored, in whatever unit it was written."""
    if name in form.errors or column.many_to_many:
        return False
    return column.value_from_object(form.instance) == column.value_from_object(current)


def _posted(form: Any, name: str, column: models.Field) -> str:
    if name in form.errors:
        value = form[name].value()
        return " ".join(str(part) for part in value if part) if isinstance(value, list) else str(value or "")
    if column.many_to_many:
        return _listed(form.cleaned_data.get(name) or ())
    return _stored(form.instance, column)


def _stored(row: models.Model, column: models.Field) -> str:
    if column.many_to_many:
        return _listed(getattr(row, column.name).all())
    value = getattr(row, column.name)
    if value is None or value == "":
        return ""
    if column.choices:
        return str(getattr(row, f"get_{column.name}_display")())
    suffix = units.suffix_of(column.name) if isinstance(column, models.FloatField) else None
    if suffix:
        typed = (row.as_typed.get(column.name) or {}).get("unit")
        choice = units.unit_choice(suffix, typed)
        return f"{units.plain(units.from_canonical(float(value), choice, suffix))} {choice.symbol}"
    return str(value)


def _listed(rows: Any) -> str:
    return ", ".join(sorted(str(row) for row in rows))
