"""The bench sheet: the current recorded at an instant holds until the next entry."""

from typing import Any

import numpy as np
import pytest

from process.chemistry.deposit import grown_thickness
from process.chemistry.errors import ChemistryError
from process.chemistry.metals import ion
from process.chemistry.series import charge_at, sheet_charge
from records.units import ureg
from tests.chemistry.demo_sheets import sheet

H = 3600
Quantity = ureg.Quantity


def test_a_current_holds_until_the_next_entry() -> None:
    result = sheet_charge([0, 1 * H, 3 * H], [1.0, 2.0, 0.0])
    assert result.cumulative_ah.tolist() == [0.0, 1.0, 5.0]
    assert result.charge.m_as("A*h") == 5.0


def test_a_running_sheet_counts_up_to_now() -> None:
    result = sheet_charge([0, 1 * H], [1.0, 2.0], until_s=1.5 * H)
    assert result.cumulative_ah.tolist() == [0.0, 1.0]
    assert (result.until_ah, result.elapsed_h, result.energised_h) == (2.0, 1.5, 1.5)


def test_an_instant_in_the_past_leaves_later_entries_out() -> None:
    result = sheet_charge([0, 1 * H, 2 * H], [1.0, 2.0, 0.0], until_s=0.5 * H)
    assert (result.until_ah, result.elapsed_h) == (0.5, 0.5)


def test_an_instant_before_the_start_counts_nothing() -> None:
    assert sheet_charge([10 * H, 11 * H], [1.0, 0.0], until_s=0).until_ah == 0


def test_a_sheet_without_entries_has_no_charge() -> None:
    result = sheet_charge([], [])
    assert (result.until_ah, result.elapsed_h, result.drifts) == (0.0, 0.0, ())
    assert charge_at([], [], [0.0, 5.0]).tolist() == [0.0, 0.0]


def test_hours_without_current_are_elapsed_but_not_energised() -> None:
    result = sheet_charge([0, 1 * H, 2 * H, 3 * H], [1.0, 0.0, 1.0, 0.0])
    assert (result.elapsed_h, result.energised_h) == (3.0, 2.0)


def test_a_drift_over_5_per_cent_is_flagged_with_its_doubt() -> None:
    (drift,) = sheet_charge([0, 2 * H, 3 * H], [1.00, 1.10, 0.0]).drifts
    assert (drift.index_count, drift.from_a, drift.to_a) == (1, 1.0, 1.1)
    assert drift.share == pytest.approx(0.10)
    assert drift.doubt_ah == pytest.approx(0.20)


def test_a_change_of_5_per_cent_is_no_drift() -> None:
    assert sheet_charge([0, 1 * H], [1.00, 1.05]).drifts == ()


def test_switching_is_no_drift() -> None:
    assert sheet_charge([0, H, 2 * H], [0.0, 1.0, 0.0]).drifts == ()
    times, currents = sheet("D-2026-002")
    switched = [True, False, True, True, False, False, False, False, False, True]
    assert sheet_charge(times, currents, switched=switched).drifts == ()
    assert len(sheet_charge(times, currents).drifts) == 2  # the two steps up, not known to be steps


def test_doubt_adds_up_over_the_flagged_stretches() -> None:
    assert sheet_charge([0, H, 2 * H], [1.0, 1.2, 1.0]).doubt.m_as("A*h") == pytest.approx(0.4)


def test_charge_at_many_instants_for_a_chart() -> None:
    found = charge_at([0, 1 * H, 3 * H], [1.0, 2.0, 0.0], np.array([-H, 0, 0.5 * H, 2 * H, 3 * H, 9 * H]))
    assert found.tolist() == [0.0, 0.0, 0.5, 3.0, 5.0, 5.0]


def test_thickness_grows_along_the_whole_curve_at_once() -> None:
    charge = Quantity(charge_at([0, 10 * H], [1.0, 0.0], [0, 5 * H, 10 * H]), "A*h")
    grown = grown_thickness(ion("Cu2+"), charge, Quantity(1, "dm**2"))
    assert grown.m_as("um").tolist() == pytest.approx([0, 66.45, 132.9], abs=0.01)


@pytest.mark.parametrize(
    ("times", "currents", "message"),
    [
        ([0, 1], [1.0], "currents: give one current for each instant"),
        ([0, 1], [1.0, -1.0], "currents: cannot be negative; -1 A was given"),
        ([0, 1], [1.0, float("nan")], "currents: must all be finite numbers"),
        ([0, float("inf")], [1.0, 1.0], "instants: must all be finite numbers"),
        ([1, 0], [1.0, 1.0], "instants: are out of order"),
    ],
)
def test_a_faulty_sheet_is_refused(times: Any, currents: Any, message: str) -> None:
    with pytest.raises(ChemistryError, match=message):
        sheet_charge(times, currents)


def test_switched_must_match_the_entries() -> None:
    with pytest.raises(ChemistryError, match="switched: say for each entry"):
        sheet_charge([0, H], [1.0, 1.2], switched=[True])
