"""A register with one row of every kind, and the same with a crowd around each."""

from datetime import UTC, date, datetime, timedelta
from types import SimpleNamespace
from typing import Any

from process import models as making
from records import models
from tests import factories as make
from tests.areas_of import areas_of
from tests.factories import NINE
from tests.mould_rows import mould_rows

DAY = date(2026, 2, 16)


def one_of_each() -> dict[str, Any]:
    """One row of every kind, hung together as in real use: an original, its papers, its moulds, a run, a copy."""
    person, place = make.make_party(), make.make_place()
    item = make.make_item(owner=person, place=place)
    rows: dict[str, Any] = {"party": person, "place": place, "item": item, "term": make.make_term("finding", "scratch")}
    rows |= _about(item, person) | _agreed(item, person) | _making(item, rows["party"])
    return rows


def _about(item: models.Item, person: models.Party) -> dict[str, Any]:
    photo = make.make_photo(item, taken_at=NINE, taken_by=person)
    report = make.make_report(item, examiner=person, signed=False)
    report.photos.add(photo)
    finding = models.Finding.objects.create(
        report=report, term=make.make_term("finding", "edge knock"), location="4 h", photo=photo
    )
    return {
        "photo": photo,
        "report": report,
        "job": models.Job.objects.create(
            kind="trace", title="Reading logger.csv", asked_at=NINE, seen_at=NINE, url="/", step="reading the lines"
        ),
        "measurement": models.Measurement.objects.create(item=item, what="mass", mass_g=71.36, measured_by=person),
        "provenance": models.ProvenanceEvent.objects.create(item=item, date_words="1931", what="given", party=person),
        "examination": models.Examination.objects.create(
            item=item, examined_on=DAY, examiner=person, answers={"seam": "absent"}
        ),
        "finding": finding,
        "photo_pair": models.PhotoPair.objects.create(
            report=report, before=photo, after=make.make_photo(item, taken_at=NINE + timedelta(days=30))
        ),
        "survey_rule": models.SurveyRule.objects.first(),
        "incident": models.Incident.objects.create(number="I-2026-01", report=report),
        "finding_mark": models.FindingMark.objects.create(
            finding=finding, photo=photo, shape="polygon", points=[[1, 1], [9, 1], [5, 8]]
        ),
        "document": models.Document.objects.create(
            kind="condition",
            number=report.number,
            title="Condition report",
            item=item,
            issued_at=NINE,
            issued_by=person,
            path="paper.pdf",
            sha256="0" * 64,
            record_sha256="0" * 64,
            size_bytes_count=1000,
        ),
    }


def _agreed(item: models.Item, person: models.Party) -> dict[str, Any]:
    commission = make.make_commission(originals=[item], requester=person)
    consent = make.make_consent(item, commission=commission, owner=person, pulls_max_count=5)
    concession = models.Concession.objects.create(
        number="C-2026-01",
        gate="G5",
        commission=commission,
        given_on=DAY,
        given_by=person,
        given_role="conservator",
        reason="shown",
    )
    concession.items.add(item)
    return {
        "commission": commission,
        "consent": consent,
        "concession": concession,
        "compatibility": models.Compatibility.objects.create(
            surface=make.make_term("surface"), material=make.make_term("mould_material"), verdict="usual", source="seen"
        ),
        "risk": models.RiskAssessment.objects.create(
            number="RA-2026-01",
            item=item,
            commission=commission,
            assessed_on=DAY,
            assessor=person,
            surface="bronze",
            decision="direct",
            reason="stable",
        ),
        "specification": models.Specification.objects.create(
            commission=commission, item=item, technique="hollow", thickness_mean_mm=0.6, thickness_min_mm=0.3
        ),
        "duty": models.Duty.objects.create(
            sentence="Return the moulds", due_on=DAY, role="registrar", item=item, consent=consent
        ),
    }


def _making(item: models.Item, person: models.Party) -> dict[str, Any]:
    mould = make.make_mould(item, made_by=person)
    bath = make.make_bath()
    power_unit = making.PowerUnit.objects.create(number="PU-1", rated_a=20, rated_v=12, resolution_a=0.01)
    prices = making.PriceList.objects.create(
        valid_from=DAY, labour_money_h=40, metal_money_kg=14, energy_money_kwh=0.3, bath_money=600
    )
    throw_test = making.ThrowTest.objects.create(bath=bath, tested_on=DAY, near_gain_g=3.5, far_gain_g=1.0)
    run = make.make_run(bath=bath, operator=person, power_unit=power_unit)
    making.RampStep.objects.create(run=run, order_count=1, words="cover", current_density_a_dm2=0.3, time_h=2)
    pull = making.Pull.objects.create(mould=mould, number_count=1, used_on=DAY)
    cathode = make.make_cathode(run, mould=mould, pull=pull)
    entry = making.Event.objects.create(run=run, kind="entry", at=NINE, current_a=0.24, person=person)
    making.Event.objects.create(run=run, kind="stop", at=NINE + timedelta(hours=30), current_a=0.0, person=person)
    shell = make_shell(cathode)
    return {
        **judged(run, shell, person, NINE + timedelta(hours=25)),
        "mould": mould,
        "bath": bath,
        "range": making.Range.objects.first(),
        "care_rule": making.CareRule.objects.first(),
        "run": run,
        "cathode": cathode,
        **areas_of(cathode),
        "power_unit": power_unit,
        "prices": prices,
        "throw_test": throw_test,
        "event": entry,
        "shell": shell,
        "thickness": making.ThicknessPoint.objects.create(
            shell=shell, place="nose", thickness_mm=0.4, method="micrometer"
        ),
        **_skinned(make_core(mould, 2), bath, person),
        "trace": make_trace(run),
        "header_word": making.HeaderWord.objects.first(),
        "analysis": make.make_analysis(bath, analyst=person),
        **_bath_work(bath, person),
        **mould_rows(mould, person, DAY),
        "hydrostatic": making.HydrostaticWeighing.objects.create(
            item=item, weighed_at=NINE, in_air_g=71.36, in_water_g=63.27, water_temperature_degc=21, weighed_by=person
        ),
        "reading": making.Reading.objects.create(run=run, at=NINE + timedelta(hours=1), current_a=1.2, person=person),
        "descent": models.DescentLink.objects.create(
            source=item, target=mould.item, transfer="moulding", side="obverse"
        ),
        **_copy(shell, person),
    }


def _skinned(core: making.Core, bath: making.Bath, person: models.Party) -> dict[str, Any]:
    """A core with its skin, weighed once, and a closing that waits for its signature."""
    run = make.make_run(bath=bath)
    shell = make.make_shell(cathode=make.make_cathode(run, core=core, tare_g=10.0), weighed_at=NINE)
    return {
        "core": core,
        "skin": shell,
        "weighing": making.Weighing.objects.create(item=shell.item, kind="skin", at=NINE, mass_g=22.05, person=person),
        "closing": making.CoreClosing.objects.create(shell=shell, decided_on=DAY, decision="close"),
    }


def _bath_work(bath: making.Bath, person: models.Party) -> dict[str, Any]:
    anode = making.Anode.objects.create(bath=bath, label="A1", metal="phosphorised copper", hung_on=DAY)
    return {
        "second": make.make_analysis(bath, analyst=person, sampled_at=NINE + timedelta(days=40)),
        "addition": making.BathAddition.objects.create(
            bath=bath, kind="copper_sulphate", what="copper sulphate", mass_g=396, added_at=NINE, added_by=person
        ),
        "service": making.BathService.objects.create(bath=bath, kind="filter", done_at=NINE, done_by=person),
        "anode": anode,
        "anode_weighing": making.AnodeWeighing.objects.create(
            anode=anode, weighed_at=NINE, mass_g=4012, weighed_by=person
        ),
    }


def judged(run: making.Run, shell: making.Shell, person: models.Party, gone: datetime) -> dict[str, Any]:
    """An interruption with its answers, a coupon, a defect and an entry of the failure library."""
    count = making.CouponTest.objects.count()
    making.Event.objects.create(run=run, kind="interruption", at=gone, current_a=0.0, cause="power")
    making.Event.objects.create(run=run, kind="restart", at=gone + timedelta(minutes=2), current_a=1.2)
    making.InterruptionAnswers.objects.create(run=run, began_at=gone, handling="immersed", answered_by=person)
    failure = making.Failure.objects.create(
        number=f"F-2026-{count + 1:03d}", title="Too much current", happened_on=DAY, run=run, what="dark", lesson="look"
    )
    failure.shells.add(shell)
    return {
        "interruption": SimpleNamespace(key=f"{gone:%Y%m%dT%H%M%S}"),
        "risk_rule": making.RiskRule.objects.first(),
        "coupon": making.CouponTest.objects.create(
            shell=shell, number=f"K-{count + 1}", bends_count=14, layers="no", tested_by=person
        ),
        "failure": failure,
        "defect": making.Defect.objects.create(
            shell=shell, term=make.make_term("defect", "burning"), location="rim", stage="run", found_by=person
        ),
    }


def make_shell(cathode: making.Cathode) -> making.Shell:
    item = make.make_item(f"S-{cathode.pk:04d}", kind="shell", title="Shell")
    models.DescentLink.objects.create(source=cathode.mould.item, target=item, transfer="deposit", side="obverse")
    return making.Shell.objects.create(
        item=item, cathode=cathode, gross_mass_g=22.05, weighed_at=datetime(2026, 2, 18, 9, tzinfo=UTC)
    )


def make_trace(run: making.Run) -> making.Trace:
    """A row as it stands after the file was read; the file itself is only made by process.services.traces."""
    return making.Trace.objects.create(
        run=run, original_name="logger.csv", path="traces/00/0.txt", sha256="0" * 64, size_bytes_count=100,
        known_ah=36.8, bridged_ah=0.0, open_ah=0.0, absolute_ah=36.8, switching_ah=0.1, interval_s=60.0,
        energised_s=108000.0, starts_at=NINE, ends_at=NINE + timedelta(hours=30), sample_count=1800,
    )  # fmt: skip


def make_core(mould: making.Mould, pull: int) -> making.Core:
    item = make.make_item(f"P-2026-{pull:04d}", kind="core", title="Core")
    use = making.Pull.objects.create(mould=mould, number_count=pull, use="cast", used_on=DAY)
    return making.Core.objects.create(item=item, pull=use, material="gypsum", cast_on=DAY)


def _rules_on(copy: models.Item, original: models.Item) -> dict[str, Any]:
    hallmark = models.Mark.objects.create(item=original, text="lion", face="edge", method="punch", purpose="hallmark")
    return {
        "mark_rule": models.MarkRule.objects.create(
            code=f"own.{copy.pk}", asks="Large letters.", citation="house rule 9", text_version="1", question="height",
            at_least_mm=3.0,
        ),
        "suppressed": models.SuppressedMark.objects.create(copy=copy, mark=hallmark, how="masked"),
    }  # fmt: skip


def _costing(copy: models.Item, run: making.Run, person: models.Party) -> dict[str, Any]:
    commission = models.Commission.objects.first()
    commission.copies.add(copy)
    return {
        "work": making.WorkHours.objects.create(
            copy=copy, commission=commission, kind="making_up", work_h=4.5, person=person, done_on=DAY
        ),
        "expense": making.Expense.objects.create(run=run, what="wire", sum_money=3, spent_on=DAY),
        "estimate": making.WorkEstimate.objects.get_or_create(
            commission=commission, kind="making_up", defaults={"work_h": 4}
        )[0],
    }


def _in_other_hands(copy: models.Item, person: models.Party) -> dict[str, Any]:
    """Lent, and agreed to be lent once more; handled once."""
    return {
        "second_copy": make.make_item(f"{copy.number}b", kind="copy"),
        "disposal": models.Disposal.objects.create(
            number=f"X-{copy.pk}",
            item=copy,
            reason="torn",
            decided_on=DAY,
            decided_by=person,
            authority="minutes",
            way="destroyed",
        ),
        "handover": make.make_handover(copy, party=person),
        "lent": make.make_handover(copy, party=person, out_on=DAY, handed_by=person, mass_out_g=64.7, receiver="A"),
        "handling": models.HandlingSession.objects.create(
            item=copy, happened_on=DAY, time_h=2, occasion="touch table", supervised_by=person
        ),
    }


def _copy(shell: making.Shell, person: models.Party) -> dict[str, Any]:
    copy = make.make_item(f"R.{shell.pk:06d}", kind="copy", title="Electrotype of a medal", status="workshop")
    photo = make.make_photo(copy, view="mark")
    models.DescentLink.objects.create(source=shell.item, target=copy, transfer="making_up")
    shell.making_up = making.MakingUp.objects.create(copy=copy, technique="joined", lead_inside="no", made_up_on=DAY)
    shell.save()
    models.LabelWording.objects.create(item=copy, kind_of_copy="Electrotype copy", copy_date="2026", after="a medal")
    return {
        "finish": making.FinishStep.objects.create(
            copy=copy, finish=make.make_term("finish", "wax"), done_on=DAY, done_by=person
        ),
        "copy": copy,
        "mark": models.Mark.objects.create(
            item=copy, text="COPY", face="reverse", method="punch", photo=photo, made_by=person
        ),
        **_rules_on(copy, shell.cathode.mould.model),
        **_in_other_hands(copy, person),
        **_costing(copy, shell.cathode.run, person),
        "survey_date": models.SurveyDate.objects.create(item=copy, due_on=DAY + timedelta(days=900), because="tour"),
        "inspection": making.Inspection.objects.create(
            copy=copy, inspected_on=DAY, inspector=person, mass_g=64.71, not_measured_reason="closed", decision="accept"
        ),
    }
