"""What the core under a skin forbids, before it is closed and for as long as the copy exists."""

from process.models import Shell
from process.summaries.drying import Drying, drying_of_shell
from records.extensions import Limit
from records.units import show

DRY = "Never wet, steam or heat it"
OPEN = f"A core that is not closed: {DRY[:1].lower()}{DRY[1:]}; keep drying."
SOUND = f"A core inside. {DRY}."
STAYED = f"{{what}} may have stayed in the core{{much}}. {DRY}; watch for green spots and acid."
VENT = " Left open: {vent}; nothing wet near it."


def limit_of_core(shell: Shell) -> Limit:
    drying = drying_of_shell(shell)
    number = shell.item.number
    if drying is None or drying.is_open:
        return Limit(OPEN, f"core in {number}", drying.sentence if drying else "")
    what = "Salt" if drying.code == "residue" else "Solution"
    words = SOUND if drying.code == "constant" else STAYED.format(what=what, much=_much(drying))
    return Limit(words + _vent(drying), f"core in {number}", drying.sentence)


def _much(drying: Drying) -> str:
    left = drying.residue
    return f", about {show(left.value, '_g', digits=0)}" if left and left.value else ""


def _vent(drying: Drying) -> str:
    """Of the closing that holds, what was left open on purpose."""
    vents = [each.vent.strip().rstrip(".") for each in drying.closings if each.closes and each.vent.strip()]
    return VENT.format(vent=vents[-1]) if vents and vents[-1].lower() not in {"none", "no", "-", "–"} else ""
