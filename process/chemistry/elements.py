"""Atomic weights of the elements that the trade meets, in grams per mole."""

ATOMIC_WEIGHT_SOURCE = "IUPAC standard atomic weights 2021, Pure Appl. Chem. 94 (2022) 573, doi:10.1515/pac-2019-0603"

# Conventional values; where IUPAC prints an interval (H, O, S, Cl, Pb) its single abridged value stands here.
ATOMIC_WEIGHTS: dict[str, float] = {
    "H": 1.008, "O": 15.999, "S": 32.06, "Cl": 35.45,
    "Cr": 51.9961, "Fe": 55.845, "Co": 58.933194, "Ni": 58.6934, "Cu": 63.546, "Zn": 65.38,
    "Rh": 102.90549, "Pd": 106.42, "Ag": 107.8682, "Cd": 112.414, "In": 114.818, "Sn": 118.710, "Sb": 121.760,
    "Pt": 195.084, "Au": 196.966570, "Pb": 207.2,
}  # fmt: skip
