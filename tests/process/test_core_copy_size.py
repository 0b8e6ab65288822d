"""A copy on a core is larger than its model by the metal on both sides of it."""

import pytest

from process.models import Core, Shell
from process.summaries.copies import summarise
from records.models import Measurement
from tests.factories import make_copy
from tests.process.scenario_runs import mask_run

pytestmark = pytest.mark.django_db


def test_the_breadth_of_the_mask_counts_the_skin_on_both_sides():
    """168.0 × (1 − 0.0010) × (1 + 0.0018) + 2 × 0.25 = 168.63 mm: the demo scenario, 7.6 and 11."""
    mask_run(mass_g=1507.2)
    core = Core.objects.get()
    core.linear_change_pct, core.pull.mould.shrinkage_pct = 0.18, -0.10
    core.save()
    core.pull.mould.save()
    Measurement.objects.create(item=core.pull.mould.model, what="breadth", length_mm=168.0)
    copy = make_copy("R.2026.5", shells=[Shell.objects.get()], technique="core", afterwards=True)

    breadth = next(each for each in summarise(copy.making_up, [], None).size if each.label == "Breadth predicted")

    # The balance stood at 100.5 %: 194.8 g over 8.60 dm² make 0.254 mm instead of 0.25.
    assert breadth.value == pytest.approx(168.634, abs=0.01)
