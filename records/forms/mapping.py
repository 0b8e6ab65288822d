"""The shape of a finding on a photograph: points that are touched, or typed as pixels, one a line."""

from typing import Any

from records.annotating.shapes import LEAST, MOST
from records.forms.base import RecordForm
from records.forms.points import PointsField
from records.models import FindingMark

HELP = {
    FindingMark.Shape.POINT: "One point",
    FindingMark.Shape.RECTANGLE: "Two opposite corners",
    FindingMark.Shape.POLYGON: "Points round the edge; the last is joined to the first",
    FindingMark.Shape.LINE: "Points along the line",
}


class FindingMarkForm(RecordForm):
    class Meta:
        model = FindingMark
        fields = ["points"]

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        photo, shape = self.instance.photo, self.instance.shape
        size = (photo.width_px_count, photo.height_px_count)
        self.fields["points"] = PointsField(
            size_px=size, least=LEAST[shape], most=MOST[shape], label="Points, in pixels",
            help_text=f"{HELP[shape]}: pixels across and down from the upper left, one point a line. "
            f"The picture is {size[0]} × {size[1]} pixels.",
        )  # fmt: skip
