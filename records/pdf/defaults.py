"""ReportLab's defaults, set before any other part of it is imported: its styles and tables copy them then."""

from reportlab import rl_config
from reportlab.lib.fonts import addMapping

FAMILIES = (("Sans", "Sans-Bold", "Sans-Italic"), ("Serif", "Serif-Bold", "Serif-Italic"))

for regular, bold, italic in FAMILIES:
    for is_bold, is_italic, face in ((0, 0, regular), (1, 0, bold), (0, 1, italic), (1, 1, bold)):
        addMapping(regular, is_bold, is_italic, face)

rl_config.canvas_basefontname = "Sans"  # else un-embedded Helvetica leaks into every file
rl_config.defaultGraphicsFontName = "Sans"
# Binary streams: ASCII85 in pure Python costs six times the time and a quarter more bytes.
rl_config.useA85 = 0
