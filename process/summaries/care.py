"""What the composition of a copy asks of whoever stores and handles it (DOMAIN: store and pack)."""

from process.models import FinishStep, MakingUp
from process.summaries.copy_skin import skin_of

LEAD = MakingUp.Lead


def care_of(making_up: MakingUp, finishes: list[FinishStep]) -> list[str]:
    """Short sentences, the gravest first."""
    said = [
        *_lead(making_up),
        *(
            ["A core inside: never wet, steam or heat it, and keep it neither damp nor bone dry."]
            if making_up.core_id
            else []
        ),
        *_skin(skin_of(finishes)),
        *_coat(finishes),
        "Wear gloves; the rim of a shell cuts." if making_up.technique == MakingUp.Technique.UNIFACE else "",
    ]
    return [sentence for sentence in said if sentence]


def _lead(making_up: MakingUp) -> list[str]:
    if making_up.lead_inside == LEAD.YES:
        return [
            "Contains lead: no acid woods such as oak, no fresh paint or acid card near it. Local rules come first."
        ]
    if making_up.lead_inside == LEAD.UNKNOWN:
        return ["Whether it contains lead is not known: store it as if it did, away from wood acids."]
    return []


def _skin(name: str) -> list[str]:
    if name == "silver":
        return ["A thin skin of silver: no polishing, a sulphur absorber in the box."]
    return ["A thin skin of gold: no polishing, no rubbing."] if name == "gold" else []


def _coat(finishes: list[FinishStep]) -> list[str]:
    labels = " ".join(step.finish.label.lower() for step in finishes)
    return (
        ["Waxed or lacquered: no solvents, dust with a soft brush."] if "wax" in labels or "lacquer" in labels else []
    )
