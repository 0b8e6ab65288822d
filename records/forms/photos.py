"""Sending photographs, and saying what they show."""

from collections.abc import Sequence
from typing import Any

from django import forms
from django.conf import settings

from records.forms.base import RecordForm
from records.forms.dates import InstantField
from records.imaging import MEGABYTE, TAKEN
from records.models import Photo

WHY = "Say why the time is corrected: it was read from the camera, or written before."
SHOWN = ["view", "angle_deg", "moment", "caption", "light", "has_scale", "has_colour_target"]

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


class PhotoUploadForm(RecordForm):
    """What all the files of one sending have in common; when each was taken comes from the camera."""

    files = SeveralFilesField(label="Photographs", widget=SeveralFiles({"accept": TYPES}), max_length=255)
    undated_at = InstantField(
        required=False, label="Taken, if the camera wrote no date",
        help_text="For scans and pictures sent by message; a date in the file itself is never replaced.",
    )  # fmt: skip

    class Meta:
        model = Photo
        fields = [*SHOWN, "taken_by", "rights"]
        labels = {"view": "What they show", "light": "Light used"}
        help_texts = {"light": "“raking”, “diffuse”, “ultraviolet, 365 nm”"}
        groups = [
            ("", ["files", "view", "angle_deg", "caption", "light"]),
            ("Is a scale in the frame, and who took them when?", [
                "has_scale", "has_colour_target", "moment", "undated_at", "taken_by", "rights",
            ]),
        ]  # fmt: skip

    def __init__(self, *args: Any, views: Sequence[str] = (), **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        limit_mb = settings.UPLOAD_LIMIT_BYTES // MEGABYTE
        self.fields["files"].help_text = f"{TAKEN}, several at once; up to 89 megapixels and {limit_mb} MB each."
        self.fields["files"].widget.attrs["data-limit-mb"] = limit_mb
        if views:
            self.fields["view"].choices = [(view, label) for view, label in Photo.View.choices if view in views]

    def about(self) -> dict[str, Any]:
        """What `keep_photo` is told of each file."""
        typed = {"as_typed": self.instance.as_typed} if self.instance.as_typed else {}
        return {name: self.cleaned_data[name] for name in [*self._meta.fields, "undated_at"]} | typed


class PhotoForm(RecordForm):
    """The time comes from the camera; a person who corrects it says why."""

    class Meta:
        model = Photo
        fields = [*SHOWN, "taken_at", "taken_reason", "taken_by", "rights"]
        labels = {"view": "What it shows", "light": "Light used", "taken_at": "Taken"}
        help_texts = {"taken_reason": "“The camera’s clock stood an hour behind.” It is shown beside the time."}
        groups = [("", SHOWN), ("When and by whom", ["taken_at", "taken_reason", "taken_by", "rights"])]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        corrected = self.instance.taken_at is not None and "taken_at" in self.changed_data
        if corrected and "taken_at" in cleaned and not cleaned.get("taken_reason"):
            self.add_error("taken_reason", WHY)
        return cleaned

    def save(self, commit: bool = True) -> Photo:
        if "taken_at" in self.changed_data:
            self.instance._change_reason = self.cleaned_data["taken_reason"] or None
        return super().save(commit)
