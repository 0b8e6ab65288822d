"""The descent sheet: the whole line as a tree, how many copies there are and where, where the moulds are, what is open.

Asked from any piece of the line it is the same line; the piece asked about is framed in the tree.
"""

from dataclasses import asdict
from typing import Any

from records.extensions import Limit, PaperContext
from records.family import Family, Member, family_of
from records.family_sizes import DIGITS, SizeLine, Sizes, sizes_of
from records.limits import concessions_of, limits_along
from records.models import Item
from records.pdf import blocks as b
from records.pdf.document import build
from records.reports.attached import record
from records.reports.parts import head, losses
from records.sentences import named
from records.units import show

KIND = "Descent sheet"
NONE = "None is recorded."


def make(item: Item, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    family = family_of(item)
    sizes = sizes_of(family)
    limits = limits_along(item)
    rows = {"pieces": [member.item for member in family.members.values()], "concessions": concessions_of(item)}
    data = record(KIND, item.number, context, rows, limits=limits)
    data["line of descent"] = {number: asdict(member.lineage) for number, member in family.members.items()}
    roots = " and ".join(f"{root.item.number}, {root.item.title.rstrip('.')}" for root in family.roots)
    paper = head(KIND, item.number, f"All that came of {roots}", family.sentence, context, named(item))
    told = [*losses(root.item for root in family.roots), *_limits(limits)]
    return build(paper, [*told, *_blocks(family, sizes)], data, context.issued_at), data


def _blocks(family: Family, sizes: Sizes) -> list[b.Block]:
    return [
        b.Heading("Line of descent"), b.DescentTree(family.drawing),
        b.Heading("How many copies are there, and where are they?"), *_copies(family),
        b.Heading("Where are the moulds?"), *_moulds(family),
        b.Heading("Does the size drift?"), *_sizes(sizes),
        b.Heading("What is not known?"), b.Prose("\n".join(_open(family))),
    ]  # fmt: skip


def _limits(limits: list[Limit]) -> list[b.Block]:
    """Of the piece asked about; that its original is lost stands above already."""
    return [b.Notice(f"Limits of use, {each.source}", each.sentence) for each in limits if not each.is_loss]


def _copies(family: Family) -> list[b.Block]:
    if not family.copies:
        return [b.Prose(NONE)]
    columns = (
        b.Column("Number"), b.Column("What it is"), b.Column("Mark"), b.Column("Edition", empty="not counted"),
        b.Column("Where"), b.Column("Owner", empty="not recorded"),
    )  # fmt: skip
    rows = tuple(
        (
            m.item.number,
            _what(m),
            "recorded" if m.item.is_marked else "none recorded",
            m.note.uses,
            _where(m),
            _owner(m),
        )
        for m in family.copies
    )
    return [b.FigureTable(columns, rows)]


def _moulds(family: Family) -> list[b.Block]:
    if not family.moulds:
        return [b.Prose(NONE)]
    columns = (
        b.Column("Number"), b.Column("What it is"), b.Column("Uses", empty="not counted"), b.Column("Where"),
        b.Column("Owner", empty="not recorded"),
    )  # fmt: skip
    return [
        b.FigureTable(
            columns, tuple((m.item.number, _what(m), m.note.uses, _where(m), _owner(m)) for m in family.moulds)
        )
    ]


def _what(member: Member) -> str:
    return f"{member.item.title.rstrip('.')}; {member.item.get_kind_display()}, {member.words}"


def _where(member: Member) -> str:
    return "; ".join(filter(None, [member.told_where, member.note.due]))


def _owner(member: Member) -> str:
    return str(member.item.owner or "")


def _sizes(sizes: Sizes) -> list[b.Block]:
    if not sizes.lines:
        return [b.Prose("Two pieces of the line have to be measured across before they can be compared.")]
    columns = (
        b.Column("Piece"), b.Column("Generation"), b.Column("Across", "mm", "right"), b.Column("Against"),
        b.Column("Measured", "%", "right"), b.Column("Foretold", "%", "right", calculated=True, empty="not reckoned"),
        b.Column("Beyond it", "%", "right", calculated=True),
    )  # fmt: skip
    return [b.Prose("\n".join(sizes.sentences)), b.FigureTable(columns, tuple(map(_size, sizes.lines)))]


def _size(line: SizeLine) -> tuple[str, ...]:
    step = line.step
    return (
        step.item.number, line.words, _bare(step.size_mm, "_mm", 2), step.against,
        _bare(step.measured_pct, "_pct", DIGITS), _bare(step.foretold_pct, "_pct", DIGITS),
        _bare(line.beyond_pct, "_pct", DIGITS),
    )  # fmt: skip


def _bare(value: float | None, suffix: str, digits: int) -> str:
    """The figure alone: its unit stands in the heading."""
    return "" if value is None else show(value, suffix, digits=digits).rsplit("\u2009", 1)[0]


def _open(family: Family) -> list[str]:
    """Where the line is open: first links nobody recorded, pieces without a place, copies without a mark."""
    members = family.members.values()
    open_ends = dict.fromkeys(end for member in members for end in member.lineage.open_ends)
    said = [f"What {end} was made from, or how, is not recorded." for end in open_ends]
    said += [f"The line begins with: {family.unknown.rstrip('.')}."] if family.unknown else []
    lost = [m.item.number for m in (*family.copies, *family.moulds) if not m.item.place_id and not m.is_gone]
    said += [f"Without a recorded place: {', '.join(lost)}."] if lost else []
    bare = [m.item.number for m in family.copies if not m.item.is_marked]
    said += [f"Copies on which no mark is recorded: {', '.join(bare)}."] if bare else []
    return said or ["Every step of this line is recorded, every piece has its place, every copy its mark."]
