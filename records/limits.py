"""Limits of use go with a thing and with all that is made of it, along its line of descent, to every page and paper."""

from collections.abc import Collection
from datetime import date
from functools import reduce
from operator import or_

from django.db.models import Exists, OuterRef, Q, QuerySet

from records import extensions
from records.extensions import Limit
from records.lineage import Descent, descent_of
from records.lost import after_lost, losses_among
from records.models import Concession, DescentLink, Item

# Through these steps the earlier thing lies inside the later one; through all others only its shape went on.
JOINS = {DescentLink.Transfer.MAKING_UP, DescentLink.Transfer.SKIN}
NEGATIVES = {Item.Kind.MOULD, Item.Kind.MATRIX}


def concessions_along(chain: Descent) -> Q:
    """Those that name the thing, a part of it, or what it was taken from; a part keeps its limits for ever.

    A concession for a mould or a model does not reach back to what had left it before.
    """
    inside = _parts(chain)
    found = Q(items__in=[chain.item.pk, *inside])
    for thing in chain.forebears:
        if thing.pk not in inside:
            day = _left_on(thing, chain)
            found |= Q(items=thing.pk, given_on__lte=day) if day else Q(items=thing.pk)
    return found


def _parts(chain: Descent) -> set[int]:
    """What lies inside the thing: shells, the core beneath a skin."""
    inside = {chain.item.pk}
    while (
        more := {
            row.source_id for row in chain.rows if row.target_id in inside and row.transfer in JOINS and row.source_id
        }
        - inside
    ):
        inside |= more
    return inside - {chain.item.pk}


def _left_on(thing: Item, chain: Descent) -> date | None:
    """When the piece had what it needed of it: of a mould on the day of the deposit, of a model when it was made up."""
    if thing.kind not in NEGATIVES:
        return chain.made_on
    days = [row.happened_on for row in chain.rows if row.source_id == thing.pk]
    return max(days) if days and all(days) else None


def concessions_of(item: Item, chain: Descent | None = None) -> QuerySet[Concession]:
    """What was conceded for a thing and for what it was made from, the earliest first."""
    rows = Concession.objects.filter(concessions_along(chain or descent_of(item)))
    return rows.select_related("given_by").distinct().order_by("given_on", "number")


def limits_conceded(item: Item, chain: Descent) -> list[Limit]:
    """Those that a person wrote when something was let pass."""
    conceded = [(c, c.limits_of_use.strip()) for c in concessions_of(item, chain)]
    return [Limit(words, f"concession {c.number}", c.reason) for c, words in conceded if words]


def limits_along(item: Item, chain: Descent | None = None) -> list[Limit]:
    """Every limit of use with its source: a lost original, what was conceded, what its walls, core and parts forbid."""
    chain = chain or descent_of(item)
    inside = {item.pk, *_parts(chain)}
    lost = [
        Limit(loss.words, f"loss of {loss.original.number}", loss.why, True) for loss in losses_among(chain.forebears)
    ]
    others = [limit for source in extensions.limit_sources for limit in source(inside)]
    return [*lost, *limits_conceded(item, chain), *others]


def limits_of(item: Item, chain: Descent | None = None) -> list[str]:
    """The limits of use, each sentence once."""
    return list(dict.fromkeys(limit.sentence for limit in limits_along(item, chain)))


def limited_among(numbers: Collection[str]) -> set[str]:
    """Those of many things for which a page must say how they may be used; one query."""
    if not numbers:
        return set()
    conceded = Concession.objects.exclude(limits_of_use="").filter(
        Q(items=OuterRef("pk")) | Q(items__descendants__target=OuterRef("pk"))
    )
    signs = reduce(or_, extensions.limit_signs, Q(Exists(conceded)) | Q(pk__in=after_lost()))
    return set(Item.objects.filter(signs, number__in=numbers).values_list("number", flat=True))
