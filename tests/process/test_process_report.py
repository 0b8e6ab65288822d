"""The process report of a copy: what was made from what, by what right, how, and what is only calculated."""

import json
import re
from datetime import UTC, date, datetime
from io import BytesIO

import pytest
from django.core.exceptions import ValidationError
from django.core.files.base import ContentFile
from pypdf import PdfReader

from process.models import FinishStep, Shell
from process.reports import finished
from records import extensions, units
from records.models import Concession, Item, Measurement, Specification, UnmetGate
from records.pdf import archive
from records.services import papers
from records.services.photographs import keep_photo
from tests.factories import (
    make_analysis,
    make_commission,
    make_consent,
    make_copy,
    make_inspection,
    make_item,
    make_mark,
    make_party,
    make_report,
    make_term,
)  # fmt: skip
from tests.pdf.pictures import medal
from tests.pdf.reading import pages, text
from tests.process.scenario_runs import coin_run, medal_run

pytestmark = pytest.mark.django_db


def copy_of(run, number="R.2026.1", *, photo=None, **fields) -> Item:
    """The shells of a run made up, marked on paper by a concession-free mark without a picture file, and compared."""
    model = make_item("OVM.1931.0044", object_type="medal")
    for what, value in (
        ("diameter", {"length_mm": 58.40}),
        ("mass", {"mass_g": 71.36}),
        ("density", {"density_g_cm3": 8.80}),
    ):
        Measurement.objects.create(item=model, what=what, **value)
    for cathode in run.cathodes.all():
        if cathode.mould:
            cathode.mould.model, cathode.mould.shrinkage_pct = model, -0.08
            cathode.mould.save()
    shells = list(Shell.objects.filter(cathode__run=run))
    copy = make_copy(
        number, shells=shells, **{"fill": make_term("fill", "tin alloy"), "fill_density_g_cm3": 7.3} | fields
    )
    concede(
        copy, "C-2026-09", gate="G6", reason="The mark is cut after the show.", limits_of_use="Not to leave the house."
    )
    return copy


def concede(copy, number, **fields) -> Concession:
    given = {"given_on": date(2026, 3, 5), "given_by": make_party(), "given_role": "conservator"}
    concession = Concession.objects.create(number=number, **given | fields)
    concession.items.add(copy)
    return concession


def issue(copy):
    return papers.issue(kind="process-report", subject=copy, party=make_party(), role="curator")


def pdf(copy) -> bytes:
    return papers.path_of(issue(copy)).read_bytes()


def test_its_figures_are_those_of_the_run():
    """SCENARIO 7.2 and 11: 36.85 Ah, 43.69 g by theory, 43.18 g on the balance, 98.8 %."""
    words = text(pdf(copy_of(medal_run())))
    for said in ("36.85 Ah", "43.69 g", "43.18 g", "98.8 %", "D-2026-002", "S-03", "S-04"):
        assert said in words


def test_a_calculated_mean_is_never_printed_as_measured():
    words = text(pdf(copy_of(medal_run())))
    assert "The wall is 0.61 mm thick on average, calculated from" in words
    assert "the thinnest of 4 measured points is 0.33 mm (section)" in words
    assert "No thickness was measured; the average of 0.59 mm is calculated" in words
    assert "Mean wall mm, calculated" in words and "mm, measured" in words


def test_predicted_mass_and_size_stand_beside_the_measured():
    """SCENARIO 8 and 11: 64.43 g and 58.35 mm predicted, 64.71 g and 58.34 mm measured, 90.7 % of the model."""
    copy = copy_of(medal_run())
    make_inspection(copy)
    words = text(pdf(copy))
    for said in ("64.43 g calculated", "64.71 g", "58.35 mm calculated", "58.34 mm", "90.7 %", "−0.08"):
        assert said in words


def test_interruptions_show_their_depth_and_how_they_were_judged():
    """SCENARIO 7.3: 3 h 10 min without current, boundary at 0.185 mm of 0.422 mm."""
    copy = copy_of(coin_run(), join="adhesive")
    given = {"gate": "G7", "reason": "The unit came back by itself.", "limits_of_use": "Display only."}
    shells = [shell.item for shell in Shell.objects.filter(making_up__copy=copy)]
    concede(shells[0], "C-2026-02", **given).items.add(*shells)
    words = text(pdf(copy))
    assert "S-05: 0.19" in words and "S-06: 0.18" in words
    assert "3 h 10 min" in words and "the current came back by itself" in words
    assert "Judged in concession C-2026-02: The unit came back by itself." in words


def test_the_first_page_begins_with_what_limits_the_piece():
    copy = copy_of(medal_run())
    gate = UnmetGate.objects.create(
        gate="G5", check_name="bath analysed", sentence="BA-02 of bath B-01 is 34 days old.",
        subject_number="D-2026-002",
        happened_on=date(2026, 2, 16),
    )  # fmt: skip
    gate.items.add(copy)
    first = pages(pdf(copy))[0]
    assert "Concession C-2026-09: Not to leave the house." in first and "Not met, recorded afterwards" in first
    assert "BA-02 of bath B-01 is 34 days old." in first and "Not accepted" in first


def test_what_happened_to_a_sister_copy_does_not_stand_on_this_one():
    copy = copy_of(medal_run())
    gate = UnmetGate.objects.create(
        gate="G5", check_name="x", sentence="Another run.", subject_number="D-2026-099", happened_on=date(2026, 2, 16)
    )
    gate.items.add(Item.objects.get(number="OVM.1931.0044"))
    assert "Another run." not in text(pdf(copy))


def test_each_condition_of_the_consent_stands_beside_what_the_record_shows():
    copy = copy_of(medal_run())
    make_consent(
        Item.objects.get(number="OVM.1931.0044"),
        pulls_max_count=2,
        copies_max_count=1,
        conditions="Nobody works alone.",
    )
    words = text(pdf(copy))
    assert "At most 2 pulls of each mould." in words and "At most 1 copy. 1 made: R.2026.1" in words
    assert "Nobody works alone." in words and "No sale." in words


def test_no_change_is_claimed_only_where_a_signed_report_says_so():
    copy = copy_of(medal_run())
    assert "nothing is claimed here" in text(pdf(copy))
    make_report(Item.objects.get(number="OVM.1931.0044"), "after", change="no_change", examined_on=date(2026, 2, 6))
    assert "No change attributable to moulding was seen on 6 February 2026" in text(pdf(copy))


def test_lead_and_finish_lead_to_words_of_care():
    copy = copy_of(medal_run(), lead_inside="yes")
    FinishStep.objects.create(copy=copy, finish=make_term("finish", "brown patina, wax"), done_on=date(2026, 2, 24))
    words = text(pdf(copy))
    assert "Contains lead" in words and "Caution" in words and "brown patina, wax" in words
    assert "This piece must always be described as a copy." in words


def test_the_bath_is_described_by_its_last_analysis_before_the_start():
    run = medal_run()
    make_analysis(run.bath, "BA-02")
    make_analysis(run.bath, "BA-03", sampled_at=datetime(2026, 4, 2, 9, tzinfo=UTC), copper_titrant_ml=8.383)
    words = text(pdf(copy_of(run)))
    assert "BA-02, 10 February 2026" in words and "209.8 g/L" in words and "BA-03" not in words


def test_workings_readings_and_words_stand_in_appendices():
    words = text(pdf(copy_of(medal_run())))
    for said in (
        "Appendix A",
        "Efficiency, run D-2026-002",
        "96485.33",
        "CODATA",
        "Appendix B",
        "16 Feb 09:00 +01",
        "Appendix C",
    ):
        assert said in words


def test_the_attached_record_holds_every_row_with_its_unit():
    document = issue(copy_of(medal_run()))
    content = papers.path_of(document).read_bytes()
    record = json.loads(PdfReader(BytesIO(content)).attachments[archive.ATTACHMENT][0])
    assert len(record["rows"]["readings and events"]) == 10 and len(record["rows"]["shells"]) == 2
    assert record["rows"]["shells"][0]["columns"]["gross_mass_g"]["unit"] == "g"
    efficiency = next(figure for figure in record["calculated"] if figure["label"] == "Efficiency")
    assert efficiency["kind"] == "calculated" and efficiency["value"] == pytest.approx(
        98.84, abs=0.01
    )  # 43.18 / 43.685


def test_an_unmarked_copy_gets_no_report():
    copy = make_copy("R.2026.4")
    with pytest.raises(ValidationError, match="only the tag “UNMARKED COPY” prints"):
        issue(copy)


def test_a_marked_copy_gets_one():
    copy = make_copy("R.2026.4")
    make_mark(copy)
    assert extensions.paper_kinds["process-report"].refusals(copy) == []


def test_of_a_historic_copy_nobody_knows_the_process():
    assert not extensions.paper_kinds["process-report"].applies_to(make_item(kind="historic_copy"))


def test_a_copy_without_its_making_up_says_what_to_do():
    lone = make_item("R.2026.9", kind="copy")
    assert "record its shells and filling first" in extensions.paper_kinds["process-report"].refusals(lone)[0]


def test_the_specification_and_the_first_look_stand_beside_what_came_of_them():
    commission = make_commission("RQ-2026-001")
    copy = copy_of(medal_run(), commission=commission)
    model = Item.objects.get(number="OVM.1931.0044")
    Specification.objects.create(
        commission=commission,
        item=model,
        technique="hollow",
        thickness_mean_mm=0.6,
        thickness_min_mm=0.3,
        tests="Lens ×10.",
    )
    shell = Shell.objects.get(item__number="S-03")
    shell.ease, shell.inspection = "by hand", "no voids"
    shell.save()
    words = text(pdf(copy))
    assert "Least thickness anywhere 0.30 mm" in words and "Lens ×10." in words
    assert "S-03. Came off: by hand. First look: no voids." in words


def test_the_cover_shows_the_mark_where_nothing_else_was_photographed(django_capture_on_commit_callbacks):
    copy = copy_of(medal_run())
    with django_capture_on_commit_callbacks(execute=True):
        photo = keep_photo(file=ContentFile(medal(700)), name="mark.jpg", item=copy, view="mark", caption="The mark")
    make_mark(copy, photo=photo)
    first = pages(pdf(copy))[0]
    assert "No photograph on file" not in first and "The mark:" in first


def test_every_page_says_that_the_piece_is_a_copy():
    found = pages(pdf(copy_of(medal_run())))
    assert all(page.count("copy R.2026.1 ·") == 2 for page in found)


def test_the_attached_record_says_the_numbers_of_the_page():
    """Each calculated figure of the record, rounded as the papers round, stands somewhere on the paper."""
    copy = copy_of(medal_run())
    make_inspection(copy)
    content = pdf(copy)
    record = json.loads(PdfReader(BytesIO(content)).attachments[archive.ATTACHMENT][0])
    words, suffixes = text(content), {unit: suffix for suffix, unit in units.SUFFIXES.items()}
    six = {"Efficiency", "Mass predicted", "Mass measured", "Mass against the model", "Diameter predicted", "Deviation"}
    found = [figure for figure in record["calculated"] if figure["label"] in six]
    assert {figure["label"] for figure in found} == six
    for figure in found:
        number, _ = units.figure(figure["value"], suffixes[figure["unit"]], plus_minus=figure["plus_minus"])
        assert re.sub(r"\s+", " ", number) in words, figure["label"]


def test_two_roles_see_a_report_that_the_conservator_issued():
    document = papers.issue(kind="process-report", subject=copy_of(medal_run()), party=make_party(), role="conservator")
    assert "Registrar · Date" in text(papers.path_of(document).read_bytes())


def test_what_was_done_stands_in_order_of_time_by_the_museum_s_clock():
    """Signed at 23:30 UTC on 5 March: by a clock one hour ahead it was the 6th."""
    copy = copy_of(medal_run())
    make_inspection(copy, inspected_on=date(2026, 3, 4), signed_by=make_party(), signed_role="conservator",
                    signed_at=datetime(2026, 3, 5, 23, 30, tzinfo=UTC))  # fmt: skip
    words = text(pdf(copy)).partition("Who did what")[2]
    assert words.index("inspected it") < words.index("gave concession") < words.index("signed the inspection")
    assert "signed the inspection" in words and "6 March 2026" in words


def test_acid_that_stayed_in_a_core_leads_to_a_caution(monkeypatch):
    monkeypatch.setattr(finished, "ABSORBED", "usual")  # the band of this run stands in for it
    assert "Acid copper solution stayed in the core." in text(pdf(copy_of(medal_run())))


def test_filling_and_finish_carry_their_own_cautions():
    copy = copy_of(
        medal_run(), fill=make_term("fill", "own resin", caution="Can sensitise the skin."), fill_mass_g=34.6
    )
    silver = make_term("finish", "own silvering", caution="Licensed practice only.")
    FinishStep.objects.create(copy=copy, finish=silver, done_on=date(2026, 2, 24))
    words = text(pdf(copy))
    assert "Own resin: Can sensitise the skin." in words and "Own silvering: Licensed practice only." in words
    assert "Filling, as weighed 34.60 g" in words and "Filling, by the room in the shells" in words
