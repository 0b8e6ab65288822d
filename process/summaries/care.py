"""What the composition of a piece asks of whoever stores and handles it, by the museum's own table."""

from collections.abc import Iterable

from process.models import CareRule, FinishStep, MakingUp
from process.summaries.copy_skin import skin_of
from records.extensions import Care
from records.models import Item
from records.reports.composition import has_lead
from records.units import show

Trait = CareRule.Trait
LEAD = {MakingUp.Lead.YES: Trait.LEAD, MakingUp.Lead.UNKNOWN: Trait.LEAD_UNKNOWN}
SKINS = {"silver": Trait.SILVER, "gold": Trait.GOLD}
RESINS, COATS = ("epoxy", "resin", "polyester"), ("wax", "lacquer")


def traits_of(making: MakingUp, finishes: list[FinishStep], acid: bool = False) -> set[str]:
    """What is inside or on a copy made here; `acid`: its core came to rest above what the metal explains."""
    inside = f"{making.fill or ''} {making.fill_words}".lower()
    labels = " ".join(step.finish.label.lower() for step in finishes)
    found = {
        LEAD.get(making.lead_inside), SKINS.get(skin_of(finishes)),
        Trait.ACID if acid else None,
        Trait.CORE if making.core_id else None,
        Trait.RESIN if any(word in inside for word in RESINS) else None,
        Trait.COAT if any(word in labels for word in COATS) else None,
        Trait.UNIFACE if making.technique == MakingUp.Technique.UNIFACE else None,
    }  # fmt: skip
    return {str(trait) for trait in found if trait}


def traits_named(item: Item) -> set[str]:
    """What the materials of a piece say that was not made here."""
    words = item.materials.lower()
    named = {Trait.SILVER: ("silver-plated", "silvered"), Trait.GOLD: ("gilt", "gold-plated")}
    found = {str(trait) for trait, signs in named.items() if any(sign in words for sign in signs)}
    return found | ({str(Trait.LEAD)} if has_lead(item) else set())


def cares_for(traits: Iterable[str]) -> list[Care]:
    """The rows of the table that apply, in its order."""
    rows = CareRule.objects.filter(trait__in=list(traits))
    return [Care(row.sentence + _humidity(row), row.tag_words, row.survey_months_count, str(row)) for row in rows]


def care_of(making: MakingUp, finishes: list[FinishStep], acid: bool = False) -> list[str]:
    """Short sentences, the gravest first."""
    return [care.sentence for care in cares_for(traits_of(making, finishes, acid))]


def _humidity(row: CareRule) -> str:
    low, high = (
        show(value, "_pct") if value is not None else "" for value in (row.humidity_from_pct, row.humidity_to_pct)
    )
    if not low and not high:
        return ""
    between = f"{low} to {high}" if low and high else f"at least {low}" if low else f"at most {high}"
    return f" Relative humidity {between}."
