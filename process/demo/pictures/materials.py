"""What the pieces are made of, as light sees it.

Colours are linear, judged by eye; bright metals are dark but for their sheen.

Pure.
"""

from process.demo.pictures.light import Material

OLD_BRONZE = Material(
    recess=(0.010, 0.006, 0.004), body=(0.060, 0.031, 0.017), worn=(0.36, 0.215, 0.105),
    wear=0.9, sheen=0.36, polish=20, mottle=0.22, stain=(0.035, 0.036, 0.020),
)  # fmt: skip
COPY_BRONZE = Material(
    recess=(0.014, 0.006, 0.004), body=(0.082, 0.034, 0.016), worn=(0.42, 0.20, 0.10),
    wear=0.6, sheen=0.40, polish=26, mottle=0.10,
)  # fmt: skip
BARE_COPPER = Material(
    recess=(0.16, 0.048, 0.028), body=(0.32, 0.112, 0.068), worn=(0.68, 0.335, 0.24),
    wear=0.5, sheen=0.78, polish=20, mottle=0.06,
)  # fmt: skip
BURNT_COPPER = Material(
    recess=(0.012, 0.006, 0.005), body=(0.062, 0.026, 0.019), worn=(0.17, 0.062, 0.042),
    wear=0.8, sheen=0.05, polish=6, mottle=0.34, stain=(0.018, 0.012, 0.011),
)  # fmt: skip
LACQUERED_COPPER = Material(
    recess=(0.11, 0.034, 0.016), body=(0.20, 0.070, 0.032), worn=(0.62, 0.30, 0.165),
    wear=0.6, sheen=0.95, polish=36, mottle=0.05,
)  # fmt: skip
SILICONE = Material(
    recess=(0.12, 0.165, 0.205), body=(0.275, 0.335, 0.385), worn=(0.36, 0.42, 0.465),
    wear=0.4, sheen=0.13, polish=18, metal=0.0, through=0.30, mottle=0.02,
)  # fmt: skip
GRAPHITED = Material(
    recess=(0.028, 0.027, 0.028), body=(0.085, 0.078, 0.072), worn=(0.20, 0.17, 0.13),
    wear=0.5, sheen=0.20, polish=12, metal=0.3, mottle=0.10,
)  # fmt: skip
OLD_SILVER = Material(
    recess=(0.028, 0.024, 0.020), body=(0.082, 0.077, 0.069), worn=(0.40, 0.39, 0.37),
    wear=0.8, sheen=0.95, polish=24, mottle=0.13, stain=(0.062, 0.050, 0.036),
)  # fmt: skip
PLASTER = Material(
    recess=(0.20, 0.145, 0.085), body=(0.42, 0.355, 0.255), worn=(0.50, 0.445, 0.36),
    wear=0.3, sheen=0.05, polish=7, metal=0.0, through=0.0, mottle=0.06, stain=(0.33, 0.26, 0.17),
)  # fmt: skip
HISTORIC = Material(
    recess=(0.016, 0.010, 0.008), body=(0.092, 0.046, 0.030), worn=(0.44, 0.225, 0.13),
    wear=0.9, sheen=0.40, polish=28, mottle=0.15, stain=(0.05, 0.045, 0.034),
)  # fmt: skip
SILVERED = Material(
    recess=(0.055, 0.053, 0.050), body=(0.125, 0.123, 0.119), worn=(0.58, 0.575, 0.56),
    wear=0.55, sheen=1.0, polish=34, mottle=0.04,
)  # fmt: skip
GOLD = Material(
    recess=(0.20, 0.11, 0.02), body=(0.72, 0.44, 0.10), worn=(0.90, 0.62, 0.20),
    wear=0.4, sheen=0.42, polish=30, mottle=0.06,
)  # fmt: skip
SOLDER = Material(
    recess=(0.07, 0.07, 0.075), body=(0.24, 0.24, 0.25), worn=(0.42, 0.42, 0.43),
    wear=0.4, sheen=0.25, polish=14, mottle=0.12,
)  # fmt: skip
VERDIGRIS = Material(
    recess=(0.05, 0.16, 0.11), body=(0.13, 0.40, 0.29), worn=(0.22, 0.52, 0.40),
    wear=0.2, sheen=0.03, polish=6, metal=0.0, mottle=0.12,
)  # fmt: skip
RAW_PLASTER = Material(
    recess=(0.42, 0.40, 0.37), body=(0.64, 0.615, 0.57), worn=(0.70, 0.68, 0.64),
    wear=0.2, sheen=0.01, polish=4, metal=0.0, mottle=0.05,
)  # fmt: skip
