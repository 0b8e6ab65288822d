"""Points on a picture, one a line: pixels across and down. A script that lets them be touched writes the same lines."""

import re
from typing import Any

from django import forms
from django.core.exceptions import ValidationError

MOST_POINTS = 400
LONGEST_LINE = 30  # characters
NUMBER = r"([0-9]{1,6}(?:[.,][0-9]{1,3})?)"
LINE = re.compile(rf"{NUMBER}(?:\s*;\s*|,?\s+){NUMBER}")


class PointsField(forms.CharField):
    """Cleans to [[x, y], …] within a picture of `size_px`."""

    def __init__(self, *, size_px: tuple[int, int], least: int, most: int, **kwargs: Any) -> None:
        self.size_px, self.least, self.most = size_px, least, most
        lines = {"rows": min(most, 4), "data-points": "", "data-least": least, "data-most": most, "spellcheck": "false"}
        super().__init__(widget=forms.Textarea(lines), max_length=most * LONGEST_LINE, **kwargs)

    def prepare_value(self, value: Any) -> Any:
        return "\n".join(f"{x:g} {y:g}" for x, y in value) if isinstance(value, list) else value

    def has_changed(self, initial: Any, data: Any) -> bool:
        return super().has_changed(self.prepare_value(initial), data)

    def clean(self, value: Any) -> list[list[float]]:
        lines = [line.strip() for line in super().clean(value).splitlines() if line.strip()]
        points = [self._point(line) for line in lines[: self.most + 1]]
        if not self.least <= len(points) <= self.most:
            wanted = f"{self.least}" if self.least == self.most else f"at least {self.least}"
            raise ValidationError(f"Set {wanted} points: {len(lines)} stand there.", code="count")
        if len({tuple(point) for point in points}) < self.least:
            raise ValidationError("Two points lie on one another: set them apart.", code="same")
        return points

    def _point(self, line: str) -> list[float]:
        found = LINE.fullmatch(line)
        if not found:
            raise ValidationError(
                f"“{line[:30]}” is no point: write pixels across and down, as in “812 2310”.", code="unreadable"
            )
        point = [float(part.replace(",", ".")) for part in found.groups()]
        if point[0] > self.size_px[0] or point[1] > self.size_px[1]:
            raise ValidationError(
                f"“{line}” lies outside the picture of {self.size_px[0]} × {self.size_px[1]} pixels.", code="outside"
            )
        return point
