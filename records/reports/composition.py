"""What the materials of a thing ask of whoever handles it, beside what was found on it."""

import re

from records.models import Item

# DOMAIN of the trade: lead corrodes in the vapours of oak, fresh paint and acid card, and its dust is poisonous.
LEAD = (
    "Lead inside. Keep it away from oak and other acid woods, fresh paint and acid card; gloves when white powder "
    "shows. Local rules and licensed practice decide how it is worked and shipped."
)
_DENIED = re.compile(r"\b(?:no (?:added )?lead|lead[- ]free|without lead|free of lead)\b", re.IGNORECASE)
_LEAD = re.compile(r"\blead\b|\bpewter\b", re.IGNORECASE)


def has_lead(item: Item) -> bool:
    """Lead that the materials name and do not deny; leaded bronze holds it fast and is not meant."""
    return bool(_LEAD.search(_DENIED.sub("", item.materials)))


def cautions_of(item: Item) -> list[str]:
    return [LEAD] if has_lead(item) else []
