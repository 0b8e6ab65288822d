"""A heading or caption keeps to what it stands above, also above a table that runs over many pages."""

from typing import Any

from reportlab.platypus import CondPageBreak, Flowable, PageBreak, Paragraph, Spacer, Table

from records.pdf.flow import Room

SMALL = 2  # facts of less than this part of a page stay together, for they are read down one column, then the other
SHORT = 4  # and so do whole tables of less than this part
ENDING = 3  # two rows and the note beneath them
BODY_ROWS = 2  # rows of a table, lines of a paragraph, that must follow a heading on the same page


def least_height(flowable: Any, room: Room) -> float:
    """The least height that makes sense of a flowable before a page may end."""
    _, height = flowable.wrap(room.width, room.height)
    spaces = flowable.getSpaceBefore() + flowable.getSpaceAfter()
    if least := getattr(flowable, "breaks_after", 0.0):
        return float(min(least, height)) + spaces
    if isinstance(flowable, Table):
        if height <= room.height / (SHORT if flowable.repeatRows else SMALL):
            return float(height) + spaces
        rows = flowable._rowHeights[: flowable.repeatRows + BODY_ROWS if flowable.repeatRows else 1]
        return float(sum(h or 0 for h in rows)) + spaces
    if isinstance(flowable, Paragraph) and not getattr(flowable, "keepWithNext", 0):
        return float(min(height, BODY_ROWS * flowable.style.leading)) + spaces
    return float(height) + spaces


def _keep_rows_whole(table: Table, room: Room) -> None:
    """Allow a break inside a row only where one is higher than a page; else a fact loses its label."""
    table.wrap(room.width, room.height)
    heights = [height or 0.0 for height in table._rowHeights]
    table.splitInRow = int(max(heights, default=0.0) > room.height or hasattr(table, "breaks_after"))
    if sum(heights[: table.repeatRows]) + sum(heights[-ENDING:]) > room.height:
        table._nosplitCmds = []  # what should end together is higher than a page


def _group_height(flowables: list[Flowable], room: Room) -> float:
    total = 0.0
    for flowable in flowables:
        total += least_height(flowable, room)
        if not getattr(flowable, "keepWithNext", 0):
            break
    return min(total, room.height)


def _goes_on(flowables: list[Flowable], at: int) -> bool:
    """Whether this one is room or hangs on what stands before it."""
    return isinstance(flowables[at], Spacer) or bool(getattr(flowables[at - 1], "keepWithNext", 0))


def _signed_groups(flowables: list[Flowable], room: Room) -> dict[int, float]:
    """Where what stands right before a signature begins, and the height of both; none where that is half a page."""
    found = {}
    for index, flowable in enumerate(flowables):
        if not getattr(flowable, "follows", False):
            continue
        first = index - 1
        while first > 0 and _goes_on(flowables, first):
            first -= 1
        height = sum(each.wrap(room.width, room.height)[1] + each.getSpaceBefore() + each.getSpaceAfter()
                     for each in flowables[first : index + 1])  # fmt: skip
        if first >= 0 and height <= room.height / SMALL:
            found[first] = height
    return found


def keep_together(flowables: list[Flowable], room: Room) -> list[Flowable]:
    """Put a conditional page break before every run of kept flowables, and before every table.

    A table may break inside a row, for a note can be longer than a page; a row that fits a page never does.
    """
    answer: list[Flowable] = []
    inside = False
    for table in (flowable for flowable in flowables if isinstance(flowable, Table)):
        _keep_rows_whole(table, room)
    signed = _signed_groups(flowables, room)
    for index, flowable in enumerate(flowables):
        keeps = bool(getattr(flowable, "keepWithNext", 0))
        needed = signed.get(index, 0.0)
        if (keeps or isinstance(flowable, Table)) and not inside:
            needed = max(needed, _group_height(flowables[index:], room))
        if needed and not (answer and isinstance(answer[-1], PageBreak)):
            answer.append(CondPageBreak(needed))
        inside = keeps
        answer.append(flowable)
    for flowable in answer:
        if getattr(flowable, "keepWithNext", 0):
            flowable.keepWithNext = 0
    return answer
