"""What is known about a mark and the piece that carries it; None and "" mean “not recorded”."""

from dataclasses import dataclass
from fractions import Fraction
from math import isfinite

FACES = {
    "obverse": "obverse",
    "reverse": "reverse",
    "front": "front",
    "back": "back",
    "rim": "rim",
    "inside": "inside",
    "underside": "underside",
    "edge": "edge",
}
# method -> (words, permanent)
METHODS = {
    "mould_borne": ("letters let into the mould, carried by the deposit", True),
    "punch": ("punched", True),
    "engraved": ("engraved", True),
    "laser": ("laser-cut", True),
    "plate": ("on a soldered plate", True),
    "ink": ("stamped in ink (temporary)", False),
}
TECHNIQUES = {"incuse": "incuse", "raised": "raised", "flat": "flat"}


def _refuse_impossible(**figures: float | None) -> None:
    for name, value in figures.items():
        if value is not None and not (isfinite(value) and value > 0):
            raise ValueError(f"{name} is {value}: a size in millimetres is more than nothing. Measure it again.")


@dataclass(frozen=True)
class MarkFacts:
    """One mark: its text as it reads, where it stands, how it was made, its measured size."""

    text: str = ""
    face: str = ""
    position: str = ""
    method: str = ""
    technique: str = ""
    height_mm: float | None = None
    width_mm: float | None = None
    depth_mm: float | None = None
    sans_serif: bool | None = None
    legible: bool | None = None
    photographed: bool = False

    def __post_init__(self) -> None:
        _refuse_impossible(height_mm=self.height_mm, width_mm=self.width_mm, depth_mm=self.depth_mm)

    @property
    def permanent(self) -> bool | None:
        return METHODS[self.method][1] if self.method in METHODS else None

    @property
    def on_edge(self) -> bool:
        return "edge" in (self.face, self.position)


@dataclass(frozen=True)
class PieceFacts:
    """The copy: class of object, longest straight line across it, finished thickness with its backing.

    edge_mm           height of the edge, for rules on coins
    conductivity_pct  of the International Annealed Copper Standard (IACS); copper is about 100
    inscription       what is written on the piece, as far as recorded
    original_year     of what is repeated; `is_current`: whether that is money now, anywhere
    hallmarked        whether the original bears hallmarks; `suppressed`: whether all of them are masked or removed
    skin              metal of a coating: "silver", "gold" or ""; `plated_pt`, `largest_pt`: type sizes on its label
    """

    object_class: str = ""
    longest_mm: float | None = None
    thickness_mm: float | None = None
    can_be_incused: bool = True
    edge_mm: float | None = None
    conductivity_pct: float | None = None
    moment_uvs_cm: float | None = None
    hole_mm: float | None = None
    corner_count: int | None = None  # of a polygon; 0 for a round piece
    inscription: str = ""
    original_year: int | None = None
    is_current: bool | None = None
    one_sided: bool = False
    metal: str = ""
    fineness_permille: float | None = None
    mass_g: float | None = None
    skin: str = ""
    coating_um: float | None = None
    plated_pt: float | None = None
    largest_pt: float | None = None
    hallmarked: bool | None = None
    suppressed: bool | None = None
    suppression_photographed: bool = False

    def __post_init__(self) -> None:
        _refuse_impossible(
            longest_mm=self.longest_mm, thickness_mm=self.thickness_mm, edge_mm=self.edge_mm, mass_g=self.mass_g,
            coating_um=self.coating_um, hole_mm=self.hole_mm,
        )  # fmt: skip

    def share_mm(self, of: str, share: Fraction) -> float | None:
        """A proportion of the piece: a sixth of its longest chord, half of its thickness."""
        whole = {"longest": self.longest_mm, "thickness": self.thickness_mm}[of]
        return None if whole is None else whole * share.numerator / share.denominator
