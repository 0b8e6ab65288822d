"""The form of an addendum: words, and the photographs that the signed report lacks."""

from typing import Any

from django import forms

from records.forms.base import RecordForm
from records.forms.pictures import PictureCheckboxes, offer_pictures
from records.models import Addendum, Photo


class AddendumForm(RecordForm):
    class Meta:
        model = Addendum
        fields = ["words", "photos"]
        widgets = {"words": forms.Textarea({"rows": 5}), "photos": PictureCheckboxes}
        labels = {"photos": "Photographs that belong to this examination"}
        help_texts = {"words": "“The photographs of 3 February lay on the camera until today.”"}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        report = self.instance.report
        rows = Photo.objects.filter(item=report.item_id).exclude(condition_reports=report)
        offer_pictures(self.fields["photos"], rows.exclude(addenda__report=report))
