"""What only eyes can answer when a copy is held against its specification."""

from typing import Any

from django import forms

from process.models import Inspection
from process.summaries.acceptance import FAIL, NOT_MEASURED, PASS, SEEN, WORDS
from records.forms.base import RecordForm
from records.models import Specification

CHOICES = [("", "choose"), *((code, WORDS[code]) for code in (PASS, FAIL, NOT_MEASURED))]


class AnswersForm(RecordForm):
    """One verdict and one remark for each point; what is not met or not measured says why."""

    class Meta:
        model = Inspection
        fields: list[str] = []

    def __init__(self, *args: Any, specification: Specification, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.codes = [code for code in SEEN if getattr(specification, code)]
        for code in self.codes:
            answer = self.instance.answers.get(code) or {}
            self.fields[f"{code}_verdict"] = forms.ChoiceField(
                label=SEEN[code], choices=CHOICES, initial=answer.get("verdict", ""),
                help_text=getattr(specification, code),
            )  # fmt: skip
            self.fields[f"{code}_found"] = forms.CharField(
                label=f"{SEEN[code]}: as found", max_length=300, required=False, initial=answer.get("words", "")
            )

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        for code in self.codes:
            if cleaned.get(f"{code}_verdict") in {FAIL, NOT_MEASURED} and not cleaned.get(f"{code}_found"):
                self.add_error(f"{code}_found", "Say what was found, or why it was not looked at.")
        return cleaned

    def save(self, commit: bool = True) -> Inspection:
        said = self.cleaned_data
        self.instance.answers = {
            code: {"verdict": said[f"{code}_verdict"], "words": said[f"{code}_found"]} for code in self.codes
        }
        return super().save(commit)
