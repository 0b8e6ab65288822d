"""Whether a piece may be weighed in water at all; if not, the reason."""

from process.models import MakingUp, Shell
from records.models import ConditionReport, Item

PLASTER = ("plaster", "gypsum", "wax", "paper", "wood", "paint", "alginate", "clay")
DRY_KINDS = {
    Item.Kind.MOULD: "A mould is not a piece of metal: its density says nothing, and water may spoil it.",
    Item.Kind.CORE: "A core drinks water: never weigh it in water.",
}
CORE = "There is a core under the metal: water that gets in stays in. Never weigh it in water."
ACTIVE = "{number} finds it active or possibly active ({stability}): water would feed what goes on there."


def refusal_of(item: Item) -> str:
    """Empty where nothing on record forbids it; what nobody recorded is asked in the form."""
    if item.kind in DRY_KINDS:
        return DRY_KINDS[item.kind]
    making = MakingUp.objects.filter(pk=item.pk).select_related("fill").first()
    if making and (making.core_id or making.technique == MakingUp.Technique.CORE):
        return CORE
    if Shell.objects.filter(pk=item.pk, cathode__core__isnull=False).exists():
        return CORE
    inside = str(making.fill or "").lower() if making else ""
    if word := next((each for each in PLASTER if each in inside), ""):
        return f"It is filled with {word}, which drinks: water that gets in stays in."
    words = item.materials.lower()
    if word := next((each for each in PLASTER if each in words), ""):
        return f"Its materials name {word}: water harms it, and what it drinks would falsify the figure."
    return _active(item)


def _active(item: Item) -> str:
    report = ConditionReport.objects.filter(item=item).order_by("-examined_on", "-number").first()
    if report is None or "active" not in report.stability:
        return ""
    return ACTIVE.format(number=report.number, stability=report.get_stability_display())
