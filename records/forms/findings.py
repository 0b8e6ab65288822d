"""One finding: what and where, how bad, how lively. Severity and stability are asked apart and never merged."""

from typing import Any

from django import forms

from records.forms.base import RecordForm
from records.forms.pictures import PictureRadio, offer_pictures
from records.forms.terms import offer_terms
from records.models import ConditionReport, Finding, Grade, Photo, Term
from records.services.condition import is_carried

SEVERITIES = [
    (Grade.MINOR, "1 minor, cosmetic"),
    (Grade.MODERATE, "2 moderate: disfigures or limits use"),
    (Grade.MAJOR, "3 major: loss of form, function or safety"),
]
USUAL = ("", "as usual for the word")
SEEN = ["term", "location", "extent", "severity", "stability", "urgency"]
STOOD_THERE = "Finding {} stands in {}: it is not new. Say same, worse, better, treated or not re-examined."
OVERLOOKED = (
    "This does not stand in {}, so it is new, and the owner is told of it. If it was there then and overlooked, "
    "write so here, with what shows it."
)


class FindingForm(RecordForm):
    class Meta:
        model = Finding
        fields = [*SEEN, "comparison", "layer", "action", "note", "photo"]
        groups = [
            ("", [*SEEN, "comparison"]),
            ("Which layer, and what is to be done?", ["layer", "action", "note"]),
            ("Which photograph shows it?", ["photo"]),
        ]
        widgets = {
            "severity": forms.RadioSelect, "stability": forms.RadioSelect, "urgency": forms.RadioSelect,
            "comparison": forms.RadioSelect, "photo": PictureRadio, "note": forms.Textarea({"rows": 2}),
        }  # fmt: skip
        labels = {"term": "What is seen"}
        help_texts = {
            "location": "Side and clock position, zone or named point: “obverse rim, 4 h”.",
            "extent": "Count, size in mm, or share of the face: “3 × 2 mm”.",
            "layer": "Bare metal, patina, plating, filling, shellac coat.",
        }
        error_messages = {
            "location": {"required": "Say where: side and clock position, zone or named point."},
            "severity": {"required": "Choose 1, 2 or 3.", "invalid_choice": "Choose 1, 2 or 3."},
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        report = self.instance.report
        is_new = self.instance._state.adding
        offer_terms(self.fields["term"], report.item, None if is_new else self.instance.term)
        self.fields["severity"].choices = SEVERITIES
        self.fields["stability"].required = False
        self.fields["stability"].choices = [USUAL, *Term.Stability.choices] if is_new else Term.Stability.choices
        self._offer_photos(report)
        if is_new:
            self.initial |= {"severity": None, "stability": ""}
        self._ask_what_became_of_it(report, is_new)

    def _ask_what_became_of_it(self, report: ConditionReport, is_new: bool) -> None:
        """Only where there is a last report; what is entered by hand is new unless it was overlooked then."""
        if report.previous_id is None:
            del self.fields["comparison"]
            return
        comparison, kinds = self.fields["comparison"], Finding.Comparison
        comparison.required = True
        comparison.choices = [(k.value, k.label) for k in kinds if not is_new or k != kinds.NOT_REEXAMINED]
        if is_new:
            self.initial["comparison"] = kinds.NEW

    def _offer_photos(self, report: ConditionReport) -> None:
        photo = self.fields["photo"]
        offer_pictures(photo, Photo.objects.filter(item=report.item), [self.instance.photo_id])
        photo.empty_label = "none"
        if not photo.queryset.exists():
            del self.fields["photo"]

    def clean(self) -> dict[str, Any]:
        """Where the person leaves the stability to the word, the word's own is written down."""
        cleaned = super().clean() or self.cleaned_data
        if not cleaned.get("stability"):
            term = cleaned.get("term")
            usual = term.default_stability if term else ""
            cleaned["stability"] = usual or Term.Stability.NOT_ASSESSED
        self._refuse_the_wrong_answer(cleaned)
        return cleaned

    def _refuse_the_wrong_answer(self, cleaned: dict[str, Any]) -> None:
        """New is what the last report does not hold; what it overlooked is said to be so in words."""
        answer, last = cleaned.get("comparison"), self.instance.report.previous
        if not answer or last is None:
            return
        is_new = answer == Finding.Comparison.NEW
        if not self.instance._state.adding and is_carried(self.instance):
            if is_new:
                self.add_error("comparison", STOOD_THERE.format(self.instance.position_count, last.number))
        elif not is_new and not cleaned.get("note"):
            self.add_error("note", OVERLOOKED.format(last.number))
