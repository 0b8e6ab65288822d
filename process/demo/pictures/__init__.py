"""Pictures for the demonstration: relief modelled in millimetres, lit, and laid on grey paper."""

from process.demo.pictures.drawing import NAMES, draw, frame_of
from process.demo.pictures.files import jpeg_bytes

__all__ = ["NAMES", "draw", "frame_of", "jpeg_bytes"]
