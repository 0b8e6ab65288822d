"""What a new copy is called, by its shells: nobody types what the register knows."""

import re

from process.models import MakingUp, Shell
from process.summaries.planning import metal_of
from records.models import Item, Term


def copied_by(shells: list[Shell]) -> list[Item]:
    """The pieces that the shells repeat, each once."""
    models = {}
    for shell in shells:
        mould = shell.cathode.mould or (shell.cathode.core.pull.mould if shell.cathode.core else None)
        if mould:
            models[mould.model_id] = mould.model
    return list(models.values())


def offered_identity(shells: list[Shell], making_up: MakingUp) -> dict[str, str]:
    model = next(iter(copied_by(shells)), None)
    title = model.title if model else ""
    if title.lower().startswith(("electrotype", "core electrotype")):
        named = f"Electrotype copy of {title[0].lower()}{title[1:]}"
    else:
        named = f"Electrotype copy: {title}" if title else "Electrotype copy"
    return {
        "title": named[:300],
        "object_type": model.object_type if model else "",
        "materials": materials_of(shells, making_up),
        "date_words": str(making_up.made_up_on.year),
    }


def materials_of(shells: list[Shell], making_up: MakingUp) -> str:
    """“Electrodeposited copper, filled with tin-rich alloy, no lead”."""
    metals = {metal.name.split("(")[0] for shell in shells if (metal := metal_of(shell.cathode.run))}
    metal = f"electrodeposited {' and '.join(sorted(metals))}" if metals else "electrodeposited metal"
    if making_up.technique == MakingUp.Technique.CORE:
        return f"{metal} on a core"
    fill = making_up.fill.label if making_up.fill else ""
    return f"{metal}, filled with {fill}" if fill and fill != "none" else metal


def says_lead(term: Term | None, words: str) -> str:
    """The words of a filling that speak of lead without denying it; empty where there are none."""
    said = [words, *([term.label, term.caution] if term else [])]
    return next((text for text in said if re.search(r"\blead\b", re.sub(_DENIED, "", text.lower()))), "")


_DENIED = r"\bno (?:added )?lead\b|\blead[- ]free\b|\bwithout lead\b"
