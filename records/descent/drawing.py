"""The tree laid out for drawing: one row for each place, an elbow to what it came from; for pages and paper."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from records.descent.tree import Row

INDENT, ROW, LEFT, TOP = 26.0, 46.0, 12.0, 20.0
LETTER = 7.4  # a generous width of one letter at the size of the number
LONGEST = 76  # letters of a second line: kind and title of most copies, whole


@dataclass(frozen=True)
class Caption:
    """What stands beside a place: the number, a line beneath, the polarity (+1, −1, None), and where it leads."""

    number: str
    words: str = ""
    polarity: int | None = None
    url: str = ""
    here: bool = False
    gone: bool = False


@dataclass(frozen=True)
class Node:
    x: float
    y: float
    caption: Caption
    known: bool = True
    repeated: bool = False

    @property
    def kind(self) -> str:
        """Which shape is drawn: a question mark, a filled round for a positive, an open square for a negative."""
        if not self.known:
            return "unknown"
        return {1: "positive", -1: "negative"}.get(self.caption.polarity or 0, "other")

    @property
    def right(self) -> float:
        """Where its words end at the widest."""
        letters = max(len(self.caption.number) + 2, min(len(self.caption.words), LONGEST) * 0.9)
        return self.x + 16 + LETTER * letters

    def moved(self, left: float, up: float) -> "Node":
        return replace(self, x=self.x - left, y=self.y - up)


@dataclass(frozen=True)
class Elbow:
    """From the parent's foot down and across to the child; dashed where the step is not recorded."""

    x: float
    top: float
    bottom: float
    end: float
    known: bool = True

    def cut(self, left: float, up: float, foot: float) -> "Elbow":
        """What a part of the drawing shows of it: begun above, or ended at the foot and then without its arm."""
        x, top, bottom = self.x - left, max(self.top - up, 0.0), self.bottom - up
        if bottom >= foot:
            return replace(self, x=x, top=top, bottom=foot, end=x)
        return replace(self, x=x, top=top, bottom=bottom, end=self.end - left)


@dataclass(frozen=True)
class Drawing:
    width: float
    height: float
    nodes: tuple[Node, ...]
    elbows: tuple[Elbow, ...]


def lay_out(rows: Iterable[Row], captions: dict) -> Drawing:
    """Places and elbows of a tree; `captions` has one entry for each key of the rows, None included."""
    rows = list(rows)
    nodes = tuple(_node(index, row, captions[row.key]) for index, row in enumerate(rows))
    elbows = tuple(_elbow(nodes, row, index) for index, row in enumerate(rows) if row.parent is not None)
    return Drawing(max((node.right for node in nodes), default=LEFT), TOP + ROW * len(rows), nodes, elbows)


def shortened(words: str, letters: int = LONGEST) -> str:
    """
    >>> shortened("a long line of words", 10)
    'a long…'
    """
    if len(words) <= letters:
        return words
    return words[:letters].rsplit(" ", 1)[0].rstrip(",;: ") + "…"


def _node(index: int, row: Row, caption: Caption) -> Node:
    return Node(LEFT + INDENT * row.depth, TOP + ROW * index, caption, row.key is not None, row.repeated)


def _elbow(nodes: tuple[Node, ...], row: Row, index: int) -> Elbow:
    parent, child = nodes[row.parent or 0], nodes[index]
    return Elbow(parent.x, parent.y + 8, child.y, child.x - 8, known=parent.known and row.words != "")
