"""The composition of a piece for the register: what was put into a copy made here, or what materials say."""

from collections.abc import Iterable

from process.models import MakingUp
from process.panels.copies import making_of, summary_of
from process.summaries.care import cares_for, traits_named, traits_of
from process.summaries.copies import drying_words
from records.extensions import Care, care_sources
from records.models import Item

KINDS = (Item.Kind.COPY, Item.Kind.HISTORIC_COPY)


def acid_inside(item: Item, making: MakingUp) -> bool:
    """A skinned core that never came to rest at what the metal explains."""
    return bool(making.core_id and drying_words(making, summary_of(item, making).parts))


def composition(item: Item) -> Iterable[Care]:
    if item.kind not in KINDS:
        return []
    making = making_of(item)
    found = traits_of(making, making.steps, acid_inside(item, making)) if making else traits_named(item)
    return cares_for(found) if found else []


care_sources.append(composition)
