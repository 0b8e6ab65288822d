"""Two dated photographs to be compared, and the points that are the same on both."""

from typing import Any

from records.forms.base import RecordForm
from records.forms.pictures import PictureRadio
from records.forms.points import PointsField
from records.models import Photo, PhotoPair

LEAST, MOST = 2, 3


class PairForm(RecordForm):
    class Meta:
        model = PhotoPair
        fields = ["before", "after"]
        widgets = {"before": PictureRadio, "after": PictureRadio}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        for name in self.fields:
            dated = Photo.objects.filter(item=self.instance.report.item, taken_at__isnull=False)
            self.fields[name].queryset = dated
            self.fields[name].empty_label = None

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        before, after = cleaned.get("before"), cleaned.get("after")
        if before and after and before.taken_at >= after.taken_at:
            self.add_error("after", "The later photograph was taken before the earlier one: change them round.")
        return cleaned


class PairPointsForm(RecordForm):
    """The points on one of the two."""

    class Meta:
        model = PhotoPair
        fields: list[str] = []

    def __init__(self, *args: Any, side: str, **kwargs: Any) -> None:
        self.side = side
        super().__init__(*args, **kwargs)
        photo = getattr(self.instance, side)
        self.fields["points"] = PointsField(
            size_px=(photo.width_px_count, photo.height_px_count), least=LEAST, most=MOST, label="Points, in pixels",
            initial=getattr(self.instance, f"{side}_points"),
            help_text="Two or three places that did not change, the same on both photographs and in the same order.",
        )  # fmt: skip

    def save(self, commit: bool = True) -> PhotoPair:
        setattr(self.instance, f"{self.side}_points", self.cleaned_data["points"])
        return super().save(commit)
