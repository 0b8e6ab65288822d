"""Copies of the invented museum as facts: what their labels are checked against and composed from."""

from dataclasses import replace

from records.wording import (
    CopyFacts,
)

MEDAL = CopyFacts(
    "R.2026.1",
    "2026",
    subject="a cast bronze medal of Maud Ferrigan by Corvin Aldersey the Younger",
    original_date="1624",
    original_number="OVM.1931.0044",
    original_place="in store",
    materials="copper, tin-alloy filling, patinated",
    mark_text="OVM 2026 COPY",
)
COIN = CopyFacts(
    "R.2026.2",
    "2026",
    skin="silver",
    subject="a silver ten-groat piece of Sallowness",
    original_date="1571",
    original_owner="Thornwick Almshouse Trust",
    materials="silvered copper",
    mark_text="COPY",
)
LIGHTSHIP = CopyFacts(
    "R.2026.3",
    "2026",
    generation=2,
    at_least=True,
    subject="a medal of the launch of the Sallowness Lightship",
    original_date="1702",
    original_lost="has not been seen since 1811",
    model="an electrotype of 1889",
    materials="copper, tin-alloy filling, patinated",
    mark_text="COPY OF COPY 2026",
)
TOUCH = replace(MEDAL, number="R.2026.4", may_be_touched=True, mass_g=44.3, original_mass_g=71.36)
MASK = CopyFacts(
    "R.2026.5",
    "2026",
    technique="core",
    subject="the plaster life mask of Bram Oostervane",
    original_date="about 1868",
    materials="copper skin on a plaster cast",
)
HISTORIC = CopyFacts(
    "R.1889.7",
    "before 1889",
    historic=True,
    at_least=True,
    subject="a medal not now traced",
    original_date="1702",
)
PIECES = [MEDAL, COIN, LIGHTSHIP, TOUCH, MASK, HISTORIC]
