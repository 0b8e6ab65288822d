"""The chain from an original to its copies: polarity, transfers, generation. Pure: links in, facts out.

Rules of the trade: a mould or a deposit in a mould flips the polarity and is one transfer of the surface;
a metal skin on a core, the making-up of shells, a scan and a print do not and are not.
"""

from records.descent.bands import Band, band_from, bands
from records.descent.dates import Span, refuse_impossible
from records.descent.drawing import Caption, Drawing, lay_out, shortened
from records.descent.lineage import Lineage, trace, trace_all
from records.descent.links import TRANSFERS, DescentError, Link, Transfer
from records.descent.strip import Edge, Strip, strip
from records.descent.tree import Row, tree
from records.descent.words import transfer_words, words

__all__ = [
    "TRANSFERS", "Band", "Caption", "DescentError", "Drawing", "Edge", "Lineage", "Link", "Row", "Span", "Strip",
    "Transfer", "band_from", "bands", "lay_out", "refuse_impossible", "shortened", "strip", "trace", "trace_all",
    "transfer_words", "tree", "words",
]  # fmt: skip
