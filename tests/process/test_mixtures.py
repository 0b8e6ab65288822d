"""What a density may mean: mixtures and fillings that have it too, through the page; and a size that is only quoted."""

import pytest
from django.urls import reverse

from process.models import HydrostaticWeighing
from process.summaries.copies import summarise
from process.summaries.drift import drift_chart, drift_of
from process.summaries.mixtures import Part, alloys_of, filled_of, mixture_of
from records.models import DescentLink, Measurement
from records.units import ureg
from tests.everything import make_shell
from tests.factories import NINE, make_cathode, make_copy, make_item, make_mould, make_run, make_user

pytestmark = pytest.mark.django_db
NUMBERS = {"one_g_cm3_unit": "g/cm³", "other_g_cm3_unit": "g/cm³"}


def per_cm3(number: float):
    return ureg.Quantity(number, "g/cm**3")


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator"))
    return client


@pytest.fixture
def coin():
    """The coin of OpenStax College Physics 2e, section 11.7: 8.630 g in air, 7.800 g in water."""
    item = make_item("L.2026.003", title="Ten-groat piece", materials="silver, struck")
    HydrostaticWeighing.objects.create(
        item=item, weighed_at=NINE, in_air_g=8.630, in_water_g=7.800, water_temperature_degc=20,
        as_typed={"in_air_g": {"plus_minus": 0.001}, "in_water_g": {"plus_minus": 0.001}},
    )  # fmt: skip
    return item


def lightship(density: float = 8.36):
    """SCENARIO 2: copper on tin-lead solder with hollow places, 8.36 g/cm³ by a note of 1972."""
    item = make_item("R.1889.7", kind="historic_copy", materials="copper, tin-lead solder")
    typed = {"density_g_cm3": {"kind": "quoted", "method": "note of 1972"}}
    Measurement.objects.create(item=item, what="density", density_g_cm3=density, as_typed=typed)
    return item


@pytest.mark.parametrize(("density", "percent"), [(11.0, 10.2), (12.1, 29.1), (15.0, 65.9)])
def test_gold_in_silver(density, percent):
    """Printed as 10 % and 30 % for 11.0 and 12.1 g/cm³ in a table of assaying by weight; 65.9 % by the rule itself."""
    found = mixture_of(per_cm3(density), Part("silver", per_cm3(10.49)), Part("gold", per_cm3(19.3)))
    assert (found.heavier.name, round(found.share.value, 1)) == ("gold", percent)


def test_copper_on_old_backing_metal_has_the_density_of_silver():
    """93 lead, 4 antimony, 3 tin of 10.86 g/cm³: a copy of 10.53, 0.4 % from fine silver; by the rule of mixtures."""
    found = mixture_of(per_cm3(10.49), Part("backing metal", per_cm3(10.86)), Part("copper", per_cm3(8.92)))
    assert 80 < found.share.value < 90 and found.sentence == ""


def test_the_coin_is_shown_with_its_mixtures_and_every_warning(conservator, coin):
    page = conservator.get(reverse("mixture", args=[coin.number])).content.decode()
    assert "never proves an original" in page and "Caley" in page and "hollow place looks like" in page
    assert "Silver + copper" in page and "No mixture of them: it is lighter than silver" in page
    assert reverse("mixture", args=[coin.number]) in conservator.get(coin.get_absolute_url()).content.decode()


def test_a_share_carries_the_balance_s_margin(conservator, coin):
    page = conservator.get(reverse("mixture", args=[coin.number]))
    silver = next(row for row in page.context["alloys"] if row.name == "silver + copper")
    assert silver.share.plus_minus > 0 and silver.share.kind == "calculated"


def test_lighter_than_each_of_its_metals_means_hollow_places(conservator):
    """1 − 8.36/8.52 = 1.9 % of its volume: SCENARIO 2 calls it an oracle."""
    page = conservator.get(reverse("mixture", args=[lightship().number])).content.decode()
    assert "quoted" in page and "note of 1972" in page and "Hollow places of at least 1.9" in page


def test_denser_than_both_is_no_mixture():
    found = next(row for row in alloys_of(per_cm3(12.0)) if row.name == "copper + tin")
    assert found.share is None and "denser than copper" in found.sentence
    assert all("denser than" in row.sentence for row in filled_of(per_cm3(12.0)))


def test_two_other_parts_are_reckoned_with_their_working(conservator, coin):
    asked = {"one_g_cm3": "10,49", "other_g_cm3": "8,92", **NUMBERS}
    page = conservator.get(reverse("mixture", args=[coin.number]), asked).content.decode()
    assert "The part of 10.49" in page and "Share of the heavier of two parts" in page


@pytest.mark.parametrize(("one", "other", "said"), [
    ("8.92", "8.92", "cannot be told apart"), ("8.92", "8920", "possible here"), ("-1", "8", "Less than nothing"),
    ("", "8", "Density of one part"), ("9**9", "8", "9**9"),
])  # fmt: skip
def test_parts_that_cannot_be_are_sent_back(conservator, coin, one, other, said):
    asked = {"one_g_cm3": one, "other_g_cm3": other, **NUMBERS}
    answer = conservator.get(reverse("mixture", args=[coin.number]), asked)
    assert answer.status_code == 422 and said in answer.content.decode()


def test_a_part_without_weight_is_told_so(conservator, coin):
    asked = {"one_g_cm3": "0", "other_g_cm3": "8.92", **NUMBERS}
    page = conservator.get(reverse("mixture", args=[coin.number]), asked).content.decode()
    assert "Not computed" in page and "must be more than zero" in page


def test_without_a_density_it_says_what_to_do(conservator):
    page = conservator.get(reverse("mixture", args=[make_item("OVM.2").number])).content.decode()
    assert "No density is on record" in page


def quoted_line():
    """SCENARIO 8: 45.0 mm in the catalogue of 1811, R.1889.7 of 44.82 mm, its copy R.2026.3 of 44.78 mm."""
    model = lightship()
    Measurement.objects.create(item=model, what="diameter", length_mm=44.82)
    DescentLink.objects.create(
        target=model, transfer="unknown", source_words="the medal of 1702", source_across_mm=45.0,
        source_quoted_from="catalogue of 1811",
    )  # fmt: skip
    cathode = make_cathode(make_run(), mould=make_mould(model, shrinkage_pct=-0.08))
    DescentLink.objects.create(source=model, target=cathode.mould.item, transfer="moulding", side="obverse")
    copy = make_copy("R.2026.3", shells=[make_shell(cathode)], technique="uniface", afterwards=True)
    Measurement.objects.create(item=copy, what="diameter", length_mm=44.78)
    return model, copy


def test_a_quoted_size_is_compared_and_never_taken_as_measured(conservator):
    """SCENARIO 8: 44.82 mm is −0.40 % and 44.78 mm −0.49 % of 45.0; moulds of −0.08 % alone: −0.08 and −0.16 %."""
    _, copy = quoted_line()

    first, middle, last = drift_of(copy, summarise(copy.making_up, [], None).size)

    assert (first.kind, first.measured_pct, first.note) == ("quoted", None, "catalogue of 1811")
    assert [round(step.quoted_pct, 2) for step in (middle, last)] == [-0.40, -0.49]
    assert [round(step.by_moulds_pct, 2) for step in (middle, last)] == [-0.08, -0.16]
    assert (middle.measured_pct, round(last.measured_pct, 2)) == (0.0, -0.09)
    assert drift_chart([first, middle, last]).steps == ("R.1889.7", "R.2026.3")
    page = conservator.get(copy.get_absolute_url()).content.decode()
    assert "Of the quoted" in page and "was not measured here" in page


def test_an_own_size_that_was_quoted_is_not_called_measured():
    _, copy = quoted_line()
    copy.measurements.all().delete()
    typed = {"length_mm": {"kind": "quoted"}}
    Measurement.objects.create(item=copy, what="diameter", length_mm=44.9, as_typed=typed)

    sizes = summarise(copy.making_up, [], None).size

    assert [(each.label, each.kind) for each in sizes if "predicted" not in each.label] == [
        ("Diameter quoted", "quoted")
    ]


def test_the_quoted_size_is_entered_with_its_source(conservator):
    model = make_item("R.1889.7", kind="historic_copy")
    where = reverse("descent_add", args=[model.number])
    unknown = {"transfer": "unknown", "source_words": "the medal of 1702", "source_across_mm_unit": "mm"}
    refused = conservator.post(where, unknown | {"source_across_mm": "45.0"})
    assert refused.status_code == 422 and "without its source" in refused.content.decode()
    huge = conservator.post(where, unknown | {"source_across_mm": "450000", "source_quoted_from": "a catalogue"})
    assert huge.status_code == 422 and "possible here" in huge.content.decode()
    nought = conservator.post(where, unknown | {"source_across_mm": "0", "source_quoted_from": "a catalogue"})
    assert "more than nought" in nought.content.decode()

    conservator.post(where, unknown | {"source_across_mm": "45.0", "source_quoted_from": "catalogue of 1811"})

    row = DescentLink.objects.get()
    assert (row.source_across_mm, row.evidence("source_across_mm")) == (45.0, "quoted")


def test_the_size_of_a_model_with_a_number_belongs_to_it(conservator):
    model, copy = make_item("OVM.1"), make_item("R.1889.7", kind="historic_copy")
    answer = conservator.post(reverse("descent_add", args=[copy.number]), {
        "source": model.number, "transfer": "casting", "source_across_mm": "45", "source_across_mm_unit": "mm",
        "source_quoted_from": "catalogue",
    })  # fmt: skip
    assert answer.status_code == 422 and "among its own measurements" in answer.content.decode()
