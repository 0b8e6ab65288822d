"""A tree cut into bands that fit a page: rows in their order, each band moved to the left as far as it goes."""

from dataclasses import dataclass

from records.descent.drawing import INDENT, LEFT, ROW, TOP, Drawing, Elbow, Node


@dataclass(frozen=True)
class Band:
    """Some rows of a tree in coordinates of their own; `above` names what a node hangs from in an earlier band."""

    height: float
    nodes: tuple[Node, ...]
    elbows: tuple[Elbow, ...]
    above: dict[Node, str]


@dataclass(frozen=True)
class _Branch:
    elbow: Elbow
    parent: int
    child: int


def bands(drawing: Drawing, width: float, height: float) -> tuple[Band, ...]:
    """As many rows in each as fit; a deep chain ends its band where it would leave the page on the right."""
    answer, first = [], 0
    while first < len(drawing.nodes):
        band, first = band_from(drawing, first, width, height)
        answer.append(band)
    return tuple(answer)


def band_from(drawing: Drawing, first: int, width: float, height: float) -> tuple[Band, int]:
    """The band that begins with one row, and the row that begins the next."""
    last = _last(drawing, first, width, height)
    return _band(drawing, _branches(drawing), first, last), last + 1


def _branches(drawing: Drawing) -> list[_Branch]:
    """Each elbow with the rows that it joins: the child's own, and the nearest above that stands where it begins."""
    found: list[_Branch] = []
    open_at: dict[float, int] = {}
    elbows = {elbow.bottom: elbow for elbow in drawing.elbows}
    for index, node in enumerate(drawing.nodes):
        if elbow := elbows.get(node.y):
            found.append(_Branch(elbow, open_at[elbow.x], index))
        if not node.repeated:
            open_at[node.x] = index
    return found


def _last(drawing: Drawing, first: int, width: float, height: float) -> int:
    left, right = drawing.nodes[first].x, drawing.nodes[first].right
    last = first
    for index in range(first + 1, len(drawing.nodes)):
        node = drawing.nodes[index]
        left, right = min(left, node.x), max(right, node.right)
        if right - left + LEFT + INDENT > width or TOP + ROW * (index - first + 1) > height:
            break
        last = index
    return last


def _band(drawing: Drawing, branches: list[_Branch], first: int, last: int) -> Band:
    rows = range(first, last + 1)
    hanging = [branch for branch in branches if branch.child in rows and branch.parent < first]
    left = min([*(drawing.nodes[row].x for row in rows), *(branch.elbow.x for branch in hanging)])
    across, up = left - LEFT, ROW * first
    nodes = {row: drawing.nodes[row].moved(across, up) for row in rows}
    height = TOP + ROW * len(rows)
    elbows = tuple(
        branch.elbow.cut(across, up, height)
        for branch in branches
        if branch.parent <= last and branch.child >= first and branch.elbow.x >= left
    )
    above = {nodes[branch.child]: drawing.nodes[branch.parent].caption.number for branch in hanging}
    return Band(height, tuple(nodes.values()), elbows, above)
