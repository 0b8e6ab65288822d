"""What is looked for on a piece of which nobody knows whether it is a copy.

Each is answered seen, not seen or not checked. The signs are common practice among collectors of medals and coins;
each can be missing on a copy made with care.
"""

from dataclasses import dataclass
from typing import Literal

Weight = Literal["says copy", "electrotype", "hint"]
ANSWERS = {"seen": "seen", "absent": "not seen", "unchecked": "not checked"}


@dataclass(frozen=True)
class Sign:
    """`weight`: it says “copy” by itself; it is known of electrotypes; or other causes are as likely."""

    key: str
    words: str
    how: str
    weight: Weight


SIGNS = {
    sign.key: sign
    for sign in (
        Sign("mark", "A mark that says copy, or a copyist’s or museum’s stamp",
             "Edge first, under a lens and raking light; then both fields and the back.", "says copy"),
        Sign("seam", "A seam round the edge", "Turn it under a lens; look for a line, a colour change, a filed edge.",
             "electrotype"),
        Sign("fill", "Another metal at worn or damaged spots", "Grey or white metal beneath copper, silver or gilding.",
             "electrotype"),
        Sign("growth", "A grown, grained back where the inside can be seen",
             "Nodules, a dull grained surface; never open a piece to look.", "electrotype"),
        Sign("mass", "Mass away from that of known originals", "Dry, without case or pins, on a checked balance.",
             "hint"),
        Sign("legend", "Rounded, soft letters and high points", "Set beside a sharp original or its photograph.",
             "hint"),
        Sign("pimples", "Raised pimples as from air bubbles of a mould", "In the fields and inside letters.",
             "hint"),
        Sign("sound", "A dull ring", "Only a sound, sturdy piece: on a fingertip, touched lightly with wood.",
             "hint"),
        Sign("size", "Smaller than known originals, or the two faces not of one size",
             "Calipers with soft jaws, at the same points.",
             "hint"),
        Sign("axis", "Faces joined at another angle than on known originals", "Hold it between two fingers and turn.",
             "hint"),
    )
}  # fmt: skip
