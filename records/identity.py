"""What a copy is called everywhere: one approved wording, from which tags, tickets, captions and file names come."""

from dataclasses import dataclass

from django.conf import settings
from django.urls import reverse

from records import sentences, wording
from records.lineage import Descent, descent_of
from records.models import Item, LabelWording, Mark
from records.wording import phrases


@dataclass(frozen=True)
class Identity:
    """Kind and date first; `after` is what it repeats, or the thing's own title where no wording is approved."""

    number: str
    heading: str
    after: str
    caption: str
    ticket: tuple[str, str]
    file_stem: str
    address: str

    @property
    def sentence(self) -> str:
        """Heading and what it repeats in one breath: “Electrotype copy, 2026, after a medal of 1624”."""
        return f"{self.heading}, {self.after[:1].lower()}{self.after[1:]}".rstrip(".")


def approved(item: Item) -> LabelWording | None:
    label = getattr(item, "label", None) if item.is_copy else None
    return label if label and label.is_signed else None


def identity_of(item: Item, chain: Descent | None = None) -> Identity:
    label = approved(item)
    if label:
        heading, after, date = label.heading, label.after, label.copy_date
    else:
        chain = chain or descent_of(item)
        date = sentences.date_words(item, chain)
        heading, after = ", ".join(filter(None, [sentences.kind_words(item, chain), date])), item.title
    kind = label.kind_of_copy if label else heading.split(",")[0]
    return Identity(
        item.number, heading, after, caption_of(item), phrases.ticket(date, *_mark(item)),
        wording.file_name(item.number, kind), address_of(item),
    )  # fmt: skip


def caption_of(item: Item) -> str:
    """Under every picture; by the approved words where they are at hand."""
    label = approved(item)
    kind = label.kind_of_copy if label else "electrotype" if item.kind == Item.Kind.HISTORIC_COPY else "copy"
    return phrases.caption(kind, item.number)


def address_of(item: Item) -> str:
    """What the code on a tag leads to: for a copy the page that strangers may read."""
    local = reverse("public_copy", args=[item.number]) if item.is_copy else item.get_absolute_url()
    return f"{settings.BASE_URL}{local}"


def _mark(item: Item) -> tuple[str, str]:
    mark = next((mark for mark in item.marks.all() if mark.purpose == Mark.Purpose.COPY), None)
    return (mark.text, mark.face) if mark else ("", "")
