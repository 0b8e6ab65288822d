"""The address of every page, made from rows: a new page is added here, and every test that walks them all walks it."""

from collections.abc import Iterator, Mapping
from typing import Any

from django.urls import URLPattern, get_resolver, reverse

# Route: where each part of its address comes from: "kind.attribute" of a row of `tests.everything`, or "=word" itself.
ADDRESSES: dict[str, tuple[str, ...]] = {
    # the site
    "home": (),
    "sign_in": (),
    "sign_out": (),
    "health": (),
    "search": (),
    "lookup": ("=originals",),
    # things
    "item_list": (),
    "item_add": (),
    "item": ("item.number",),
    "item_edit": ("item.number",),
    "item_history": ("item.number",),
    "job": ("job.token",),
    "job_again": ("job.token",),
    "measurement_add": ("item.number",),
    "measurement_edit": ("measurement.pk",),
    "strike": ("=measurement", "measurement.pk"),
    "photo_list": (),
    "file_check_list": (),
    "photo_add": ("item.number",),
    "photo": ("photo.pk",),
    "photo_scale": ("photo.pk",),
    "photo_measure_add": ("photo.pk", "=distance"),
    "photo_edit": ("photo.pk",),
    "photo_file": ("photo.pk", "=thumbnail"),
    "family": ("item.number",),
    "apart_choice": ("item.number",),
    "apart": ("item.number", "copy.number"),
    "apart_paper": ("item.number", "copy.number"),
    "examination_list": ("item.number",),
    "examination_add": ("item.number",),
    "examination": ("examination.pk",),
    "examination_edit": ("examination.pk",),
    "thing_limits": ("item.number",),
    "descent_add": ("item.number",),
    "descent_edit": ("descent.pk",),
    "provenance_add": ("item.number",),
    "provenance_edit": ("provenance.pk",),
    "mark_add": ("copy.number",),
    "mark_edit": ("mark.pk",),
    "label_edit": ("copy.number",),
    "label_approve": ("copy.number",),
    # what allows it
    "commission_list": (),
    "commission_add": (),
    "commission": ("commission.number",),
    "commission_edit": ("commission.number",),
    "commission_close": ("commission.number",),
    "consent_add": ("commission.number",),
    "consent": ("consent.pk",),
    "consent_edit": ("consent.pk",),
    "risk_add": ("item.number",),
    "risk": ("risk.number",),
    "risk_edit": ("risk.number",),
    "risk_sign": ("risk.number",),
    "specification_add": ("commission.number",),
    "specification_edit": ("specification.pk",),
    "concession_add": (),
    "concession": ("concession.number",),
    # what was seen
    "condition_list": (),
    "condition_add": ("item.number",),
    "condition": ("report.number",),
    "condition_edit": ("report.number",),
    "condition_photos": ("report.number",),
    "condition_sign": ("report.number",),
    "finding_add": ("report.number",),
    "finding_edit": ("finding.pk",),
    "finding_compare": ("finding.pk",),
    "finding_delete": ("finding.pk",),
    # papers, people, words, dates
    "document_list": (),
    "document": ("document.pk",),
    "paper_issue": ("=object-tag", "item.number"),
    "party_list": (),
    "party_add": (),
    "party": ("party.pk",),
    "party_edit": ("party.pk",),
    "place_list": (),
    "place_add": (),
    "place": ("place.pk",),
    "place_edit": ("place.pk",),
    "table_list": (),
    "vocabulary_list": (),
    "term_add": (),
    "term_edit": ("term.pk",),
    "duty_list": (),
    "duty_add": (),
    "duty_done": ("duty.pk",),
    # the making
    "range_list": (),
    "range_edit": ("range.pk",),
    "hydrostatic_add": ("item.number",),
    "hydrostatic_edit": ("hydrostatic.pk",),
    "mould_list": (),
    "mould_add": (),
    "mould_edit": ("mould.item.number",),
    "gauge_add": ("mould.item.number",),
    "gauge_edit": ("gauge.pk",),
    "core_list": (),
    "core_add": (),
    "core_edit": ("core.item.number",),
    "bath_list": (),
    "bath_add": (),
    "bath": ("bath.number",),
    "bath_edit": ("bath.number",),
    "limit_edit": ("bath.number", "=copper_sulphate"),
    "bath_diary": ("bath.number",),
    "bath_balance": ("bath.number", "second.number"),
    "addition_add": ("bath.number",),
    "addition_edit": ("addition.pk",),
    "service_add": ("bath.number",),
    "service_edit": ("service.pk",),
    "anode_add": ("bath.number",),
    "anode_edit": ("anode.pk",),
    "anode_weigh": ("anode.pk",),
    "anode_weighing_edit": ("anode_weighing.pk",),
    "analysis_add": ("bath.number",),
    "analysis_edit": ("analysis.number",),
    "throw_test_add": ("bath.number",),
    "throw_test_edit": ("throw_test.pk",),
    "power_unit_list": (),
    "power_unit_add": (),
    "power_unit_edit": ("power_unit.number",),
    "price_list": (),
    "price_add": (),
    "price_edit": ("prices.pk",),
    "run_list": (),
    "run_add": (),
    "run": ("run.number",),
    "run_edit": ("run.number",),
    "run_figures": ("run.number",),
    "run_plan": ("run.number",),
    "run_plan_figures": ("run.number",),
    "run_judge": ("run.number",),
    "run_photo_add": ("run.number",),
    "run_start": ("run.number",),
    "cathode_add": ("run.number",),
    "cathode_edit": ("cathode.pk",),
    "cathode_remove": ("cathode.pk",),
    "cathode_take_out": ("cathode.pk",),
    "cathode_hang_in": ("run.number",),
    "cathode_area": ("cathode.pk",),
    "area_add": ("cathode.pk", "=disc"),
    "area_edit": ("area_part.pk",),
    "area_remove": ("area_part.pk",),
    "area_scan": ("area_part.pk",),
    "reading_add": ("run.number",),
    "reading_edit": ("reading.pk",),
    "readings_paste": ("run.number",),
    "interruption_answer": ("run.number", "interruption.key"),
    "interruption_risk": ("run.number", "interruption.key"),
    "risk_rule_list": (),
    "risk_rule_add": (),
    "risk_rule_edit": ("risk_rule.pk",),
    "coupon_add": ("shell.item.number",),
    "coupon_edit": ("coupon.pk",),
    "failure_list": (),
    "failure_add": (),
    "failure": ("failure.number",),
    "failure_edit": ("failure.number",),
    "failure_photo_add": ("failure.number",),
    "defect_add": ("shell.item.number",),
    "defect_edit": ("defect.pk",),
    "event_add": ("run.number",),
    "event_edit": ("event.pk",),
    "charge_choose": ("run.number",),
    "trace_add": ("run.number",),
    "trace": ("trace.pk",),
    "trace_mapping": ("trace.pk",),
    "trace_decide": ("trace.pk",),
    "trace_withdraw": ("trace.pk",),
    "trace_again": ("trace.pk",),
    "trace_file": ("trace.pk",),
    "header_word_list": (),
    "header_word_add": (),
    "header_word_edit": ("header_word.pk",),
    "shell_weigh": ("cathode.pk",),
    "shell_edit": ("shell.item.number",),
    "mass_strike": ("shell.item.number", "=shell"),
    "thickness_add": ("shell.item.number",),
    "shell_evidence": ("shell.item.number",),
    "copy_walls": ("copy.number",),
    "thickness_edit": ("thickness.pk",),
    "weighing_add": ("core.item.number",),
    "weighing_edit": ("weighing.pk",),
    "closing_add": ("skin.item.number",),
    "closing_edit": ("closing.pk",),
    "closing_sign": ("closing.pk",),
    "copy_list": (),
    "making_up_add": (),
    "making_up_edit": ("copy.number",),
    "finish_add": ("copy.number",),
    "finish_edit": ("finish.pk",),
    "inspection_add": ("copy.number",),
    "inspection_edit": ("inspection.pk",),
    "inspection_sign": ("inspection.pk",),
}

# What is asked on top of the address, where a page without it shows little.
QUERIES = {"search": "?q=medal", "lookup": "?name=originals", "event_add": "?kind=fault"}


def routes() -> dict[str, URLPattern]:
    """Every route of the site by its name."""
    return {pattern.name: pattern for pattern in _walk(get_resolver().url_patterns)}


def _walk(patterns: list[Any]) -> Iterator[URLPattern]:
    for pattern in patterns:
        if isinstance(pattern, URLPattern):
            yield pattern
        else:
            yield from _walk(pattern.url_patterns)


def address(route: str, rows: Mapping[str, Any]) -> str:
    """The page's address for these rows."""
    return reverse(route, args=[_part(part, rows) for part in ADDRESSES[route]]) + QUERIES.get(route, "")


def _part(part: str, rows: Mapping[str, Any]) -> Any:
    if part.startswith("="):
        return part[1:]
    kind, *attributes = part.split(".")
    value = rows[kind]
    for attribute in attributes:
        value = getattr(value, attribute)
    return value
