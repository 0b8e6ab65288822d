"""The form of a condition report: at the beginning what is known before one looks, at the end what it amounts to."""

from typing import Any

from django import forms
from django.db.models import QuerySet

from records import clock
from records.forms.base import RecordForm
from records.forms.lookup import LookupField
from records.forms.measurements import not_ahead
from records.forms.pictures import PictureCheckboxes, offer_pictures
from records.models import ConditionReport, Grade, Item, Photo
from records.mouldings import too_early
from records.numbers import SERIES, next_number
from records.services.condition import last_report

Occasion = ConditionReport.Occasion
BEGINNING = ["number", "occasion", "examined_on", "examiner", "light", "aids", "examined_at_place", "mass_g"]
COMPANY = ["previous", "commission"]
LIGHT_MISSING = "Say which light was used, so that the next examination can repeat it."
APART = "Apart from the grade: a large old dent is severe and stable, a pinhead of pale green powder small and active."
DATE_ERRORS = {"invalid": "Write the day as 2026-02-03.", "required": "Write the day of the examination."}


def likely_occasion(item: Item, last: ConditionReport | None) -> str:
    """What the next examination is probably for; a person changes it freely."""
    if last and last.occasion == Occasion.BEFORE:
        return Occasion.AFTER
    if item.is_copy:
        return Occasion.SURVEY if last else Occasion.ACCEPTANCE
    return Occasion.BEFORE


class _ConditionForm(RecordForm):
    """What both forms of a report ask and check."""

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        item = self.instance.item
        self.fields["examined_on"].error_messages |= DATE_ERRORS
        self.fields["light"].error_messages["required"] = LIGHT_MISSING
        commission = self.fields["commission"] = LookupField(
            "commissions-of", within=item.number, few=True, required=False, label="Commission"
        )
        commission.before = self.instance.commission_id
        self.fields["previous"] = LookupField(
            "reports-of", within=item.number, rows=self._earlier(item), few=True, required=False,
            label="Compared with", help_text=self.fields["previous"].help_text,
        )  # fmt: skip

    def _earlier(self, item: Item) -> QuerySet[ConditionReport]:
        """Not the report itself, nor one that was compared with it."""
        reports = item.condition_reports.order_by("-examined_on", "-pk")
        return reports.exclude(pk=self.instance.pk).exclude(previous=self.instance.pk or 0)

    def clean_examined_on(self) -> Any:
        return not_ahead(self.cleaned_data["examined_on"])

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        day, previous, mass = cleaned.get("examined_on"), cleaned.get("previous"), cleaned.get("mass_g")
        if mass is not None and mass <= 0:
            self.add_error("mass_g", "A mass is more than nought: look at the number again.")
        if day and cleaned.get("occasion") == Occasion.AFTER and (why := too_early(self.instance.item, day)):
            self.add_error("examined_on", why)
        if day and previous and day < previous.examined_on:
            words = f"This lies before {previous} of {previous.examined_on}, with which it is compared: "
            self.add_error("examined_on", f"{words}correct the day, or compare with an earlier report.")
        return cleaned


class NewReportForm(_ConditionForm):
    """The beginning; findings and what they amount to follow on the report's page."""

    class Meta:
        model = ConditionReport
        fields = [*BEGINNING, *COMPANY]
        groups = [("At the examination", BEGINNING), ("What it is compared with, and what it is for", COMPANY)]
        help_texts = {
            "light": "“normal, diffuse”, “raking, left”, “UV 365 nm”: needed, so that the next look can repeat it.",
            "aids": "Magnifier ×10, microscope, colour target, pH paper.",
            "mass_g": "On the scales today: to 0.01 g for coins and medals, to 1 g for plaster.",
            "previous": "Its findings are taken over as “not re-examined”, until you say of each what became of it.",
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        last = last_report(self.instance.item)
        self.offer("number", next_number(ConditionReport, SERIES["condition"]))
        self.offer("examined_on", clock.today())
        self.offer("occasion", likely_occasion(self.instance.item, last))
        self.offer("commission", self.fields["commission"].first)
        if last:
            self.offer("previous", last)
            light = f"{last.number} used “{last.light}”: the same light makes the two comparable."
            self.fields["light"].help_text = light


class ReportForm(_ConditionForm):
    """The whole report but its findings and photographs."""

    class Meta:
        model = ConditionReport
        fields = [*BEGINNING, "structure", "tests", "summary", "not_seen", "grade", "grade_reason", "stability",
                  "previous", "change", "change_words", "restrictions", "recommendation", "commission"]  # fmt: skip
        groups = [
            ("What it amounts to", ["summary", "not_seen", "grade", "grade_reason", "stability"]),
            ("Compared with the last report", ["previous", "change", "change_words"]),
            ("From here on", ["restrictions", "recommendation"]),
            ("What is it made of, as seen, and what was tested?", ["structure", "tests"]),
            ("At the examination", BEGINNING),
            ("What it is for", ["commission"]),
        ]
        help_texts = {
            "restrictions": "Handling, moulding, humidity, transport.",
            "stability": APART,
            "grade_reason": "Needed where the grade is not that of the worst finding.",
            "change": "Required after moulding. A finding that was not re-examined does not count as unchanged.",
        }  # fmt: skip

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        worst = Grade(self.instance.worst_severity)
        grade = self.fields["grade"]
        grade.label, grade.widget = "Overall grade", forms.RadioSelect()
        grade.choices = [("", f"as the worst finding: {worst.label}"), *Grade.choices]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        grade, worst = cleaned.get("grade"), self.instance.worst_severity
        if grade is not None and grade != worst and not cleaned.get("grade_reason"):
            sentence = f"The worst finding is {worst}, the grade {grade}: say why, or let it follow the findings."
            self.add_error("grade_reason", sentence)
        if cleaned.get("change") == ConditionReport.Change.CHANGED and not cleaned.get("change_words"):
            self.add_error("change_words", "Say what changed: the owner is told in these words.")
        return cleaned


class ReportPhotosForm(RecordForm):
    """Which of the thing's photographs belong to this examination."""

    class Meta:
        model = ConditionReport
        fields = ["photos"]
        widgets = {"photos": PictureCheckboxes}
        labels = {"photos": "Photographs of this examination"}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        chosen = self.instance.photos.values_list("pk", flat=True)
        offer_pictures(self.fields["photos"], Photo.objects.filter(item=self.instance.item), chosen)
