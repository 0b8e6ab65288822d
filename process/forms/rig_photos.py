"""Photographs of the rig, of the bench sheet and of what was seen in the bath."""

from django import forms

from records.forms.photos import TYPES
from records.models import Photo

VIEWS = [Photo.View.RIG, Photo.View.SHEET, Photo.View.OVERALL, Photo.View.DETAIL]


class RigPhotoForm(forms.Form):
    file = forms.FileField(
        label="Photograph",
        max_length=255,
        widget=forms.ClearableFileInput({"accept": TYPES}),
        help_text="A phone offers its camera here. The file is kept unchanged.",
        error_messages={
            "required": "Choose a photograph.",
            "empty": "The file is empty: send it again from the camera.",
        },
    )
    view = forms.ChoiceField(label="What it shows", choices=[(view.value, view.label) for view in VIEWS])
    caption = forms.CharField(
        max_length=300, required=False, help_text="“Contacts at 12 and 6 h, feeler wire in the legend.”"
    )
    has_scale = forms.BooleanField(label="Scale in the frame", required=False)
