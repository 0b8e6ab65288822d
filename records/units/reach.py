"""How far a number of each kind reaches at all: outermost bounds, so wide that no bench or balance passes them.

They stop a slipped decimal, a wrong unit and harm. What is unusual or impossible at a step of the work is narrower
and stands in the museum's own table of usual values.
"""

from typing import NamedTuple

from records.units.registry import suffix_of


class Reach(NamedTuple):
    """The least and the largest that is taken, in the column's own unit."""

    low: float
    high: float

    @property
    def is_size(self) -> bool:
        """Counted from nothing upwards: below it is a slip of the sign."""
        return self.low == 0


# Common sense, no source, but for: densest metal 22.6 g/cm³ (CRC Handbook), air at sea level and on a mountain.
BY_SUFFIX: dict[str, tuple[float, float]] = {
    "_a": (0, 1e4), "_ma": (0, 1e7), "_v": (0, 1e3), "_ah": (0, 1e8), "_ah_l": (0, 1e5), "_kwh": (0, 1e6),
    "_a_dm2": (0, 1e3), "_a_l": (0, 1e3), "_ohm": (0, 1e9), "_ms_cm": (0, 900),
    "_mm": (0, 1e5), "_um": (0, 1e5), "_um_h": (0, 1e4), "_dm2": (0, 1e4), "_l": (0, 1e6), "_ml": (0, 1e6),
    "_cm3": (0, 1e9), "_g": (0, 1e8), "_g_cm3": (0, 23), "_g_l": (0, 2e3), "_mg_l": (0, 1e6), "_mol_l": (0, 50),
    "_degc": (-100, 1600), "_h": (0, 1e5), "_s": (0, 3e8), "_deg": (0, 360), "_pct": (0, 100), "_ratio": (0, 1e3),
    "_permille": (0, 1e3), "_uvs_cm": (0, 1e4), "_lx": (0, 2e5), "_ph": (-2, 16), "_be": (0, 80), "_hpa": (500, 1100),
    "_money": (0, 1e9), "_money_h": (0, 1e5), "_money_kg": (0, 1e7), "_money_kwh": (0, 1e4),
}  # fmt: skip

_BY_NAME: dict[str, tuple[float, float]] = {
    # lengths and shares that may fall below nothing, or above the whole
    "allowance_mm": (-100, 100), "linear_change_pct": (-20, 20), "shrinkage_pct": (-50, 50),
    "water_plaster_pct": (0, 1e3), "leak_gain_g": (-1e5, 1e5), "current_efficiency_pct": (0, 1e3),
    # what is held in a hand, a burette or a cell
    "gross_mass_g": (0, 1e7), "trimmed_mass_g": (0, 1e7), "tare_g": (0, 1e7), "wires_g": (0, 1e6),
    "near_gain_g": (0, 1e5), "far_gain_g": (0, 1e5), "near_mm": (0, 1e4), "far_mm": (0, 1e4),
    "letter_height_mm": (0, 1e3), "depth_mm": (0, 1e3), "copy_word_width_mm": (0, 1e4), "wall_mm": (0, 1e3),
    "planned_thickness_mm": (0, 1e3), "planned_minimum_mm": (0, 1e3), "thickness_mm": (0, 1e3),
    "thickness_mean_mm": (0, 1e3), "thickness_min_mm": (0, 1e3), "temperature_max_degc": (-50, 400),
    "water_temperature_degc": (0, 40), "air_temperature_degc": (-50, 60),
    "coating_um": (0, 1e3), "hole_mm": (0, 1e3),
    # counts
    "corner_count": (0, 50),
    "quantity_count": (1, 1e4), "pieces_count": (1, 1e4), "pulls_allowed_count": (0, 1e4),
    "analysis_valid_days_count": (0, 3650), "probability_count": (1, 5), "consequence_count": (1, 5),
    "probability_after_count": (1, 5), "consequence_after_count": (1, 5), "porosity_count": (0, 3),
    "undercut_count": (0, 3), "points_count": (1, 1000), "bends_count": (0, 1000), "size_low_pct": (-20, 20),
    "size_high_pct": (-20, 20), "weakness_count": (0, 3), "repairs_count": (0, 3),
    "pointing_px_count": (1, 1000),
    # numbers without a unit
    "relief_factor": (0, 20), "distribution_factor": (0, 1),
}  # fmt: skip

COUNT = Reach(0, 10_000)  # every column of a count holds at least 32,767
BARE = Reach(0, 1000)


def reach_of(name: str) -> Reach:
    """The outermost bounds of a number by its name, or by the suffix alone.

    >>> reach_of("mass_g").high, reach_of("linear_change_pct").low, reach_of("pinholes_count")
    (100000000.0, -20, Reach(low=0, high=10000))
    """
    named = _BY_NAME.get(name) or BY_SUFFIX.get(suffix_of(name) or name)
    if named:
        return Reach(*named)
    return COUNT if name.endswith("_count") else BARE
