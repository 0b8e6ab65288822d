"""A museum's own rules, marks tried before the mould, and marks of the original kept off the copy."""

from html import unescape

import pytest
from django.urls import reverse

from records import clock
from records.gates import Subject, checks
from records.judging import piece_facts, verdicts_of
from records.marking import PieceFacts, load_rules, trials, ways
from records.models import Gate, MarkRule, Measurement, SuppressedMark
from tests.factories import make_copy, make_item, make_mark, make_photo, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator"))
    return client


def _rule(**more):
    return {
        "code": "own.height", "asks": "Letters are at least 3 mm high.", "question": "height", "at_least_mm": "3",
        "at_least_mm_unit": "mm", "jurisdiction": "this museum", "citation": "house rule 9", "text_version": "1",
        "evidence": "seen",
    } | more  # fmt: skip


def _gate(copy):
    return checks(Gate.MARK, Subject(copy, copy.number, (copy,)), clock.today())[0]


def test_a_rule_that_the_museum_adds_judges_marks_with_its_figure_and_source(conservator):
    conservator.post(reverse("mark_rule_add"), _rule())
    copy = make_copy()
    mark = make_mark(copy, letter_height_mm=2.9)

    verdict = next(v for v in verdicts_of(mark, piece_facts(copy)) if v.rule.id == "own.height")

    assert (verdict.outcome, verdict.required, verdict.found) == ("fail", "at least 3.00 mm", "2.90 mm")
    assert "house rule 9 (1; seen)" in conservator.get(reverse("mark_edit", args=[mark.pk])).content.decode()


def test_a_rule_that_opens_the_gate_closes_it_for_small_letters():
    copy = make_copy()
    make_mark(copy, letter_height_mm=2.9)
    assert _gate(copy).met

    rule = MarkRule.objects.create(
        code="own.height", asks="Large letters.", citation="house rule 9", text_version="1", question="height",
        at_least_mm=3.0, gate=True,
    )  # fmt: skip
    assert not _gate(copy).met and "required is at least 3.00 mm" in _gate(copy).sentence

    rule.is_retired = True
    rule.save()
    assert _gate(copy).met


@pytest.mark.parametrize(("field", "value"), [("face", "edge"), ("text", "H.W."), ("method", "ink"), ("photo", None)])
def test_the_gate_asks_for_the_museums_policy_and_not_for_a_photograph_alone(field, value):
    copy = make_copy()
    make_mark(copy, **{field: value})

    assert not _gate(copy).met


@pytest.mark.parametrize(
    ("field", "typed"),
    [("share", {"share_of": "longest", "share": "1/0"}), ("share", {"share_of": "longest"}),
     ("share", {"share_of": "longest", "share": "7/6"}), ("at_least_mm", {"at_least_mm": ""}),
     ("words", {"question": "says_copy"}), ("code", {"code": "icom-4.7"}),
     ("checked_on", {"checked_on": "2999-01-01"})],
)  # fmt: skip
def test_a_rule_that_cannot_be_asked_is_refused_at_its_field(conservator, field, typed):
    answer = conservator.post(reverse("mark_rule_add"), _rule(**typed))

    assert answer.status_code == 422 and field in answer.context["form"].errors and not MarkRule.objects.exists()


def test_every_recorded_rule_is_listed_with_its_evidence(conservator):
    page = unescape(conservator.get(reverse("mark_rule_list")).content.decode())

    assert all(rule.source.split(";")[0].split(" (")[0] in page for rule in load_rules())
    assert "from memory" in page and "not legal advice" in page


def test_sizes_are_tried_on_the_piece_before_the_mould():
    """Letters of 1.5 mm are too small at 12 mm and more, 2.0 mm will do (16 CFR 304.6; D/6 from memory)."""
    tried = {trial.height_mm: trial for trial in trials("COPY", PieceFacts("coin", longest_mm=31.2), load_rules())}
    small = {trial.height_mm: trial for trial in trials("COPY", PieceFacts("coin", longest_mm=9.0), load_rules())}

    assert (tried[1.5].outcome, tried[2.0].outcome, small[1.5].outcome) == ("fail", "pass", "pass")
    assert small[3.0].fits is False and tried[3.0].fits


def test_a_punch_breaks_a_thin_wall_and_letters_in_the_mould_do_not():
    found = {words: outcome for words, outcome, _ in ways(0.3, 0.4, backed=False)}
    backed = {words: outcome for words, outcome, _ in ways(0.3, 0.4, backed=True)}

    assert found["punched"] == "fail" and found["letters let into the mould, carried by the deposit"] == "pass"
    assert backed["punched"] == "pass" and found["stamped in ink (temporary)"] == "fail"


def test_the_page_tries_a_mark_on_the_original(conservator):
    coin = make_item(object_type="coin")
    Measurement.objects.create(item=coin, what="diameter", length_mm=31.2)

    page = conservator.get(
        reverse("mark_plan", args=[coin.number]), {"text": "COPY", "wall_mm": "0,4"}
    ).content.decode()

    assert "breaks an unbacked wall of 0.40 mm" in page and "not legal advice" in page
    wrong = conservator.get(reverse("mark_plan", args=[coin.number]), {"text": "COPY", "wall_mm": "thin"})
    assert wrong.status_code == 422


def test_a_hallmark_of_the_original_is_accounted_for_on_the_copy(conservator):
    """Hallmarking Act 1973 s. 6: no hallmark is carried over."""
    beaker = make_item(object_type="beaker", hallmarks="present")
    lion = make_mark(beaker, text="lion", purpose="hallmark")
    copy = make_copy(model=beaker)

    def verdict():
        piece = piece_facts(type(copy).objects.get(pk=copy.pk), [beaker])
        found = verdicts_of(make_mark(copy), piece)
        return next(v.outcome for v in found if v.rule.id == "uk-hallmark-6")

    assert verdict() == "unknown"
    typed = {"mark": lion.pk, "how": "masked", "photo": make_photo(copy, view="detail").pk}
    assert conservator.post(reverse("suppressed_add", args=[copy.number]), typed).status_code == 302
    assert verdict() == "pass"
    assert "masked in the mould" in conservator.get(reverse("original_marks", args=[copy.number])).content.decode()


def test_a_mark_that_was_left_needs_its_reason(conservator):
    beaker = make_item(hallmarks="present")
    lion = make_mark(beaker, text="lion", purpose="hallmark")
    copy = make_copy(model=beaker)

    answer = conservator.post(reverse("suppressed_add", args=[copy.number]), {"mark": lion.pk, "how": "left"})

    assert answer.status_code == 422 and "reason" in answer.context["form"].errors
    assert not SuppressedMark.objects.exists()
