from django import forms
from django.core.exceptions import ValidationError

from process.forms.asking import AsksUnusual
from process.models import Mould
from records import clock
from records.forms.base import RecordForm
from records.forms.lookup import LookupField
from records.models import Item
from records.numbers import SERIES, next_number

TAKEN = "{} is taken: each number stands for one thing. Open that one, or write another number."


class IdentityFields(forms.Form):
    """The item behind a mould or a core: number, title, owner, place."""

    number = forms.CharField(max_length=40)
    title = forms.CharField(max_length=300)
    owner = LookupField("parties", required=False, help_text="By default the owner of the original decides.")
    place = LookupField("places", required=False)

    def clean_number(self) -> str:
        number = self.cleaned_data["number"]
        if Item.objects.filter(number__iexact=number).exists():
            raise ValidationError(TAKEN.format(number))
        return number

    def identity(self) -> dict:
        return {name: self.cleaned_data[name] for name in ("number", "title", "owner", "place")}


POSSIBLE = {"contact_h": (0, 1e4), "working_temperature_degc": (-20, 400)}  # what no mould sees; common sense
MOULD_FIELDS = [
    "model", "side", "commission", "material", "batch", "barrier", "made_on", "made_by", "present", "contact_h",
    "working_temperature_degc", "demoulding", "pulls_allowed_count", "shrinkage_pct", "shrinkage_on", "accepted_on",
    "accepted_by",
]  # fmt: skip


class MouldForm(IdentityFields, AsksUnusual, RecordForm):
    model = LookupField("models", label="Taken from", help_text="Number of the piece.")
    commission = LookupField("commissions", required=False, help_text="By its number.")

    class Meta:
        model = Mould
        fields = MOULD_FIELDS
        evidence_fields = ["shrinkage_pct"]
        ranged = ["shrinkage_pct", "working_temperature_degc"]
        bounds = POSSIBLE
        groups = [
            ("Before: what it is taken from", ["number", "title", "model", "side", "commission", "owner", "place"]),
            (
                "At the moulding",
                [
                    "material",
                    "batch",
                    "barrier",
                    "made_on",
                    "made_by",
                    "present",
                    "contact_h",
                    "working_temperature_degc",
                ],
            ),
            (
                "After demoulding",
                ["demoulding", "pulls_allowed_count", "shrinkage_pct", "shrinkage_on", "accepted_on", "accepted_by"],
            ),
        ]
        help_texts = {"accepted_on": "Inspected under the lens, numbered, tagged with number, side and COPY OF."}

    def __init__(self, *args, **kwargs) -> None:
        super().__init__(*args, **kwargs)
        self.offer("number", next_number(Item, SERIES["mould"]))
        self.offer("made_on", clock.today())

    def clean_made_on(self):
        return not_in_future(self.cleaned_data["made_on"])


class MouldChangeForm(AsksUnusual, RecordForm):
    """What may still be mended; from which piece a mould was taken is a fact of its descent."""

    class Meta:
        model = Mould
        fields = [
            "material",
            "batch",
            "barrier",
            "contact_h",
            "working_temperature_degc",
            "demoulding",
            "shrinkage_pct",
            "shrinkage_on",
            "pulls_allowed_count",
            "accepted_on",
            "accepted_by",
            "custodian",
            "kept_how",
            "decide_by",
            "fate",
            "fate_on",
            "fate_witness",
            "fate_how",
        ]
        evidence_fields = ["shrinkage_pct"]
        ranged = ["shrinkage_pct", "working_temperature_degc"]
        bounds = POSSIBLE
        groups = [
            ("As made", ["material", "batch", "barrier", "contact_h", "working_temperature_degc", "demoulding"]),
            (
                "As accepted and used",
                ["pulls_allowed_count", "shrinkage_pct", "shrinkage_on", "accepted_on", "accepted_by"],
            ),
            ("Who keeps it", ["custodian", "kept_how", "decide_by"]),
            ("What became of it", ["fate", "fate_on", "fate_witness", "fate_how"]),
        ]

    def clean(self) -> dict:
        cleaned = super().clean()
        gone = {Mould.Fate.DESTROYED, Mould.Fate.RETURNED, Mould.Fate.LOST}
        if cleaned.get("fate") in gone and not cleaned.get("fate_on"):
            self.add_error("fate_on", "Say when: the consent and the certificate depend on the date.")
        return cleaned


def not_in_future(day):
    if day > clock.today():
        raise ValidationError("This day lies in the future: record it when it has happened.")
    return day
