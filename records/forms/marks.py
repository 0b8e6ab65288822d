"""The form of a mark: text and place, measured size, and the photograph that proves it."""

from typing import Any

from django import forms

from records import clock, gates, imaging
from records.checks import PERMANENT_MARK
from records.forms.base import RecordForm
from records.forms.measurements import not_ahead
from records.forms.photos import TYPES
from records.forms.pictures import offer_pictures
from records.models import Gate, Item, Mark, Photo
from records.services.photographs import examine_new

IN_THE_WORKSHOP = (Item.Status.WORKSHOP, Item.Status.EVIDENCE, Item.Status.DESTROYED)
SIZES = ("letter_height_mm", "copy_word_width_mm", "depth_mm")


class LookedAt(forms.NullBooleanSelect):
    """Yes, no, or nobody looked: nothing is claimed that nobody saw."""

    def __init__(self, attrs: dict[str, Any] | None = None) -> None:
        super().__init__(attrs)
        self.choices = [("unknown", "not looked at"), ("true", "yes"), ("false", "no")]


class MarkForm(RecordForm):
    """Either a photograph that is there already, or a new one sent along."""

    new_photo = forms.FileField(
        label="Or a new photograph of the mark", required=False, max_length=255,
        widget=forms.FileInput({"accept": TYPES}),
        help_text="Close, in raking light, with a scale. The file is kept unchanged.",
        error_messages={"empty": "The file is empty: send it again from the camera."},
    )  # fmt: skip

    class Meta:
        model = Mark
        fields = [
            "text", "purpose", "face", "position", "method", "technique", *SIZES, "is_legible", "is_sans_serif",
            "photo", "made_on", "made_by", "witness",
        ]  # fmt: skip
        widgets = {"is_legible": LookedAt, "is_sans_serif": LookedAt}
        evidence_fields: list[str] = []
        groups = [
            ("What it says, and where", ["text", "purpose", "face", "position", "photo", "new_photo"]),
            ("How it was made", ["method", "technique", *SIZES, "is_legible", "is_sans_serif"]),
            ("Who and when", ["made_on", "made_by", "witness"]),
        ]
        labels = {"photo": "A photograph that is there already", "made_by": "Marked by", "made_on": "Marked on"}
        help_texts = {
            "text": "Letter by letter, with capitals as they stand: “OVM 2026 COPY”.",
            "position": "“rim at 6 h”, “field under the bust”",
            "method": "Ink is only a temporary mark and does not open the gate.",
            "copy_word_width_mm": "From the left edge of the first letter to the right edge of the last.",
            "depth_mm": "For incuse letters; raised ones have none.",
            "witness": "A conservator who saw the mark being made or read it afterwards.",
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self._opened_the_gate = not self.instance._state.adding and self.instance.is_photographed_copy_mark
        self.picture: imaging.PictureFacts | None = None
        offer_pictures(self.fields["photo"], Photo.objects.filter(item=self.instance.item), [self.instance.photo_id])
        self.fields["photo"].empty_label = "none yet"
        if self.instance._state.adding:
            self.fields["technique"].choices = [("", "choose"), *Mark.Technique.choices]
            self.initial["technique"] = None  # said by whoever looks, not taken for granted
            self.initial["made_on"] = self.initial.get("made_on") or clock.today()

    def clean_text(self) -> str:
        return " ".join(self.cleaned_data["text"].split())

    def clean_made_on(self):
        return not_ahead(self.cleaned_data["made_on"])

    def clean_new_photo(self):
        """Looked at before anything is written, so that a refused file leaves nothing behind."""
        file = self.cleaned_data["new_photo"]
        if not file:
            return None
        try:
            self.picture = examine_new(file, file.name)
        except imaging.PictureRefused as reason:
            raise forms.ValidationError(
                f"{reason} The rest of the form is kept; choose a photograph again."
            ) from reason
        return file

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        for name in SIZES:
            value = cleaned.get(name)
            if value is not None and value <= 0:
                self.add_error(name, "A measured size is more than nought: measure again, or leave it empty.")
        height, width = cleaned.get("letter_height_mm"), cleaned.get("copy_word_width_mm")
        if height and width and height > width:
            self.add_error(
                "letter_height_mm",
                "The letters are higher than the whole word is wide: the two sizes may be exchanged.",
            )
        self._keep_the_gate_open(cleaned)
        made_by, witness = cleaned.get("made_by"), cleaned.get("witness")
        if made_by and made_by == witness:
            self.add_error("witness", "The witness is another person than the one who made the mark.")
        return cleaned

    def _keep_the_gate_open(self, cleaned: dict[str, Any]) -> None:
        """A copy that left the workshop, or whose label is approved, keeps the mark on which that rests."""
        photo = cleaned.get("photo") or cleaned.get("new_photo")
        strong = cleaned.get("purpose") == Mark.Purpose.COPY and cleaned.get("method") != Mark.Method.INK and photo
        if not self._opened_the_gate or strong or self.errors or not rests_on(self.instance):
            return
        self.add_error(
            None,
            f"{self.instance.item.number} was accepted or labelled with this mark: record and photograph another "
            "permanent mark first, or have a concession for the mark written.",
        )


def rests_on(mark: Mark) -> bool:
    """Whether acceptance or label of a copy rests on this mark alone."""
    copy = mark.item
    label = getattr(copy, "label", None)
    if not copy.made_here or (copy.status in IN_THE_WORKSHOP and not (label and label.is_signed)):
        return False
    others = copy.marks.exclude(pk=mark.pk)
    conceded = gates.concession_for(Gate.MARK, PERMANENT_MARK, [copy], clock.today())
    return conceded is None and not any(other.is_photographed_copy_mark for other in others)
