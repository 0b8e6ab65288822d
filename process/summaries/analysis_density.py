"""What a hydrometer says of the bath beside what its composition makes expect: a cross-check, not an analysis."""

from pint import Quantity

from process.chemistry.hydrometer import density_of_gravity, expected_density, specific_gravity
from process.chemistry.water import water_density
from process.models import BathAnalysis
from process.summaries.evidence import quantity
from process.summaries.figures import figure
from records.figures import Figure
from records.units import ureg

# The temperature at which each scale was defined; of the third nobody says, so 15 °C is taken.
SCALE_DEGC = {"145": 15.56, "144.3": 15.0, "146": 15.0}
CHECK = "Half a per cent is the worth of this figure; it cannot tell salt from acid."
FAR_PCT = 1.0


def density_of(analysis: BathAnalysis, salt: Quantity | None, acid: Quantity | None) -> tuple[Figure, ...]:
    """The density read, and the one that belongs to the titrations where both are there."""
    read = _read(analysis)
    if read is None:
        return ()
    if salt is None or acid is None:
        return (read,)
    expected = figure("density expected", "_g_cm3", expected_density, salt=salt, acid=acid)
    note = CHECK
    if read.value and expected.value and abs(read.value / expected.value - 1) * 100 > FAR_PCT:
        note = "More than 1 % from the density read: titrate again, or look for foreign salts. " + CHECK
    return read, Figure(expected.label, expected.value, "_g_cm3", expected.kind, None, note, None, expected.working)


def _read(analysis: BathAnalysis) -> Figure | None:
    if analysis.density_g_cm3 is not None:
        kind, spread = analysis.evidence("density_g_cm3"), analysis.plus_minus("density_g_cm3")
        return Figure("density read", analysis.density_g_cm3, "_g_cm3", kind, spread)
    if analysis.hydrometer_be is None or not analysis.hydrometer_modulus:
        return None
    modulus = analysis.hydrometer_modulus
    water = water_density(ureg.Quantity(SCALE_DEGC[modulus], "degC"))
    gravity = specific_gravity(quantity(analysis, "hydrometer_be"), float(modulus))
    found = figure("density by hydrometer", "_g_cm3", density_of_gravity, gravity=gravity, water=water)
    note = f"{analysis.hydrometer_be:g} °Bé, modulus {analysis.get_hydrometer_modulus_display()}"
    return Figure(found.label, found.value, "_g_cm3", found.kind, found.plus_minus, note, None, found.working)
