"""A crowd around one row of every kind: fifty of each, so that a page that asks once per row is caught."""

from datetime import timedelta
from typing import Any

from process import models as making
from records import models
from tests import factories as make
from tests.everything import DAY, _copy, judged, make_core, make_shell, one_of_each
from tests.factories import NINE

CROWD = 50


def crowded(size: int = CROWD) -> dict[str, Any]:
    """One of everything, and `size` more of all that hangs on it."""
    rows = one_of_each()
    for count in range(size):
        person = make.make_party()
        _beside(rows, person, count)
        _on_the_thing(rows, person, count)
        _on_the_commission(rows, person, count)
        _in_the_workshop(rows, person, count)
    return rows


def _beside(rows: dict[str, Any], person: models.Party, count: int) -> None:
    """Other things that the lists show."""
    other = make.make_item(owner=person, place=make.make_place(within=rows["place"]))
    make.make_photo(other)
    make.make_report(other, examiner=person)
    commission = make.make_commission(originals=[other], requester=person)
    make.make_consent(other, commission=commission)
    make.make_mould(other, made_by=person)
    bath = make.make_bath()
    make.make_analysis(bath)
    run = make.make_run(bath=bath, operator=person, commission=commission)
    cathode = make.make_cathode(run, mould=make.make_mould(other))
    making.Event.objects.create(run=run, kind="entry", at=NINE + timedelta(days=count), current_a=1.2)
    making.Reading.objects.create(run=run, at=NINE + timedelta(days=count, hours=1), current_a=1.2)
    _copy(make_shell(cathode), person)


def _on_the_thing(rows: dict[str, Any], person: models.Party, count: int) -> None:
    item = rows["item"]
    photo = make.make_photo(item, taken_by=person)
    rows["report"].photos.add(photo)
    models.Finding.objects.create(report=rows["report"], term=make.make_term("finding"), location="rim", photo=photo)
    make.make_report(item, examiner=person)
    models.Measurement.objects.create(item=item, what="thickness", length_mm=3.03, measured_by=person)
    models.Examination.objects.create(item=item, examined_on=DAY, examiner=person)
    models.ProvenanceEvent.objects.create(item=item, date_words=str(1800 + count), what="sold", party=person)
    models.Mark.objects.create(item=rows["copy"], text="COPY", face="rim", method="punch", photo=photo, made_by=person)
    making.WorkHours.objects.create(
        copy=rows["copy"], commission=rows["commission"], kind="bath", work_h=1, person=person, done_on=DAY
    )
    make.make_handover(rows["copy"], party=person)
    make.make_handover(rows["copy"], party=person, out_on=DAY, back_on=DAY, change="none")
    models.HandlingSession.objects.create(
        item=rows["copy"], happened_on=DAY, time_h=2, occasion="touch table", supervised_by=person
    )
    models.Duty.objects.create(sentence=f"Look again, {count}", due_on=DAY, role="conservator", item=item)
    models.Document.objects.create(
        kind="condition",
        number=rows["report"].number,
        edition_count=count + 2,
        title="Condition report",
        item=item,
        issued_at=NINE,
        issued_by=person,
        path=f"{count}.pdf",
        sha256="0" * 64,
        record_sha256="0" * 64,
        size_bytes_count=1000,
    )
    models.UnmetGate.objects.create(
        gate="G5", check_name="pull left", sentence="None left.", subject_number=item.number, happened_on=DAY
    ).items.add(item)


def _on_the_commission(rows: dict[str, Any], person: models.Party, count: int) -> None:
    item, commission = rows["item"], rows["commission"]
    commission.originals.add(other := make.make_item(owner=person))
    rows["consent"].items.add(other)
    make.make_consent(item, commission=commission, owner=person)
    models.RiskAssessment.objects.create(
        number=f"RA-2026-{count + 100}",
        item=item,
        commission=commission,
        assessed_on=DAY,
        assessor=person,
        surface="bronze",
        decision="direct",
        reason="stable",
    )
    concession = models.Concession.objects.create(
        number=f"C-2026-{count + 100}",
        gate="G5",
        commission=commission,
        given_on=DAY,
        given_by=person,
        given_role="conservator",
        reason="shown",
    )
    concession.items.add(item, rows["copy"])
    models.Specification.objects.create(
        commission=commission, item=item, technique="hollow", thickness_mean_mm=0.6, thickness_min_mm=0.3
    )


def _in_the_workshop(rows: dict[str, Any], person: models.Party, count: int) -> None:
    bath, run, mould = rows["bath"], rows["run"], rows["mould"]
    make.make_analysis(bath, analyst=person)
    making.BathAddition.objects.create(bath=bath, added_at=NINE, what="copper sulphate", mass_g=396.0, added_by=person)
    anode = making.Anode.objects.create(bath=bath, label=f"A{count + 2}")
    making.AnodeWeighing.objects.create(anode=anode, weighed_at=NINE, mass_g=4000, weighed_by=person)
    making.BathService.objects.create(bath=bath, kind="filter", done_at=NINE + timedelta(days=count), done_by=person)
    make.make_run(bath=bath, operator=person, commission=rows["commission"])
    at = NINE + timedelta(minutes=20 * (count + 4))
    making.AreaPart.objects.create(
        cathode=rows["cathode"], shape="plate", part="wires", length_mm=9, width_mm=9, area_dm2=0.01, uncertainty_pct=5
    )
    making.RampStep.objects.create(run=run, order_count=count + 2, current_a=0.3, time_h=0.1)
    making.ThrowTest.objects.create(bath=bath, tested_on=DAY, near_gain_g=3.5, far_gain_g=1.0)
    making.PowerUnit.objects.create(number=f"PU-{count + 2}", rated_a=20, rated_v=12)
    making.Reading.objects.create(run=run, at=at, current_a=1.2, meter_ah=count / 3, person=person)
    making.Event.objects.create(run=run, kind="inspection", at=at, person=person)
    judged(run, rows["shell"], person, NINE + timedelta(hours=25, minutes=5 * (count + 1)))
    make.make_mould(rows["item"], made_by=person)
    make_core(mould, count + 3)
    making.ThicknessPoint.objects.create(
        shell=rows["shell"], place=f"point {count}", thickness_mm=0.6, method="micrometer", measured_by=person
    )
    making.FinishStep.objects.create(
        copy=rows["copy"], finish=make.make_term("finish", "wax"), done_on=DAY, done_by=person
    )
    making.Inspection.objects.create(
        copy=rows["copy"],
        inspected_on=DAY,
        inspector=person,
        mass_g=64.71,
        not_measured_reason="closed",
        decision="rework",
    )
