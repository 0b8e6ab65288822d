"""A survey round set as a sentence; the museum's intervals; a date set for one piece."""

from typing import Any

from django import forms

from records import clock, units
from records.clock import day_words
from records.forms.base import RecordForm
from records.models import Place, SurveyDate, SurveyRule
from records.surveys import NO_PLACE, SOON, Survey, months_after

MONTHS = units.Reach(1, 120)
MOVED = "This was the reason for {}: say why the day is another now."
WITHIN = [("", "now or within a month"), ("3", "within three months"), ("12", "within a year"), ("all", "at any time")]


class RoundFilter(forms.Form):
    """“Show copies due … kept at …, looked at in the light …”; the light goes along to each new report."""

    within = forms.ChoiceField(label="due", required=False, choices=WITHIN)
    place = forms.ChoiceField(label="kept at", required=False)
    light = forms.CharField(label="looked at in the light", required=False, max_length=200)
    aids = forms.CharField(label="with", required=False, max_length=200)

    def __init__(self, data: Any, places: list[Place | None]) -> None:
        super().__init__(data)
        named = [(str(place.pk), place.name) for place in places if place]
        homeless = [(NO_PLACE, "no known place")] if None in places else []
        self.fields["place"].choices = [("", "any place"), *named, *homeless]

    def narrow(self, surveys: list[Survey]) -> list[Survey]:
        """What is not understood narrows nothing beyond the usual month, and is said beside the sentence."""
        self.is_valid()
        chosen = self.cleaned_data
        if chosen.get("place"):
            surveys = [s for s in surveys if str(s.item.place_id or NO_PLACE) == chosen["place"]]
        within = chosen.get("within", "")
        if within == "all":
            return surveys
        until = months_after(clock.today(), int(within)) if within else clock.today() + SOON
        return [s for s in surveys if s.due_on <= until]

    @property
    def words(self) -> str:
        """“Due now or within a month, kept at Workshop.”"""
        chosen = self.cleaned_data
        parts = [("due", "within"), ("kept at", "place")]
        named = [(lead, dict(self.fields[name].choices).get(chosen.get(name, ""), "")) for lead, name in parts]
        said = ", ".join(f"{lead} {words}" for lead, words in named if words)
        return f"{said[:1].upper()}{said[1:]}."

    @property
    def carried(self) -> dict[str, str]:
        """What each report of the round begins with."""
        return {name: self.cleaned_data[name] for name in ("light", "aids") if self.cleaned_data.get(name)}


class SurveyRuleForm(RecordForm):
    class Meta:
        model = SurveyRule
        fields = ["label", "first_months_count", "later_months_count", "because"]
        bounds = {"first_months_count": MONTHS, "later_months_count": MONTHS}


class SurveyDateForm(RecordForm):
    class Meta:
        model = SurveyDate
        fields = ["due_on", "because"]
        help_texts = {
            "because": "“Goes on tour in May”, “look again after the poultice”. It stands beside the date in the round."
        }

    def clean(self) -> dict[str, Any]:
        """A day that was given a reason gets a new one when it is moved: the old one spoke of the old day."""
        cleaned = super().clean() or self.cleaned_data
        moved = not self.instance._state.adding and "due_on" in self.changed_data
        if moved and "because" in cleaned and "because" not in self.changed_data:
            self.add_error("because", MOVED.format(day_words(self.initial["due_on"])))
        return cleaned

    def clean_due_on(self) -> Any:
        due_on = self.cleaned_data["due_on"]
        if due_on < clock.today():
            raise forms.ValidationError("This day has passed: name the day of the next look, today or later.")
        if due_on > months_after(clock.today(), 120):
            raise forms.ValidationError("That is more than ten years from now: look at the year again.")
        return due_on

    def save(self, commit: bool = True) -> SurveyDate:
        self.instance.set_at = clock.now()
        return super().save(commit)


class WithdrawnDateForm(RecordForm):
    """The day that a person set is taken back: the table counts again."""

    reason = forms.CharField(
        max_length=100, help_text="“The tour was called off”, “set for the wrong piece”. It stands in the history.",
        error_messages={"required": "Say why the date no longer holds: whoever set it had a reason."},
    )  # fmt: skip

    class Meta:
        model = SurveyDate
        fields: list[str] = []
