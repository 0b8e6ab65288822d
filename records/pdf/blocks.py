"""Every block a paper can be made of, in one place to import from."""

from records.pdf.bench import LEAST_ROW, ROW, BenchHead, BoxTable, TickList
from records.pdf.chart_block import ChartBlock
from records.pdf.descent_strip import DescentStrip, Link, Piece
from records.pdf.descent_tree import DescentTree
from records.pdf.evidence import Fact
from records.pdf.facts import FactList
from records.pdf.flow import Block, Room
from records.pdf.handwriting import DrawingGround, RuledLines
from records.pdf.marks import MarkBlock
from records.pdf.notices import Caution, Notice
from records.pdf.photo_map.frame import MappedPhoto, MapShape
from records.pdf.photos import Photo, PhotoUnreadable
from records.pdf.pictures import Cover, PhotoGrid
from records.pdf.prose import Appendix, Heading, NewPage, Prose
from records.pdf.signatures import Signatures, Signer
from records.pdf.spot_map.block import SpotMapBlock
from records.pdf.tables import Cell, Column, FigureTable
from records.pdf.working import Term, Working

__all__ = [
    "LEAST_ROW", "ROW",
    "Appendix", "BenchHead", "Block", "BoxTable", "Caution", "Cell", "ChartBlock", "Column", "Cover", "DescentStrip",
    "DescentTree", "DrawingGround", "Fact", "FactList", "FigureTable", "Heading", "Link", "MapShape", "MappedPhoto",
    "MarkBlock", "NewPage", "Notice", "Photo", "PhotoGrid", "PhotoUnreadable", "Piece", "Prose", "Room", "RuledLines",
    "Signatures", "Signer", "SpotMapBlock", "Term", "TickList", "Working",
]  # fmt: skip
