"""What several papers share: their head, photographs, line of descent, people and days."""

from collections.abc import Iterable
from datetime import date, datetime

from django.conf import settings
from django.utils import timezone
from django.utils.text import capfirst

from records import imaging
from records.captions import copy_words
from records.extensions import PaperContext
from records.lineage import Descent
from records.lost import losses_among
from records.models import Item, Photo, Signed
from records.pdf import blocks as b
from records.pdf.document import Paper
from records.pdf.photos import PhotoUnreadable
from records.wording import phrases

POLARITY = {"positive": "+", "negative": "−"}


def local_day(when: date | datetime | None) -> str:
    """17 April 2026, by the museum's own clock."""
    if when is None:
        return ""
    return phrases.day(timezone.localtime(when) if isinstance(when, datetime) else when)


def head(kind: str, number: str, title: str, summary: str, context: PaperContext, named: str = "") -> Paper:
    return Paper(
        kind=kind, number=number, version=str(context.edition_count), museum=settings.MUSEUM_NAME,
        issued_on=local_day(context.issued_at), title=title, summary=summary, page_size=context.page_size, named=named,
    )  # fmt: skip


def caption_of(photo: Photo, item: Item | None, lead: str = "") -> str:
    """What the photograph shows, when it was taken; a copy is never taken for its original."""
    day = f"taken {local_day(photo.taken_at)}" if photo.taken_at else "not dated"
    shown = (photo.caption or capfirst(photo.view_words)).rstrip(".")
    said = f"{shown}: {', '.join(filter(None, [photo.light, day]))}."
    mine = item is not None and photo.item_id in (None, item.pk)
    return " ".join(filter(None, [lead, said, copy_words(item) if mine else ""]))


def printed(photo: Photo, caption: str = "") -> b.Photo:
    """The small copy for print; a paper that should show a photograph is not issued without it."""
    path = imaging.derivative_path(photo.sha256, "print")
    if not path.is_file():
        require_file(photo)
        path = imaging.derive(photo.path)["print"]
    return b.Photo(path, caption)


def require_file(photo: Photo) -> None:
    """The original must be there, from which pieces and small copies are made."""
    if not imaging.original_path(photo.path).is_file():
        raise PhotoUnreadable(
            f"The file of photograph {photo.pk} ({photo.original_name}) is not in the data folder: "
            "restore it from the backup, for the paper would lack it."
        )


def strip(chain: Descent, caption: str = "") -> b.DescentStrip:
    """The line of descent: things that are joined later stand in one place of the line."""
    parts: list[b.Piece | b.Link] = []
    for index, column in enumerate(chain.columns):
        if index:
            parts.append(_link(chain.columns[index - 1], column))
        parts.append(_piece(column["nodes"]))
    return b.DescentStrip(tuple(parts), caption)


def _link(before: dict, after: dict) -> b.Link:
    """What was done to get from the one to the other: it is kept with the later of the two."""
    known = not any(node.get("unknown") for node in before["nodes"])
    return b.Link(after["via"], known=known)


def _piece(nodes: list[dict]) -> b.Piece:
    known = [node for node in nodes if not node.get("unknown")]
    if not known:
        return b.Piece(nodes[0]["title"] if nodes else "not known", "", known=False)
    kinds = dict.fromkeys(node["kind"] for node in known)
    what = known[0]["title"] if len(known) == 1 else ", ".join(f"{kind}s" for kind in kinds)
    signs = {POLARITY.get(node["polarity"], "") for node in known}
    return b.Piece(", ".join(node["number"] for node in known), what, signs.pop() if len(signs) == 1 else "")


def signer(row: Signed, name: str, role: str) -> b.Signer:
    """Who signed in the register; or the line that waits for ink."""
    if row.is_signed:
        return b.Signer(str(row.signed_by), row.signed_role.capitalize(), local_day(row.signed_at))
    return b.Signer(name, role.capitalize())


def losses(things: Iterable[Item]) -> list[b.Block]:
    """A notice for each original, among what a piece descends from, that is gone."""
    return [b.Notice(loss.words, loss.why) for loss in losses_among(things)]


def sentences(*parts: str) -> str:
    """Parts of prose put together, each ending in a full stop."""
    kept = (part.strip() for part in parts if part and part.strip())
    return " ".join(part if part[-1] in ".:;!?”" else f"{part}." for part in kept)


def cautions(words: Iterable[str]) -> list[b.Caution]:
    return [b.Caution(text) for text in dict.fromkeys(words) if text]
