from django import forms

from records import clock
from records.forms.base import RecordForm
from records.forms.lookup import LookupField, LookupListField
from records.models import Commission, Consent, Specification, Term
from records.models.commissions import METALS
from records.numbers import SERIES, next_number
from records.purposes import SALE

# Words of a list that a consent holds to: column, list, what it means when none is ticked.
TICKED = {
    "purposes": (Term.Scheme.PURPOSE, "None ticked: for any purpose. Whether it may be sold is asked below."),
    "materials_allowed": (Term.Scheme.MOULD_MATERIAL, "None ticked: any that is not excluded."),
    "materials_excluded": (Term.Scheme.MOULD_MATERIAL, ""),
}


class CommissionForm(RecordForm):
    originals = LookupListField(
        "originals",
        help_text="Numbers of originals, or of copies that will be models; several apart by commas or on new lines.",
    )

    class Meta:
        model = Commission
        fields = ["number", "requested_on", "requester", "purpose", "purpose_words", "originals", "quantity_count",
                  "needed_by", "place_of_use", "likeness"]  # fmt: skip
        groups = [
            ("The request", ["number", "requested_on", "requester", "purpose", "purpose_words"]),
            ("What is wanted", ["originals", "quantity_count", "needed_by"]),
            ("Where it will live, and what it must be like", ["place_of_use", "likeness"]),
        ]

    def __init__(self, *args, **kwargs) -> None:
        super().__init__(*args, **kwargs)
        self.fields["purpose"].queryset = self.fields["purpose"].queryset.filter(is_retired=False)
        if not self.instance.pk:
            self.offer("number", next_number(Commission, SERIES["commission"]))
            self.offer("requested_on", clock.today())

    def clean(self) -> dict:
        cleaned = super().clean()
        requested, needed = cleaned.get("requested_on"), cleaned.get("needed_by")
        if requested and needed and needed < requested:
            self.add_error("needed_by", "It is needed before it was asked for: correct one of the two dates.")
        return cleaned


class ConsentForm(RecordForm):
    techniques_allowed = forms.MultipleChoiceField(
        label="Only these techniques", choices=Consent.Technique.choices, required=False,
        widget=forms.CheckboxSelectMultiple, help_text="None ticked: the consent does not say.",
    )  # fmt: skip

    class Meta:
        model = Consent
        fields = [
            "owner",
            "given_by",
            "authority",
            "given_on",
            "valid_from",
            "valid_to",
            "items",
            "techniques",
            "techniques_allowed",
            "materials_barred",
            "materials_allowed",
            "materials_excluded",
            "purposes",
            "temperature_max_degc",
            "pulls_max_count",
            "copies_max_count",
            "sale_allowed",
            "scan_allowed",
            "presence_required",
            "mould_fate",
            "mould_fate_by",
            "label_wording",
            "credit",
            "rights",
            "conditions",
        ]
        groups = [
            ("Who allows it", ["owner", "given_by", "authority", "given_on", "valid_from", "valid_to", "items"]),
            ("How many, and what for", ["pulls_max_count", "copies_max_count", "purposes", "sale_allowed",
                                        "scan_allowed"]),
            ("How it may be moulded", ["techniques", "techniques_allowed", "materials_barred", "materials_allowed",
                                       "materials_excluded", "temperature_max_degc", "presence_required"]),
            ("The moulds afterwards", ["mould_fate", "mould_fate_by"]),
            ("Wording and rights", ["label_wording", "credit", "rights", "conditions"]),
        ]  # fmt: skip
        help_texts = {
            "valid_to": "Empty: without an end.",
            "rights": "Copyright, coin and hallmark law; ask the competent authority before the mould, not after.",
        }

    def __init__(self, *args, commission: Commission | None = None, **kwargs) -> None:
        super().__init__(*args, **kwargs)
        if commission:
            self.fields["items"] = LookupListField("originals-of", within=commission.number, few=True, label="Objects")
        else:
            self.fields["items"] = LookupListField("originals", label="Objects")
        for name in TICKED:
            self._offer_words(name)
        if not self.instance.pk:
            for name in ("given_on", "valid_from"):
                self.offer(name, clock.today())

    def _offer_words(self, name: str) -> None:
        """Those that are offered now, and those that the consent holds already."""
        scheme, words = TICKED[name]
        rows = Term.objects.filter(scheme=scheme, is_retired=False).exclude(scheme=Term.Scheme.PURPOSE, label=SALE)
        labels = list(rows.values_list("label", flat=True))
        labels += [each for each in getattr(self.instance, name) if each not in labels]
        self.fields[name] = forms.MultipleChoiceField(
            label=self.fields[name].label, choices=[(each, each) for each in labels], required=False, help_text=words,
            widget=forms.CheckboxSelectMultiple,
        )  # fmt: skip

    def clean(self) -> dict:
        cleaned = super().clean()
        if cleaned.get("mould_fate") == Consent.MouldFate.DESTROY and not cleaned.get("mould_fate_by"):
            self.add_error(
                "mould_fate_by", "Say by when the moulds are destroyed: the duty is put on the list with this date."
            )
        both = set(cleaned.get("materials_allowed") or ()) & set(cleaned.get("materials_excluded") or ())
        if both:
            named = ", ".join(sorted(both))
            self.add_error("materials_excluded", f"{named} cannot be both allowed and excluded: untick one.")
        if SALE in (cleaned.get("purposes") or ()) and not cleaned.get("sale_allowed"):
            self.add_error("purposes", "“sale” is ticked, and sale is not allowed: tick both, or neither.")
        highest = cleaned.get("temperature_max_degc")
        if highest is not None and not -20 <= highest <= 400:  # common sense, no source
            self.add_error("temperature_max_degc", "From -20 to 400 °C is possible: look at the number and its unit.")
        if (given := cleaned.get("given_on")) and given > clock.today():
            self.add_error("given_on", "This day lies in the future: a consent counts from when it was given.")
        return cleaned


# What art electrotypes are made of; the run's own list is longer.


class SpecificationForm(RecordForm):
    class Meta:
        model = Specification
        fields = [
            "item",
            "technique",
            "metal_ion",
            "thickness_mean_mm",
            "thickness_min_mm",
            "finish",
            "fill",
            "mark_words",
            "points_count",
            "bends_count",
            "size_low_pct",
            "size_high_pct",
            "tests",
        ]
        groups = [
            ("The deposit", ["item", "technique", "metal_ion", "thickness_mean_mm", "thickness_min_mm"]),
            ("The piece", ["finish", "fill", "mark_words"]),
            ("How it is accepted", ["points_count", "bends_count", "size_low_pct", "size_high_pct", "tests"]),
        ]

    def __init__(self, *args, commission: Commission, **kwargs) -> None:
        super().__init__(*args, **kwargs)
        self.fields["item"] = LookupField("originals-of", within=commission.number, few=True, label="Model")
        self.fields["metal_ion"] = forms.ChoiceField(label="Metal", choices=list(METALS.items()), initial="Cu2+")

    def clean(self) -> dict:
        cleaned = super().clean()
        mean, least = cleaned.get("thickness_mean_mm"), cleaned.get("thickness_min_mm")
        low, high = cleaned.get("size_low_pct"), cleaned.get("size_high_pct")
        if low is not None and high is not None and low > high:
            self.add_error("size_high_pct", "The upper bound lies below the lower one: correct one of the two.")
        if mean is not None and mean <= 0:
            self.add_error("thickness_mean_mm", "A shell has a thickness: enter more than zero.")
        if mean is not None and least is not None and least > mean:
            self.add_error("thickness_min_mm", "The least thickness cannot exceed the mean: correct one of the two.")
        return cleaned
