"""A mould measured again: the change against the piece over time, with the warmth of the rubber taken out."""

from datetime import date

import pytest
from django.urls import reverse

from process.models import MouldGauge
from process.summaries.gauges import change_of, gauge_chart, gauging_of
from tests.factories import make_item, make_mould, make_term, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator"))
    return client


@pytest.fixture
def mould():
    rubber = make_term("mould_material", "silicone, addition cure")
    return make_mould(make_item("OVM.1907.0112", title="Life mask"), "M-2026-07", material=rubber, shrinkage_pct=-0.10)


def gauge(mould, day=date(2026, 3, 16), measured=167.83, **more):
    row = {"gauged_on": day, "feature": "breadth", "nominal_mm": 168.0, "measured_mm": measured} | more
    return MouldGauge.objects.create(mould=mould, **row)


def send(client, mould, **changes):
    entry = {
        "gauged_on": "2026-09-07", "feature": "breadth", "nominal_mm": "168.0", "nominal_mm_unit": "mm",
        "measured_mm": "167.73", "measured_mm_unit": "mm", "token": "6a1f6f3e-7d5e-4a67-9a40-1d1f7d1f0010",
    }  # fmt: skip
    return client.post(reverse("gauge_add", args=[mould.item.number]), entry | changes, follow=True)


def test_the_series_of_the_mask_mould(mould):
    """SCENARIO 5 and 13: −0.10 % when accepted, −0.16 % when measured a year later; breadth of the mask 168.0 mm."""
    rows = [gauge(mould), gauge(mould, date(2027, 3, 31), 167.73)]

    gauging = gauging_of(mould, rows)

    assert [round(line.change.value, 2) for line in gauging.lines] == [-0.10, -0.16]
    assert all(line.change.kind == "calculated" for line in gauging.lines)
    assert "decide which of the two rules" in gauging.sentence
    assert gauge_chart(mould, gauging.lines).steps == ("16 Mar 2026", "31 Mar 2027")


def test_a_mould_that_has_not_moved_is_said_to_be_as_accepted(mould):
    assert "within its ± of the" in gauging_of(mould, [gauge(mould)]).sentence


def test_two_features_are_not_drawn_as_one_series(mould):
    lines = gauging_of(mould, [gauge(mould), gauge(mould, feature="height")]).lines

    assert gauge_chart(mould, lines) is None


def test_warm_rubber_is_compared_at_twenty_degrees(mould):
    """275 · 10⁻⁶ /K for silicone rubber (from memory): 2 K are 0.055 %."""
    [line] = gauging_of(mould, [gauge(mould, temperature_degc=22.0)]).lines

    assert line.change.value == pytest.approx(change_of(167.83, 168.0) - 0.055, abs=0.001)
    assert "at 20 °C" in line.change.note


def test_it_is_entered_once_and_shown_on_the_page_of_the_mould(conservator, mould):
    gauge(mould)
    for _ in range(2):
        page = send(conservator, mould).content.decode()

    assert mould.gauges.count() == 2
    assert "Measured again" in page and "−0.16" in page and "<svg" in page and "decide which" in page


@pytest.mark.parametrize(("changes", "said"), [
    ({"measured_mm": "16.773"}, "−90.02"),
    ({"measured_mm": "0"}, "more than nothing"),
    ({"gauged_on": "2020-01-01"}, "cannot have been measured before"),
    ({"gauged_on": "2999-01-01"}, "not come yet"),
])  # fmt: skip
def test_what_cannot_be_is_sent_back_with_what_was_typed(conservator, mould, changes, said):
    page = send(conservator, mould, **changes).content.decode()

    assert said in page and 'value="breadth"' in page and not mould.gauges.exists()


def test_an_unusual_change_is_asked_about_and_kept_when_confirmed(conservator, mould):
    """DOMAIN 4.13: outside −2 to +0.5 % is asked about."""
    page = send(conservator, mould, measured_mm="164.0")
    assert "−2.38" in page.content.decode() and not mould.gauges.exists()

    said = page.context["form"].fields["it_is_so"].widget.attrs["value"]
    send(conservator, mould, measured_mm="164.0", it_is_so=said)

    assert mould.gauges.get().history.first().history_change_reason.startswith("Confirmed although unusual")


def test_a_reader_may_look_but_not_measure(client, mould):
    client.force_login(make_user("reader"))

    assert client.get(reverse("gauge_add", args=[mould.item.number])).status_code == 403
    assert "Measure it again" not in client.get(mould.get_absolute_url()).content.decode()


def test_a_wrong_measurement_is_struck_out_with_its_reason(conservator, mould):
    row = gauge(mould)
    conservator.post(reverse("strike", args=["gauge", row.pk]), {"reason": "read on the wrong mould"}, follow=True)

    assert not mould.gauges.exists() and MouldGauge.every.get().struck_reason == "read on the wrong mould"
