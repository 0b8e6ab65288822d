"""What the pieces are made of, as light sees it. Colours are linear, judged by eye. Pure."""

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
    recess=(0.30, 0.105, 0.062), body=(0.66, 0.285, 0.185), worn=(0.86, 0.46, 0.335),
    wear=0.5, sheen=0.30, polish=16, mottle=0.05,
)  # fmt: skip
BURNT_COPPER = Material(
    recess=(0.012, 0.006, 0.005), body=(0.062, 0.026, 0.019), worn=(0.17, 0.062, 0.042),
    wear=0.8, sheen=0.05, polish=6, mottle=0.34, stain=(0.018, 0.012, 0.011),
)  # fmt: skip
LACQUERED_COPPER = Material(
    recess=(0.20, 0.070, 0.034), body=(0.56, 0.235, 0.125), worn=(0.84, 0.43, 0.27),
    wear=0.6, sheen=0.46, polish=44, mottle=0.04,
)  # fmt: skip
SILICONE = Material(
    recess=(0.30, 0.37, 0.43), body=(0.50, 0.575, 0.63), worn=(0.60, 0.67, 0.72),
    wear=0.3, sheen=0.10, polish=14, metal=0.0, through=0.42, mottle=0.015,
)  # fmt: skip
GRAPHITED = Material(
    recess=(0.028, 0.027, 0.028), body=(0.085, 0.078, 0.072), worn=(0.20, 0.17, 0.13),
    wear=0.5, sheen=0.20, polish=12, metal=0.3, mottle=0.10,
)  # fmt: skip
OLD_SILVER = Material(
    recess=(0.055, 0.048, 0.040), body=(0.40, 0.385, 0.36), worn=(0.70, 0.69, 0.665),
    wear=0.8, sheen=0.36, polish=26, mottle=0.10, stain=(0.13, 0.105, 0.075),
)  # fmt: skip
PLASTER = Material(
    recess=(0.44, 0.385, 0.31), body=(0.66, 0.605, 0.515), worn=(0.74, 0.70, 0.62),
    wear=0.3, sheen=0.035, polish=5, metal=0.0, through=0.05, mottle=0.045, stain=(0.50, 0.40, 0.27),
)  # fmt: skip
