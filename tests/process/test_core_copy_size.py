"""A copy on a core is larger than its model by the metal on both sides of it."""

import pytest

from process.chemistry.judgement import Band
from process.models import Core, Run, Shell, Weighing
from process.summaries.copies import summarise
from process.summaries.runs import summarise as summarise_run
from records.models import Measurement
from tests.factories import make_copy
from tests.process.scenario_runs import at, mask_run

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

    # The balance stood at 100.5 %: 194.8 g over 8.60 dm² would make 0.254 mm; the core drank the rest.
    assert breadth.value == pytest.approx(168.634, abs=5e-4)


def test_the_wall_of_a_skin_on_a_core_that_drank_follows_from_the_charge():
    """SCENARIO 7.6: 191.9 g of 163.5 Ah at 99 % over 860 cm² are 0.250 mm; the 194.8 g weighed would say 0.254."""
    run = mask_run(mass_g=1507.2)

    (mask,) = summarise_run(Run.objects.with_sheet().get(pk=run.pk)).cathodes

    assert mask.thickness.value == pytest.approx(0.25014, abs=5e-6)
    assert mask.thickness.kind == "estimated" and "drank" in mask.thickness.note


def test_a_skin_that_weighs_no_more_than_its_charge_allows_is_believed():
    """191.0 g of at most 193.8 g."""
    run = mask_run(mass_g=1503.4)

    (mask,) = summarise_run(Run.objects.with_sheet().get(pk=run.pk)).cathodes

    assert mask.thickness.value == pytest.approx(191.0 / (8.92 * 860) * 10, abs=1e-6)
    assert mask.thickness.kind == "calculated"


def test_a_core_over_its_charge_is_judged_by_the_balance_once_its_mass_is_constant():
    """194.8 g of 193.8 g are 100.5 %: absorbed until two weighings a week apart agree, then doubtful at the most."""
    run = mask_run(mass_g=1507.2)
    shell = Shell.objects.get()

    def band(*weighed):
        for when, grams in weighed:
            Weighing.objects.create(item=shell.item, kind="skin", at=at(when), mass_g=grams)
        return summarise_run(Run.objects.with_sheet().get(pk=run.pk)).result.band

    assert band(("2026-04-12 09:00", 1507.3), ("2026-04-16 09:00", 1507.2)) is Band.ABSORBED
    assert band(("2026-04-23 09:00", 1507.2)) is Band.DOUBTFUL
