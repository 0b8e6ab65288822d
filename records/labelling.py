"""From rows of the register to the pure kits of wording and marking, and back."""

import re
import textwrap
from dataclasses import dataclass, replace

from records import clock, consents, extensions, gates, wording
from records.extensions import CopyTraits
from records.line import line_of
from records.lineage import Descent
from records.models import Consent, Gate, Item, LabelWording, Mark, Measurement
from records.wording import Complaint, CopyFacts, LabelDraft
from records.wording.lengths import LINE_MOST

What = Measurement.What
LOST_WORDS = {
    Item.Status.LOST: "is untraced", Item.Status.STOLEN: "has been stolen", Item.Status.DESTROYED: "is destroyed",
}  # fmt: skip


@dataclass(frozen=True)
class Labelled:
    """A copy with all that its label and its marks are judged by; gathered once for a page."""

    item: Item
    descent: Descent
    traits: CopyTraits
    facts: CopyFacts
    consents: list[Consent]


def gather(item: Item) -> Labelled:
    """Everything about a copy, in few queries; none where the page has read its line already."""
    line = line_of(item)
    traits = traits_of(item)
    marks = [mark for mark in item.marks.all() if mark.purpose == Mark.Purpose.COPY]
    facts = _facts(item, line.descent, traits, marks, line.measured)
    return Labelled(item, line.descent, traits, facts, line.consents)


def traits_of(item: Item) -> CopyTraits:
    found = (source(item) for source in extensions.copy_traits)
    return next((traits for traits in found if traits), CopyTraits())


def _facts(
    item: Item, descent: Descent, traits: CopyTraits, marks: list[Mark], measured: dict[int, list[Measurement]]
) -> CopyFacts:
    root, model = _original(descent), descent.model
    lent = bool(root and root.status == Item.Status.LOAN_IN)
    return CopyFacts(
        number=item.number,
        made_date=item.date_words or (str(descent.made_on.year) if descent.made_on else ""),
        technique=traits.technique or _technique(item, descent),
        generation=max(descent.lineage.generation, 1),
        at_least=descent.lineage.at_least,
        historic=item.kind == Item.Kind.HISTORIC_COPY,
        one_sided=traits.one_sided,
        skin=traits.skin if traits.skin in ("silver", "gold") else "",
        subject=_subject(root),
        original_date=root.date_words if root else "",
        original_number=root.number if root else "",
        original_owner=root.owner.name if root and lent and root.owner else "",
        original_lost=LOST_WORDS.get(root.status, "") if root else "",
        model=_model_words(model) if model and model.is_copy else "",
        materials=item.materials,
        mark_text=marks[0].text if marks else "",
        may_be_touched=item.status == Item.Status.HANDLING,
        mass_g=_mass(measured.get(item.pk)),
        original_mass_g=_mass(measured.get(model.pk)) if model else None,
    )


def _original(descent: Descent) -> Item | None:
    """The piece that everything repeats; None where the first link is not known."""
    return next((thing for thing in descent.forebears if thing.kind == Item.Kind.ORIGINAL), None)


def _technique(item: Item, descent: Descent) -> str:
    if item.kind == Item.Kind.CAST:
        return "cast"
    if descent.lineage.polarity == -1:
        return "matrix"
    return "core" if descent.lineage.skinned else "hollow"


def _with_article(words: str) -> str:
    """“Portrait medal of …” → “a portrait medal of …”."""
    words = words.strip().rstrip(".")
    if not words:
        return ""
    if re.match(r"(?:an?|the)\s", words, re.IGNORECASE):
        return words[0].lower() + words[1:]
    return f"{'an' if words[0].lower() in 'aeio' else 'a'} {words[0].lower()}{words[1:]}"


def _subject(root: Item | None) -> str:
    if root is None:
        return ""
    named = root.maker and root.maker.lower() in root.title.lower()
    return _with_article(root.title) + (f" by {root.maker}" if root.maker and not named else "")


def _model_words(model: Item) -> str:
    kind = "an electrotype" if model.kind == Item.Kind.HISTORIC_COPY else "an electrotype copy"
    date = model.date_words
    return f"{kind} of {date}" if re.fullmatch(r"\d{4}", date) else f"{kind}, {date}" if date else kind


def _mass(rows: list[Measurement] | None) -> float | None:
    return next((row.mass_g for row in reversed(rows or []) if row.what == What.MASS), None)


def draft_of(label: LabelWording) -> LabelDraft:
    """The label as it will be read: heading, what it repeats, body and credit."""
    after = textwrap.wrap(label.after, LINE_MOST)
    body = "\n".join(part for part in (*after, label.body, label.credit) if part)
    return LabelDraft(label.heading, body, label.item.number, label.second_heading, label.second_text)


def proposal(labelled: Labelled) -> dict[str, str]:
    """A good wording from the record, for the curator to improve."""
    facts = labelled.facts
    only_after = replace(
        facts, materials="", mark_text="", may_be_touched=False, original_number="", original_owner="", original_lost=""
    )
    whole, after = wording.compose(facts), wording.compose(only_after)
    kind = wording.kind_of_text(whole.heading)
    credit = next((consent.credit for consent in labelled.consents if consent.credit), "")
    return {
        "kind_of_copy": kind.words if kind else "",
        "copy_date": whole.heading.removeprefix(kind.words if kind else "").lstrip(", "),
        "after": " ".join(after.body.split("\n")),
        "body": whole.body.removeprefix(after.body).strip(),
        "credit": credit,
    }


def complaints(label: LabelWording, labelled: Labelled | None = None) -> list[Complaint]:
    """Everything to be said against a wording, refusals first; the owner's prescribed words count as well."""
    labelled = labelled or gather(label.item)
    draft = draft_of(label)
    prescribed = [found for consent in labelled.consents if (found := _prescribed(consent, draft))]
    if prescribed and gates.concession_for(Gate.IDENTIFY, consents.LABEL, (label.item,), clock.today()):
        prescribed = []
    return wording.by_weight([*prescribed, *wording.check(draft, labelled.facts)])


def refusals(label: LabelWording, labelled: Labelled | None = None) -> list[Complaint]:
    return [complaint for complaint in complaints(label, labelled) if complaint.severity == "refuse"]


def _prescribed(consent: Consent, draft: LabelDraft) -> Complaint | None:
    """The consent says what the label must begin with, or must contain."""
    asked = _squeezed(consent.label_wording)
    if not asked:
        return None
    quoted = re.search(r"[“\"]([^”\"]+)[”\"]", asked)
    words = (quoted.group(1) if quoted else asked).casefold()
    has_it = _squeezed(draft.text).casefold()
    begins = bool(re.search(r"\bbegin", asked, re.IGNORECASE)) and quoted is not None
    if has_it.startswith(words) if begins else words in has_it:
        return None
    sentence = (
        f"The consent of {consent.owner} ({consent.given_on}) prescribes: {asked.rstrip('.')}. "
        "The wording does not have it; write it as it stands there, or have a concession written that names "
        f"“{consents.LABEL}”."
    )
    return Complaint("consent.wording", "refuse", sentence)


def _squeezed(text: str) -> str:
    return " ".join(text.split())
