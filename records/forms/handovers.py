"""A copy in other hands: what is agreed, how it goes, how it comes back."""

from typing import Any

from django import forms
from django.db.models import Q

from records import clock
from records.forms.base import RecordForm
from records.forms.lookup import LookupField
from records.forms.money import say_currency
from records.models import HandlingSession, Handover
from records.units import show

Kind = Handover.Kind
SAME_MASS_G, SAME_MASS_SHARE = 0.02, 0.0005  # two balances, one piece: common practice


class AgreementForm(RecordForm):
    """Everything that stands before the copy moves."""

    class Meta:
        model = Handover
        fields = [
            "number", "kind", "party", "purpose", "serves", "agreed_on", "due_on", "described_as", "terms",
            "commission", "value_money", "price_money", "currency",
        ]  # fmt: skip
        groups = [
            ("What is agreed", ["number", "kind", "party", "purpose", "serves", "agreed_on", "due_on", "described_as"]),
            ("Conditions, value, commission", ["terms", "value_money", "price_money", "currency", "commission"]),
        ]
        future_fields = ["due_on"]
        bounds = {"value_money": (0, 1e7), "price_money": (0, 1e7)}
        widgets = {"terms": forms.Textarea({"rows": 3})}
        help_texts = {
            "purpose": "Of a finisher the work, of a loan what it is for.",
            "serves": "The owners’ consents are asked whether they allow it. Not needed for work outside.",
            "due_on": "For work outside and for a loan. Past it, the home page asks for the piece.",
            "described_as": "How the receiver’s lists and labels call it: kind of copy and date first. Not needed for "
            "work outside.",
            "price_money": "Of a sale.",
            "value_money": "While it is in other hands: what it would cost to make it anew.",
            "currency": "What the sums are in: EUR, USD.",
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        kept = Q(is_retired=False) | Q(pk=self.instance.serves_id)
        self.fields["serves"].queryset = self.fields["serves"].queryset.filter(kept)
        self.fields["kind"].disabled = self.instance.out_on is not None  # owner, place and papers follow from it
        say_currency(self)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        kind, due, agreed = (cleaned.get(name) for name in ("kind", "due_on", "agreed_on"))
        if kind in Handover.RETURNING and not due and "due_on" not in self.errors:
            self.add_error("due_on", "Say when it is due back: without a day nobody asks for it.")
        if kind in Handover.FINAL and due:
            self.add_error("due_on", f"After {'an' if kind == Kind.EXCHANGE else 'a'} {kind} nothing comes back.")
        if due and agreed and due < agreed:
            self.add_error("due_on", "It is due back before it was agreed: correct one of the two days.")
        if kind and kind != Kind.FINISHER and not cleaned.get("described_as"):
            self.add_error("described_as", "Say how the receiver describes it, beginning with the kind of copy.")
        if kind in (Kind.LOAN, Kind.GIFT) and not cleaned.get("serves"):
            self.add_error("serves", "Say what it serves as there: the owners may have allowed some purposes only.")
        if kind == Kind.SALE and cleaned.get("price_money") is None and "price_money" not in self.errors:
            self.add_error("price_money", "A sale has its price.")
        has_sum = any(cleaned.get(name) is not None for name in ("value_money", "price_money"))
        if has_sum and not cleaned.get("currency") and "currency" not in self.errors:
            self.add_error("currency", "Say what the sum is in.")
        return cleaned


class HandingForm(RecordForm):
    """The moment in which the copy goes out of hand."""

    limits_told = forms.BooleanField(label="The receiver was told how it may be used", required=True)

    class Meta:
        model = Handover
        fields = [
            "out_on", "handed_by", "condition_out", "mass_out_g", "packing", "receiver", "acknowledged_on",
        ]  # fmt: skip
        evidence_fields = ["mass_out_g"]
        bounds = {"mass_out_g": (0.001, 1e6)}
        groups = [("", ["out_on", "handed_by", "condition_out", "mass_out_g", "packing"]),
                  ("The receiver", ["receiver", "acknowledged_on", "limits_told"])]  # fmt: skip
        widgets = {"condition_out": forms.Textarea({"rows": 3})}
        help_texts = {
            "condition_out": "As it is now, in the words of the condition report; or that report’s number.",
            "mass_out_g": "On the balance, just before it goes.",
            "receiver": "The person who takes it, by name.",
            "acknowledged_on": "The day on which the receiver signed that it is a copy.",
        }

    def __init__(self, *args: Any, limits: list[str], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        works = self.instance.kind == Kind.FINISHER
        for name in ("out_on", "handed_by", "condition_out", "mass_out_g", "receiver", "acknowledged_on"):
            self.fields[name].required = not (works and name == "acknowledged_on")
        if limits:
            self.fields["limits_told"].help_text = " ".join(limits)
        else:
            del self.fields["limits_told"]
        if self.instance.out_on is None:
            self.offer("out_on", clock.today())

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        out, due = cleaned.get("out_on"), self.instance.due_on
        if out and out < self.instance.agreed_on:
            self.add_error(
                "out_on", f"It was agreed on {clock.day_words(self.instance.agreed_on)}: it went after that."
            )
        if out and due and due < out:
            self.add_error("out_on", f"It is due back on {clock.day_words(due)}: correct that day first.")
        return cleaned


class ReturnForm(RecordForm):
    """The moment in which the copy is in the house again."""

    place = LookupField("places", label="Now stands in", required=False, help_text="Empty: where it stood before.")

    class Meta:
        model = Handover
        fields = ["back_on", "taken_back_by", "condition_back", "mass_back_g", "change"]
        evidence_fields = ["mass_back_g"]
        bounds = {"mass_back_g": (0.001, 1e6)}
        groups = [("", ["back_on", "taken_back_by", "condition_back", "mass_back_g", "change", "place"])]
        widgets = {"condition_back": forms.Textarea({"rows": 3})}
        help_texts = {"condition_back": "Examined as on the way out: the same words, the same light."}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        for name in self.Meta.fields:
            self.fields[name].required = True
        if self.instance.back_on is None:
            self.offer("back_on", clock.today())

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        out, back = self.instance.mass_out_g, cleaned.get("mass_back_g")
        differs = out and back and abs(back - out) > max(SAME_MASS_G, SAME_MASS_SHARE * out)
        if differs and cleaned.get("change") == Handover.Change.NONE:
            self.add_error("change", _differs(out, back))
        return cleaned


def _differs(out: float, back: float) -> str:
    more = "more" if back > out else "less"
    return (
        f"It weighs {show(abs(back - out), '_g')} {more} than on the way out ({show(out, '_g')}), and “no change seen” "
        "is stated: correct one of the two."
    )


class CallOffForm(forms.Form):
    because = forms.CharField(label="Why", max_length=300)


class HandlingForm(RecordForm):
    limits_kept = forms.BooleanField(label="It was used only so", required=True)

    class Meta:
        model = HandlingSession
        bounds = {"time_h": (0.01, 24), "people_count": (1, 10_000)}
        fields = ["happened_on", "time_h", "people_count", "occasion", "supervised_by", "seen"]
        groups = [("", ["happened_on", "time_h", "people_count", "occasion", "supervised_by", "seen", "limits_kept"])]
        help_texts = {
            "occasion": "Touch table, school class, sorting.",
            "seen": "What was seen on it afterwards; empty: not looked at.",
        }

    def __init__(self, *args: Any, limits: list[str], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        if limits:
            self.fields["limits_kept"].help_text = " ".join(limits)
        else:
            del self.fields["limits_kept"]
        if self.instance._state.adding:
            self.offer("happened_on", clock.today())
