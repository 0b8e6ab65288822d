"""Making up: from kept shells to a copy with a number of its own."""

import re
from collections.abc import Iterable
from typing import Any

from django import forms
from django.db.models import QuerySet

from process.forms.asking import AsksUnusual
from process.models import MakingUp, Shell
from process.ranges import Opinion
from process.summaries.copy_identity import copied_by, offered_identity, says_lead
from process.summaries.copy_states import CHOICES, narrow
from records import clock, searching
from records.forms.base import RecordForm
from records.forms.lookup import LookupField, LookupListField
from records.forms.measurements import not_ahead
from records.models import Item, Term
from records.numbers import SERIES, next_number

RANGED = ["fill_density_g_cm3", "fill_temperature_degc", "die_axis_deg"]
INSIDE = ["fill", "fill_words", "lead_inside", "fill_mass_g", "fill_density_g_cm3", "fill_temperature_degc"]
JOINED = ["join", "join_words", "die_axis_deg", "made_up_on", "made_up_by"]
NO_SHELL = "Choose at least one shell: a copy is made of something."
CORE = "For a skin on a core; left empty it is the core on which the shell grew."
HELP = {
    "fill_words": "Name it as on its package, with its share of each metal: nobody can see it later.",
    "lead_inside": "Asked of every copy: lead inside decides how it is stored for ever.",
    "fill_mass_g": "Weighed before and after filling; left empty it is computed from the density.",
    "die_axis_deg": "0° where both faces stand upright, 180° where one stands on its head.",
    "join_words": "“tin solder, seam left visible”",
}


class CopyFilter(forms.Form):
    """“Show copies that are … with the words …”."""

    state = forms.ChoiceField(label="that are", required=False, choices=[("", "in any state"), *CHOICES])
    place = LookupField("places", label="kept in", required=False, words="any place")
    q = forms.CharField(label="with the words", required=False, max_length=120)

    def narrow(self, rows: QuerySet) -> QuerySet:
        if not self.is_valid():
            return rows
        chosen = self.cleaned_data
        if chosen["place"]:
            rows = rows.filter(place=chosen["place"])
        return searching.find(narrow(rows, chosen["state"]), chosen["q"])


class MakingUpChangeForm(AsksUnusual, RecordForm):
    """What may still be mended; which shells are in it is a fact of its descent."""

    class Meta:
        model = MakingUp
        fields = [*INSIDE, *JOINED]
        ranged = RANGED
        groups = [("What is inside", INSIDE), ("Joined", JOINED)]
        help_texts = HELP

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        fills = Term.objects.filter(scheme=Term.Scheme.FILL)
        self.fields["fill"].queryset = fills.filter(is_retired=False) | fills.filter(pk=self.instance.fill_id)
        self.fields["lead_inside"].choices = [("", "choose"), *MakingUp.Lead.choices]
        known = list(self.fields["fill"].queryset)  # asked once, for the choice and for the cautions
        self.fields["fill"].choices = [("", self.fields["fill"].empty_label), *((term.pk, str(term)) for term in known)]
        self.cautions = [term for term in known if term.caution]

    def clean_made_up_on(self):
        return not_ahead(self.cleaned_data["made_up_on"])

    def opinions(self) -> dict[str, Opinion]:
        """Besides the table: a filling that names lead, and an answer that says there is none."""
        found = super().opinions()
        term, words = self.cleaned_data.get("fill"), self.cleaned_data.get("fill_words", "")
        named = says_lead(term, words)
        if named and self.cleaned_data.get("lead_inside") == MakingUp.Lead.NO:
            found["lead_inside"] = Opinion("unusual", f"“{named}” speaks of lead, and the answer is “no lead”.")
        return found

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        if cleaned.get("fill_mass_g") is not None and cleaned["fill_mass_g"] <= 0:
            self.add_error("fill_mass_g", "A filling weighs more than nothing: weigh again, or leave it empty.")
        if not self.instance._state.adding:
            self._not_before_its_shells(self.instance.shells.select_related("item"), cleaned.get("made_up_on"))
        return cleaned

    def _not_before_its_shells(self, shells: Iterable[Shell], day: Any) -> None:
        for shell in shells:
            if day and shell.separated_on and day < shell.separated_on:
                self.add_error(
                    "made_up_on", f"{shell} came off its mould on {shell.separated_on}: it was made up later than that."
                )


class MakingUpForm(MakingUpChangeForm):
    """One form, in the order in which a person knows the answers."""

    number = forms.CharField(
        label="Number of the copy", max_length=40, help_text="The series of copies; a number is never given twice."
    )
    title = forms.CharField(
        required=False, max_length=300, help_text="Left empty: “Electrotype copy:”, then the title of its model."
    )
    object_type = forms.CharField(
        label="Type of object", required=False, max_length=200, help_text="Left empty: as the piece that it repeats."
    )
    materials = forms.CharField(
        label="Materials and techniques",
        required=False,
        max_length=300,
        help_text="Left empty: from metal and filling.",
    )
    date_words = forms.CharField(
        label="Date of the copy", required=False, max_length=80, help_text="Left empty: the year of the making-up."
    )
    owner = LookupField("parties", required=False, help_text="Who owns the copy.")
    place = LookupField("places", required=False)
    core = LookupField("cores-left", required=False, help_text=CORE)

    class Meta(MakingUpChangeForm.Meta):
        fields = ["technique", "core", *INSIDE, *JOINED, "commission"]
        groups = [
            ("Which shells", ["shells", "technique", "core"]),
            ("What is inside", INSIDE),
            ("Joined", JOINED),
            ("The copy", ["number", "title", "commission", "owner", "place"]),
            (
                "Should type, materials or date read otherwise than the record says?",
                ["object_type", "materials", "date_words"],
            ),
        ]

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["shells"] = LookupListField(
            "shells-kept", few=True, label="Shells", error_messages={"required": NO_SHELL},
            help_text="Kept shells, from one run or several. Scrap is not offered.",
        )  # fmt: skip
        self.offer("number", next_number(Item, SERIES["copy"]))
        self.initial["made_up_on"] = self.initial.get("made_up_on") or clock.today()

    def clean_number(self) -> str:
        number = self.cleaned_data["number"]
        taken = (
            Item.objects.filter(number__iexact=number).exists() or Item.history.filter(number__iexact=number).exists()
        )
        if taken:
            free = next_number(Item, SERIES["copy"])
            raise forms.ValidationError(
                f"“{number}” was given before, and a number is never given twice: {free} is the next one free."
            )
        return number

    def opinions(self) -> dict[str, Opinion]:
        found = super().opinions()
        number = self.cleaned_data.get("number")
        if number and not re.fullmatch(r"R\.\d{4}\.\d+", number):
            free = next_number(Item, SERIES["copy"])
            found["number"] = Opinion(
                "unusual",
                f"“{number}” is not of the series of copies ({free}); numbered like an original it is taken for one.",
            )
        return found

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        shells = list(cleaned.get("shells") or [])
        technique = cleaned.get("technique")
        if technique == MakingUp.Technique.JOINED and len(shells) == 1:
            self.add_error(
                "technique", "One shell is not joined to anything: choose the second, or “hollow, one face”."
            )
        if technique == MakingUp.Technique.UNIFACE and len(shells) > 1:
            self.add_error("technique", "Several shells make more than one face: choose “hollow, shells joined”.")
        if len({model.pk for model in copied_by(shells)}) > 1:
            self.add_error("shells", "These shells repeat different pieces: a copy repeats one.")
        self._not_before_its_shells(shells, cleaned.get("made_up_on"))
        return cleaned

    def identity(self) -> Item:
        """The copy as an item; what was left empty follows from the shells."""
        typed = {name: self.cleaned_data[name] for name in ("title", "object_type", "materials", "date_words")}
        offered = offered_identity(list(self.cleaned_data["shells"]), self.instance)
        fields = {name: typed[name] or offered[name] for name in typed}
        owner, place = self.cleaned_data["owner"], self.cleaned_data["place"]
        return Item(
            number=self.cleaned_data["number"],
            owner=owner,
            place=place,
            documented_on=self.instance.made_up_on,
            **fields,
        )
