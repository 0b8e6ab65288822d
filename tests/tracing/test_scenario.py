"""The table at the end of SCENARIO 9: each reading of the evidence, from both forms of the file."""

import pytest

from process.tracing import argue, evaluate
from tests.tracing.files import RUN, SCENARIO, hostile, sampled, written

FORMS = ["as exported", "hostile, UTF-8", "hostile, UTF-16 with a mark", "hostile, Latin-1"]
THEORY_G_AH = 1.185494  # SCENARIO 11
GAIN_G = 10.44


@pytest.fixture(params=FORMS)
def samples(request, tmp_path):
    if request.param == "as exported":
        return sampled(SCENARIO)
    encoding = {"UTF-8": "utf-8", "UTF-16 with a mark": "utf-16", "Latin-1": "latin-1"}[request.param.split(", ")[1]]
    text = hostile().replace("T [C]", "T [°C]") if encoding == "latin-1" else hostile()
    return sampled(written(tmp_path, text, encoding), zone="Europe/Berlin")


def evaluated(samples, **by_kind):
    """Every finding decided by its kind, as a person would go down the page."""
    decisions = {each.key: by_kind[each.kind] for each in argue(samples, RUN)[1] if each.kind in by_kind}
    case, findings = argue(samples, RUN, decisions)
    return evaluate(case, findings, decisions, RUN)


def test_as_imported_it_is_wrong_by_the_decimal_slip(samples):
    assert evaluated(samples, spike="keep", gap="bridge").charge_ah == pytest.approx(10.12, abs=5e-3)


def test_slip_excluded_and_the_hour_bridged(samples):
    best = evaluated(samples, spike="exclude", gap="bridge")
    assert best.charge_ah == pytest.approx(8.86, abs=5e-3)
    assert GAIN_G / (best.charge_ah * THEORY_G_AH) * 100 == pytest.approx(99.4, abs=0.05)


def test_the_missing_hour_left_open_gives_bounds(samples):
    open_ended = evaluated(samples, spike="exclude", gap="open")
    assert open_ended.charge_ah == pytest.approx(8.44, abs=5e-3)
    assert open_ended.open_ah == pytest.approx(0.42, abs=5e-3)


def test_slip_read_without_its_error_agrees_with_leaving_it_out(samples):
    assert evaluated(samples, spike="mend", gap="bridge").charge_ah == pytest.approx(8.86, abs=5e-3)


def test_it_argues_about_exactly_what_was_planted(samples):
    _, findings = argue(samples, RUN)
    assert [each.kind for each in findings] == ["duplicate", "spike", "zero", "restart", "zero", "gap"]


def test_the_silent_restart_is_the_first_sample_after_the_outage(samples):
    (restart,) = [each for each in argue(samples, RUN)[1] if each.kind == "restart"]
    outage, lunch = evaluated(samples, spike="exclude", gap="bridge").stretches
    assert "Silent restart" in restart.sentence
    assert (outage.restart, lunch.restart) == ("silent", "recorded")
    assert outage.back_s - outage.from_s == 3 * 3600 + 20 * 60  # 01:20 to 04:40
    assert outage.charge_before_ah == pytest.approx(3.89, abs=5e-3)


def test_the_effect_of_each_choice_is_shown(samples):
    (gap,) = [each for each in argue(samples, RUN)[1] if each.kind == "gap"]
    effects = {choice.key: choice.effect_ah for choice in gap.choices}
    assert effects == {"open": 0, "bridge": pytest.approx(0.4215), "nothing": 0}
