"""Points with their values on a photograph or a plain outline: laid out once, drawn twice, on paper by `block`."""

from records.pdf.spot_map.as_svg import svg
from records.pdf.spot_map.model import Chip, Spot, SpotMap

__all__ = ["Chip", "Spot", "SpotMap", "svg"]
