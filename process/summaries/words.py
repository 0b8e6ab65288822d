"""A run in one sentence."""

from datetime import datetime

from django.utils import timezone

from process.chemistry.metals import IONS
from process.summaries.runs import RunSummary
from records.units import show


def clock_time(at: datetime) -> str:
    """16 Feb, 09:00 by the museum's clock."""
    local = timezone.localtime(at)
    return f"{local.day} {local:%b}, {local:%H:%M}"


def metal_word(ion: str) -> str:
    """“copper” for Cu2+."""
    return IONS[ion].name.split("(")[0] if ion in IONS else ion


def run_sentence(summary: RunSummary) -> str:
    """What this run is and where it stands."""
    run, code = summary.run, summary.standing.code
    head = f"{metal_word(run.ion).capitalize()} in bath {run.bath.number}"
    if code == "planned":
        start = f" for {clock_time(run.planned_start_at)}" if run.planned_start_at else ""
        return f"{head}, planned{start}: {_target(summary)}."
    if summary.sheet.started_at is None:
        return f"{head}, {code}; it never went into the bath."
    since = f"since {clock_time(summary.sheet.started_at)}"
    if summary.standing.is_live:
        due = summary.prospect.next_reading_at if summary.prospect else None
        after = f"; next reading {clock_time(due)}" if due and code == "running" else "; no current flows"
        return f"{head} {since}; {_delivered(summary)}{after}."
    return f"{head}, {_span(summary)}; {_delivered(summary)}{_result(summary)}."


def _target(summary: RunSummary) -> str:
    run = summary.run
    wanted = f"{show(run.planned_thickness_mm, '_mm')} at {show(run.planned_current_density_a_dm2, '_a_dm2')}"
    if summary.plan is None or summary.plan.charge.value is None:
        return wanted
    return f"{wanted}, {show(summary.plan.charge.value, '_ah')} in {show(summary.plan.time.value, '_h')}"


def _delivered(summary: RunSummary) -> str:
    value = summary.charge.chosen.value
    if value is None:
        return "charge not known"
    planned = summary.charge.chosen.target
    return f"{show(value, '_ah')} of {show(planned, '_ah')}" if planned else show(value, "_ah")


def _span(summary: RunSummary) -> str:
    sheet = summary.sheet
    if sheet.stopped_at is None:
        return f"since {clock_time(sheet.started_at)}"
    began, ended = timezone.localtime(sheet.started_at), timezone.localtime(sheet.stopped_at)
    if began.date() == ended.date():
        return f"{began.day} {began:%b %Y}, {began:%H:%M} to {ended:%H:%M}"
    year = "" if began.year == ended.year else f" {began.year}"
    return f"{began.day} {began:%b}{year}, {began:%H:%M} to {ended.day} {ended:%b %Y}, {ended:%H:%M}"


def _result(summary: RunSummary) -> str:
    if summary.result is None or summary.result.efficiency.value is None:
        return ""
    return f", efficiency {show(summary.result.efficiency.value, '_pct')} ({summary.result.band})"
