"""Points with their values on a photograph or a plain outline: one description, laid out once, drawn twice."""

from records.pdf.spot_map.as_svg import svg
from records.pdf.spot_map.block import SpotMapBlock
from records.pdf.spot_map.model import Chip, Spot, SpotMap

__all__ = ["Chip", "Spot", "SpotMap", "SpotMapBlock", "svg"]
