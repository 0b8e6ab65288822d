"""The address of every page, made from rows: a new page is added here or in `making_addresses`."""

from collections.abc import Mapping
from typing import Any

from django.urls import reverse

from tests.making_addresses import MAKING
from tests.routes import routes

__all__ = ["ADDRESSES", "address", "routes"]

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
    "photo_crop": ("photo.pk",),
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
    "mark_plan": ("item.number",),
    "rule_facts": ("copy.number",),
    "original_marks": ("copy.number",),
    "suppressed_add": ("copy.number",),
    "suppressed_edit": ("suppressed.pk",),
    "mark_rule_list": (),
    "rule_check": ("=us-copy.height",),
    "mark_rule_add": (),
    "mark_rule_edit": ("mark_rule.pk",),
    "label_edit": ("copy.number",),
    "label_approve": ("copy.number",),
    "label_sheet": (),
    "label_sheet_file": ("job.token",),
    "handover_list": (),
    "handover_add": ("copy.number",),
    "handover": ("handover.number",),
    "handover_edit": ("handover.number",),
    "handover_out": ("handover.number",),
    "handover_back": ("lent.number",),
    "handover_call_off": ("handover.number",),
    "disposal_add": ("second_copy.number",),
    "disposal_edit": ("disposal.number",),
    "disposal_done": ("disposal.number",),
    "handling_add": ("copy.number",),
    "handling_edit": ("handling.pk",),
    "public_copy": ("copy.number",),
    "public_photo": ("copy.number",),
    # what allows it
    "commission_list": (),
    "commission_add": (),
    "commission": ("commission.number",),
    "commission_edit": ("commission.number",),
    "commission_close": ("commission.number",),
    "commission_reopen": ("commission.number",),
    "consent_add": ("commission.number",),
    "consent": ("consent.pk",),
    "consent_edit": ("consent.pk",),
    "compatibility_list": (),
    "compatibility_add": (),
    "compatibility_edit": ("compatibility.pk",),
    "risk_add": ("item.number",),
    "risk": ("risk.number",),
    "risk_edit": ("risk.number",),
    "risk_sign": ("risk.number",),
    "specification_list": ("commission.number",),
    "specification_add": ("commission.number",),
    "specification_sign": ("specification.pk",),
    "specification_edit": ("specification.pk",),
    "concession_add": (),
    "concession": ("concession.number",),
    # what was seen
    "condition_list": (),
    "condition_add": ("item.number",),
    "condition": ("report.number",),
    "condition_edit": ("report.number",),
    "condition_photos": ("report.number",),
    "addendum_add": ("report.number",),
    "condition_sign": ("report.number",),
    "finding_add": ("report.number",),
    "finding_edit": ("finding.pk",),
    "finding_compare": ("finding.pk",),
    "finding_delete": ("finding.pk",),
    "finding_place": ("finding.pk",),
    "finding_draw": ("finding.pk", "photo.pk", "=polygon"),
    "finding_redraw": ("finding_mark.pk",),
    "finding_mark_delete": ("finding_mark.pk",),
    "incident": ("incident.number",),
    "photo_pair_add": ("report.number",),
    "photo_pair": ("photo_pair.pk",),
    "photo_pair_points": ("photo_pair.pk", "=before"),
    "survey_list": (),
    "survey_paper": (),
    "survey_due": (),
    "survey_rule_edit": ("survey_rule.pk",),
    "survey_date": ("copy.number",),
    "survey_date_withdraw": ("survey_date.item.number",),
    "condition_map": ("report.number", "photo.pk"),
    "condition_annotations": ("report.number",),
    "condition_manifest": ("report.number",),
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
    "vocabulary_skos": (),
    "vocabulary_import": (),
    "term_add": (),
    "term_edit": ("term.pk",),
    "duty_list": (),
    "duty_add": (),
    "duty_done": ("duty.pk",),
    **MAKING,
}

# What is asked on top of the address, where a page without it shows little.
QUERIES = {"search": "?q=medal", "lookup": "?name=originals", "event_add": "?kind=fault"}


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
