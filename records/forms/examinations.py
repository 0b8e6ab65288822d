"""Sign by sign: seen, not seen or not checked."""

from typing import Any

from django import forms

from records import clock
from records.forms.base import RecordForm
from records.forms.measurements import not_ahead
from records.models import Examination
from records.telling import ANSWERS, SIGNS

FIRST = [key for key, sign in SIGNS.items() if sign.weight != "hint"]
HINTS = [key for key, sign in SIGNS.items() if sign.weight == "hint"]


class ExaminationForm(RecordForm):
    class Meta:
        model = Examination
        fields = ["examined_on", "examiner", "light", "compared_with", "note"]
        groups = [
            ("Who, when, by what light", ["examined_on", "examiner", "light", "compared_with"]),
            ("Signs that speak for a copy", FIRST),
            ("Signs that have other causes too", HINTS),
            ("In words", ["note"]),
        ]  # fmt: skip
        help_texts = {"light": "“Raking light from the left, lens × 10”."}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.offer("examined_on", clock.today())
        for key, sign in SIGNS.items():
            self.fields[key] = forms.ChoiceField(
                choices=list(ANSWERS.items()), label=sign.words, help_text=sign.how, widget=forms.RadioSelect,
                initial=self.instance.answers.get(key, "unchecked"),
            )  # fmt: skip

    def clean_examined_on(self):
        return not_ahead(self.cleaned_data["examined_on"])

    def save(self, commit: bool = True) -> Examination:
        self.instance.answers = {key: self.cleaned_data[key] for key in SIGNS}
        return super().save(commit)
