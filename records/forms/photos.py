"""Sending photographs, and saying what they show."""

from typing import Any

from django import forms

from records.forms.base import RecordForm
from records.forms.dates import InstantField
from records.models import Photo

# Named by ending too: not every browser knows the type of a HEIC or TIFF file.
TYPES = "image/jpeg,image/png,image/tiff,image/webp,image/heic,image/heif,.heic,.heif,.tif,.tiff"


class SeveralFiles(forms.ClearableFileInput):
    allow_multiple_selected = True


class SeveralFilesField(forms.FileField):
    """Cleans to a list of uploaded files."""

    widget = SeveralFiles
    default_error_messages = {
        "required": "Choose at least one photograph; a phone offers its camera here.",
        "empty": "The file is empty: send it again from the camera.",
    }

    def clean(self, data: Any, initial: Any = None) -> list[Any]:
        files = data if isinstance(data, list | tuple) else [data]
        return [super(SeveralFilesField, self).clean(file, initial) for file in files or [None]]


class PhotoUploadForm(forms.ModelForm):
    """What all the files of one sending have in common; when each was taken comes from the camera."""

    files = SeveralFilesField(
        label="Photographs", widget=SeveralFiles({"accept": TYPES}), max_length=255,
        help_text="JPEG, PNG, TIFF or WebP, several at once; up to 89 megapixels and 80 MB each.",
    )  # fmt: skip
    undated_at = InstantField(
        required=False, label="Taken, if the camera wrote no date",
        help_text="For scans and pictures sent by message; a date in the file itself is never replaced.",
    )  # fmt: skip
    field_order = ["files"]

    class Meta:
        model = Photo
        fields = ["view", "caption", "light", "has_scale", "has_colour_target", "taken_by", "rights"]
        labels = {"view": "What they show", "light": "Light used"}
        help_texts = {"light": "“raking, left”, “diffuse”, “UV”"}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["taken_by"].empty_label = "not said"

    def grouped(self) -> list[tuple[str, bool, list[Any]]]:
        more = ["has_scale", "has_colour_target", "undated_at", "taken_by", "rights"]
        return [
            ("", False, [self[name] for name in ("files", "view", "caption", "light")]),
            ("Is a scale in the frame, and who took them when?", False, [self[name] for name in more]),
        ]

    def about(self) -> dict[str, Any]:
        """What `keep_photo` is told of each file."""
        return {name: self.cleaned_data[name] for name in [*self._meta.fields, "undated_at"]}


class PhotoForm(RecordForm):
    """The time comes from the camera; a person who corrects it says why."""

    reason = forms.CharField(
        label="Why the time is corrected", required=False, max_length=300,
        help_text="“The camera's clock stood an hour behind.” It is kept in the history.",
    )  # fmt: skip

    class Meta:
        model = Photo
        fields = ["view", "caption", "light", "has_scale", "has_colour_target", "taken_at", "taken_by", "rights"]
        labels = {"view": "What it shows", "light": "Light used", "taken_at": "Taken"}
        groups = [
            ("", ["view", "caption", "light", "has_scale", "has_colour_target"]),
            ("When and by whom", ["taken_at", "reason", "taken_by", "rights"]),
        ]  # fmt: skip

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        corrected = self.instance.taken_at is not None and "taken_at" in self.changed_data
        if corrected and "taken_at" in cleaned and not cleaned.get("reason"):
            self.add_error("reason", "Say why the time is corrected: it was read from the camera, or written before.")
        return cleaned

    def save(self, commit: bool = True) -> Photo:
        self.instance._change_reason = self.cleaned_data.get("reason") or None
        return super().save(commit)
