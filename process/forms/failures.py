"""The failure library and the defects of shells: what was seen, why, and what was learned."""

from itertools import product
from typing import Any

from django import forms
from django.db.models import Q, QuerySet

from process.forms.people import person_field
from process.models import Certainty, Defect, Failure, Run, Shell
from records import clock
from records.forms.base import RecordForm
from records.forms.lookup import LookupField, LookupListField
from records.forms.measurements import not_ahead
from records.forms.pictures import PictureCheckboxes, offer_pictures
from records.models import Photo, Term
from records.numbers import SERIES, next_number
from records.searching import spellings

NEEDS_CAUSE = "A cause that is confirmed or suspected is written down: say what it is, or choose “unknown”."


def cause_fits(form: forms.ModelForm, cleaned: dict[str, Any]) -> None:
    """A certainty without a cause says nothing, nor the other way round."""
    if cleaned.get("certainty") != Certainty.UNKNOWN and not (cleaned.get("cause") or "").strip():
        form.add_error("cause", NEEDS_CAUSE)


class FailureFilter(forms.Form):
    """“Show failures whose cause is … in … with … and the words …”."""

    certainty = forms.ChoiceField(label="whose cause is", required=False,
                                  choices=[("", "known or not"), *Certainty.choices])  # fmt: skip
    bath = LookupField("baths", label="in", required=False, words="any bath")
    defect = forms.ModelChoiceField(
        Term.objects.filter(scheme=Term.Scheme.DEFECT), label="with", required=False, empty_label="any defect"
    )
    q = forms.CharField(label="and the words", required=False, max_length=120)

    def narrow(self, rows: QuerySet) -> QuerySet:
        chosen = self.cleaned_data if self.is_valid() else {}
        if chosen.get("certainty"):
            rows = rows.filter(certainty=chosen["certainty"])
        if chosen.get("bath"):
            rows = rows.filter(run__bath=chosen["bath"])
        if chosen.get("defect"):
            rows = rows.filter(shells__defects__term=chosen["defect"])
        for word in (chosen.get("q") or "").split()[:8]:
            rows = rows.filter(_says(word))
        return rows.distinct()


def _says(word: str) -> Q:
    columns = ("number", "title", "what", "cause", "lesson", "action", "run__number", "shells__item__number")
    said = Q()
    for column, spelling in product(columns, spellings(word)):
        said |= Q(**{f"{column}__icontains": spelling})
    return said


class FailureForm(RecordForm):
    class Meta:
        model = Failure
        fields = [
            "number", "title", "happened_on", "run", "shells", "what", "cause", "certainty", "lesson", "action",
            "photos", "recorded_by",
        ]  # fmt: skip
        groups = [
            ("What happened", ["number", "title", "happened_on", "run", "shells", "what", "photos"]),
            ("Why", ["cause", "certainty"]),
            ("What it teaches", ["lesson", "action", "recorded_by"]),
        ]
        help_texts = {
            "title": "“15 A/ft² set as 15 A/dm²”",
            "action": "What the workshop does differently, so that it cannot happen so again.",
        }
        widgets = {name: forms.Textarea({"rows": 4}) for name in ("what", "cause", "lesson", "action")} | {
            "photos": PictureCheckboxes,
        }  # fmt: skip

    def __init__(self, *args: Any, run: Run | None = None, user: Any = None, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        run = run or self.instance.run
        shells = Shell.objects.select_related("item", "cathode__run")
        shells = shells.filter(cathode__run=run) if run else shells.filter(fate=Shell.Fate.SCRAP)
        self.fields["shells"] = LookupListField(
            "shells", within=run.number if run else "", rows=shells, few=True, required=False, label="Shells",
            help_text="The pieces that failed; they are kept as evidence.",
        )  # fmt: skip
        shown = Q(runs=run) | Q(item__shell__cathode__run=run) if run else Q(item__shell__in=shells)
        if self.instance.pk:
            shown |= Q(failures=self.instance)
        chosen = self.instance.photos.values_list("pk", flat=True) if self.instance.pk else ()
        offer_pictures(self.fields["photos"], Photo.objects.filter(shown).distinct(), chosen)
        for name, rows in (("shells", shells), ("photos", self.fields["photos"].queryset)):
            if not rows.exists():
                del self.fields[name]
        person_field(self, "recorded_by", user)
        if self.instance._state.adding:
            self.offer("number", next_number(Failure, SERIES["failure"]))
            self.offer("happened_on", clock.today())
            if run:
                self.offer("run", run)

    def clean_happened_on(self):
        return not_ahead(self.cleaned_data["happened_on"])

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        cause_fits(self, cleaned)
        return cleaned


class DefectForm(RecordForm):
    class Meta:
        model = Defect
        fields = [
            "term", "location", "extent", "severity", "stage", "found_on", "found_by", "photo", "cause", "certainty",
            "action",
        ]  # fmt: skip
        groups = [
            ("What is seen", ["term", "location", "extent", "severity", "photo"]),
            ("When it was found", ["stage", "found_on", "found_by"]),
            ("Why, and what was done", ["cause", "certainty", "action"]),
        ]
        help_texts = {"location": "“rim, 3 to 5 h”, “under the chin”"}

    def __init__(self, *args: Any, user: Any = None, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        terms = Term.objects.filter(scheme=Term.Scheme.DEFECT)
        self.fields["term"].queryset = terms.filter(is_retired=False) | terms.filter(pk=self.instance.term_id)
        shell = self.instance.shell
        photos = Photo.objects.filter(Q(item=shell.item) | Q(runs__cathodes__shell=shell)).distinct()
        offer_pictures(self.fields["photo"], photos, [self.instance.photo_id])
        person_field(self, "found_by", user)
        if self.instance._state.adding:
            self.offer("found_on", clock.today())

    def clean_found_on(self):
        return not_ahead(self.cleaned_data["found_on"])

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        cause_fits(self, cleaned)
        return cleaned
