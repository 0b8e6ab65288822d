"""Rules that the museum adds, a mark tried before it exists, and what became of the marks of an original."""

from fractions import Fraction
from typing import Any

from django import forms

from records.forms.base import RecordForm
from records.forms.measurements import not_ahead
from records.forms.pictures import offer_pictures
from records.forms.quantities import QuantityField
from records.marking import load_rules
from records.models import Mark, MarkRule, Photo, RuleCheck, RuleFacts, SuppressedMark

SIZED = ("height", "width", "depth")
WORDED = ("word", "says_copy")


class MarkRuleForm(RecordForm):
    class Meta:
        model = MarkRule
        fields = [
            "code", "asks", "question", "at_least_mm", "share_of", "share", "words", "classes", "gate", "jurisdiction",
            "citation", "text_version", "evidence", "checked_on", "is_retired",
        ]  # fmt: skip
        groups = [
            ("The rule", ["code", "asks", "question"]),
            ("Its figures and words", ["at_least_mm", "share_of", "share", "words", "classes", "gate"]),
            (
                "Where it comes from",
                ["jurisdiction", "citation", "text_version", "evidence", "checked_on", "is_retired"],
            ),
        ]
        help_texts = {
            "asks": "“The letters are at least 3 mm high.”",
            "at_least_mm": "For questions on height, width and depth.",
            "words": "For questions on words: “COPY”, or several by commas.",
            "classes": "“coin, medal”; left empty, every copy is asked.",
            "citation": "“House rule 9”, or law and paragraph.",
        }

    def clean_checked_on(self):
        return not_ahead(self.cleaned_data["checked_on"])

    def clean_code(self) -> str:
        code = self.cleaned_data["code"].strip()
        if code in {rule.id for rule in load_rules()}:
            raise forms.ValidationError("A rule that came with the register has this name: choose another one.")
        return code

    def clean_share(self) -> str:
        share = self.cleaned_data["share"].replace(" ", "")
        if not share:
            return ""
        try:
            part = Fraction(share)
        except (ValueError, ZeroDivisionError) as error:
            raise forms.ValidationError("Write the part as a fraction: 1/6.") from error
        if not 0 < part <= 1:
            raise forms.ValidationError("A part of the piece lies between nothing and the whole: 1/6.")
        return str(part)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        question = cleaned.get("question")
        if question in SIZED and not (cleaned.get("at_least_mm") or 0) > 0 and "at_least_mm" not in self.errors:
            self.add_error("at_least_mm", "Say the least size: without it nothing can be measured against the rule.")
        if question in WORDED and not cleaned.get("words"):
            self.add_error("words", "Say the word, or the words, that the mark must have.")
        if bool(cleaned.get("share_of")) != bool(cleaned.get("share")) and "share" not in self.errors:
            self.add_error("share", "Say which part of what: “1/6” and “of the longest straight line”, or neither.")
        return cleaned


class RuleCheckForm(RecordForm):
    class Meta:
        model = RuleCheck
        fields = ["checked_on", "text_version", "confirmed", "note", "checked_by"]
        labels = {"checked_by": "Compared by"}
        help_texts = {
            "text_version": "“amended October 2016”: as the text itself says.",
            "confirmed": "Without it the rule is shown as doubtful wherever it is asked.",
        }

    def clean_checked_on(self):
        return not_ahead(self.cleaned_data["checked_on"])

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if not cleaned.get("confirmed") and not cleaned.get("note"):
            self.add_error("note", "Say what differs, so that the museum can add a rule of its own in its place.")
        return cleaned


class RuleFactsForm(RecordForm):
    class Meta:
        model = RuleFacts
        fields = ["coating_um", "fineness_permille", "moment_uvs_cm", "hole_mm", "corner_count"]
        evidence_fields = ["coating_um", "fineness_permille", "moment_uvs_cm"]
        help_texts = {
            "coating_um": "Of silver or gold laid on; write 0 where there is none.",
            "fineness_permille": "Gold, silver or platinum in a thousand parts, by assay or as bought.",
            "moment_uvs_cm": "Asked of pieces in the size and the metals of euro coins only.",
            "hole_mm": "Write 0 where there is none.",
            "corner_count": "0 for a round piece.",
        }


class TrialForm(forms.Form):
    """What mark, on what wall: asked before the mould is made. Nothing of it is kept."""

    text = forms.CharField(label="The mark", max_length=60, initial="OVM 2026 COPY")
    wall_mm = QuantityField("_mm", label="Thickness of the wall", required=False)
    backed = forms.BooleanField(label="backed before it is marked", required=False)

    def clean_wall_mm(self) -> float | None:
        wall_mm = self.cleaned_data["wall_mm"]
        wall_mm = getattr(wall_mm, "canonical", wall_mm)
        if wall_mm is not None and wall_mm <= 0:
            raise forms.ValidationError("A wall is thicker than nothing: write it as 0.4 mm.")
        return wall_mm


class SuppressedMarkForm(RecordForm):
    class Meta:
        model = SuppressedMark
        fields = ["mark", "how", "reason", "photo", "done_on", "done_by"]
        labels = {"done_by": "Done by", "done_on": "Done on", "photo": "A photograph of the place on the copy"}
        help_texts = {"photo": "A photograph of the copy, of the place where the mark was."}

    def __init__(self, *args: Any, marks: list[Mark], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["mark"].queryset = Mark.objects.filter(pk__in=[mark.pk for mark in marks]).select_related("item")
        offer_pictures(self.fields["photo"], Photo.objects.filter(item=self.instance.copy), [self.instance.photo_id])
        self.fields["photo"].empty_label = "none yet"

    def clean_done_on(self):
        return not_ahead(self.cleaned_data["done_on"])

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        if cleaned.get("how") == SuppressedMark.How.LEFT and not cleaned.get("reason"):
            self.add_error("reason", "Say why the mark was left: whoever meets the copy may take it for the original.")
        return cleaned
