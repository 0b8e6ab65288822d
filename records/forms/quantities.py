"""A number and its unit in one field, with, folded away, how it is known."""

import json
from dataclasses import replace
from typing import Any

from django import forms
from django.core.exceptions import ValidationError

from records import units
from records.forms.bounds import refuse_beyond
from records.units.echo import echo_table

EVIDENCE_KINDS = {
    "measured": "measured",
    "calculated": "calculated",
    "estimated": "estimated",
    "quoted": "quoted from a source",
    "unknown": "not known",
}
LONGEST_METHOD = 200


class QuantityWidget(forms.MultiWidget):
    """A text box for the number, a choice of units beside it, and the evidence beneath."""

    template_name = "components/_quantity_input.html"
    use_fieldset = False

    def __init__(self, suffix: str, evidence: bool = False, attrs: dict[str, Any] | None = None) -> None:
        self.suffix = suffix
        self.evidence = evidence
        self.label = ""
        self.currency = units.MONEY_SIGN
        symbols = [(choice.symbol, choice.symbol) for choice in units.CHOICES[suffix]]
        # No maxlength: too long a text is answered with a sentence, not cut off.
        number = forms.TextInput({"inputmode": "decimal", "autocomplete": "off", "class": "quantity-number"})
        parts: dict[str, forms.Widget] = {
            "": number,
            "unit": forms.Select({"class": "quantity-unit"}, choices=symbols),
        }
        if evidence:
            kinds = [("", "not said"), *EVIDENCE_KINDS.items()]
            parts["kind"] = forms.Select(choices=kinds)
            parts["method"] = forms.TextInput()
            parts["margin"] = forms.TextInput({"inputmode": "decimal", "autocomplete": "off"})
        super().__init__(parts, attrs)

    def decompress(self, value: Any) -> list[str]:
        """What stands in the parts for a stored number, or for the words in which it was once typed."""
        if isinstance(value, units.Parsed):
            value = value.as_typed()
        if isinstance(value, dict):
            parts = _as_written(value, self.suffix)
        else:
            number = "" if value in (None, "") else _plain(value)
            parts = [number, units.CHOICES[self.suffix][0].symbol, "", "", ""]
        return parts[: len(self.widgets)]

    def id_for_label(self, id_: str) -> str:
        return id_

    def get_context(self, name: str, value: Any, attrs: dict[str, Any] | None) -> dict[str, Any]:
        context = super().get_context(name, value, attrs)
        parts = context["widget"]["subwidgets"]
        base_id = context["widget"]["attrs"].get("id", name)
        for part, ending in zip(parts, ("", "_unit", "_kind", "_method", "_margin"), strict=False):
            part["attrs"]["id"] = f"{base_id}{ending}"
            if ending:
                for key in ("required", "aria-describedby", "aria-invalid"):
                    part["attrs"].pop(key, None)
        parts[1]["attrs"]["aria-label"] = f"{_TITLES[1]} of {self.label or name}"
        written = [part["value"] for part in parts]
        context["number"], context["unit"] = parts[:2]
        context["one_unit"] = self._only_unit()
        context["evidence"] = list(zip(_TITLES[2:], parts[2:], strict=False))
        context["evidence_filled"] = any(value not in (None, "", [""]) for value in written[2:])
        context["echo"] = self._echo(written)
        context["echo_table"] = json.dumps(table) if (table := echo_table(self.suffix)) else ""
        return context

    def _only_unit(self) -> str:
        """What stands beside the number where there is nothing to choose; nothing where there is."""
        offered = units.CHOICES[self.suffix]
        return "" if len(offered) > 1 else units.in_currency(offered[0].symbol, self.currency)

    def _echo(self, written: list[Any]) -> str:
        """The same quantity in the other usual unit; nothing while the text cannot be read."""
        unit = written[1][0] if isinstance(written[1], list) and written[1] else None
        try:
            parsed = units.parse(written[0] or "", self.suffix, unit)
        except units.UnitsError:
            return ""
        return units.other_unit(parsed.canonical, self.suffix, parsed.unit)


_TITLES = ("Number", "Unit", "How is it known", "Method or source", "± (a number, or a share such as 5 %)")


class QuantityField(forms.Field):
    """Cleans to `units.Parsed`, or None where nothing was typed."""

    default_error_messages = {"required": "Write a number; it is needed here."}

    def __init__(self, suffix: str, evidence: bool = False, reach: units.Reach | None = None, **kwargs: Any) -> None:
        self.suffix = suffix
        self.evidence = evidence
        self._reach = reach
        super().__init__(widget=kwargs.pop("widget", None) or QuantityWidget(suffix, evidence), **kwargs)

    @property
    def reach(self) -> units.Reach:
        """The outermost bounds; those of the unit where the field was given none of its own."""
        return self._reach or units.reach_of(self.suffix)

    def get_bound_field(self, form: forms.BaseForm, field_name: str) -> forms.BoundField:
        bound = super().get_bound_field(form, field_name)
        self.widget.label = bound.label
        return bound

    def has_changed(self, initial: Any, data: Any) -> bool:
        before = self.widget.decompress(initial)
        return any((old or "") != (new or "") for old, new in zip(before, data or [], strict=False) if new is not None)

    def clean(self, value: Any) -> units.Parsed | None:
        written = value if isinstance(value, list) else self.widget.decompress(value)
        text, unit, kind, method, margin = ([part or "" for part in written] + [""] * 5)[:5]
        if not text.strip():
            if margin.strip():
                raise ValidationError("Write the number that the ± belongs to.")
            if self.required:
                raise ValidationError(self.error_messages["required"], code="required")
            return None
        try:
            parsed = _with_margin(units.parse(text, self.suffix, unit or None), margin.strip(), self.suffix)
        except units.UnitsError as error:
            said = units.in_currency(str(error), self.widget.currency)
            raise ValidationError(said, code="unreadable") from error
        self._refuse_beyond(parsed)
        self.run_validators(parsed.canonical)
        return replace(parsed, kind=_kind(kind), method=_method(method))

    def _refuse_beyond(self, parsed: units.Parsed) -> None:
        try:
            refuse_beyond(parsed, self.reach, self.suffix)
        except ValidationError as error:
            said = units.in_currency(error.message, self.widget.currency)
            raise ValidationError(said, code=error.code) from error


def _with_margin(parsed: units.Parsed, margin: str, suffix: str) -> units.Parsed:
    if not margin:
        return parsed
    if parsed.plus_minus is not None:
        raise units.UnitsError("The ± stands beside the number and in its own box: write it once.")
    return replace(parsed, plus_minus=units.margin(margin, parsed.number, parsed.unit, suffix))


def _kind(kind: str) -> str:
    if kind and kind not in EVIDENCE_KINDS:
        raise ValidationError("Choose from the list how the number is known.")
    return kind


def _method(method: str) -> str:
    if len(method) > LONGEST_METHOD:
        raise ValidationError(
            f"Write the method in at most {LONGEST_METHOD} characters; the rest belongs in the notes."
        )
    return method.strip()


def _plain(value: Any) -> str:
    """A stored number as one would type it; words given as a first value stay words."""
    return units.plain(value) if isinstance(value, int | float) else str(value)


def _as_written(typed: dict[str, Any], suffix: str) -> list[str]:
    """The parts of a stored entry: exactly the text that was typed, its unit and its evidence."""
    text, unit, spread = str(typed.get("text") or ""), typed.get("unit") or None, typed.get("plus_minus")
    margin = ""
    if spread is not None and "±" not in text and "+" not in text[1:]:
        margin = units.plain(units.spread_from_canonical(spread, units.unit_choice(suffix, unit), suffix))
    if not text and typed.get("number") is not None:
        text = units.plain(typed["number"])
    return [
        text,
        units.unit_choice(suffix, unit).symbol,
        typed.get("kind") or "",
        typed.get("method") or "",
        margin,
    ]
