"""By what two pieces of one line are told apart, and what each feature can and cannot prove.

Common practice of the trade, in our own words; the caution about density follows from figures of alloys
(copper shells on old backing metal weigh within 0.4 % of fine silver).
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Feature:
    key: str
    title: str
    proves: str


FEATURES = {
    feature.key: feature
    for feature in (
        Feature("mark", "Marks", "A permanent mark that says copy proves a copy. That none is there proves nothing: "
                "marks can be filed away, filled or covered."),
        Feature("mass", "Mass", "Tells the two apart where the balance reads finer than they differ. A copy can be "
                "filled until it weighs as its model does: the same mass proves nothing."),
        Feature("density", "Density", "A density that differs supports a copy, or another alloy. One that agrees does "
                "not prove an original: copper on old backing metal comes within half a per cent of silver."),
        Feature("diameter", "Diameter", "A copy is smaller by what its moulds shrank, often less than a tenth of a per "
                "cent a step: measure both at the same points, equally warm."),
        Feature("height", "Height", "As the diameter: at the same points, with one instrument."),
        Feature("breadth", "Breadth", "As the diameter; a skin on a core makes a piece larger by twice its wall."),
        Feature("depth", "Depth", "As the diameter: at the same points, with one instrument."),
        Feature("thickness", "Thickness", "Joined shells are seldom exactly as thick as their model; the seam lies in "
                "this measure. The same thickness proves nothing."),
        Feature("die_axis", "Die axis", "Two faces joined at another angle than the model’s tell the copy. With care "
                "they are joined as the model has them: the same angle proves nothing."),
        Feature("composition", "Composition", "Analysis of the surface sees only the skin: a silvered copy reads as "
                "silver. A filled wear spot, a seam or a cut shows what lies beneath."),
        Feature("edge", "Edge and seam", "A seam round the edge speaks of two shells joined. A one-sided, turned or "
                "covered edge shows none."),
        Feature("sound", "Sound", "A dull ring speaks of a filled or joined piece; a cracked original is dull too. Not "
                "for fragile pieces."),
    )
}  # fmt: skip
