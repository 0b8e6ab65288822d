"""Condition reports in the making: what the last one hands on, and what a signature closes."""

from django.core.exceptions import ValidationError
from django.db import transaction
from django.db.models import Max

from records.models import ConditionReport, Finding, Item

SIGNED = "This report is signed and stays as it is: write a new report, which begins with the findings of this one."
SAID = ("term", "layer", "location", "extent", "severity", "stability", "urgency", "action", "note")
CARRIED = (*SAID, "position_count")


def last_report(item: Item) -> ConditionReport | None:
    """The latest examination of a thing."""
    return item.condition_reports.order_by("-examined_on", "-number").first()


def carry_over(report: ConditionReport) -> ConditionReport:
    """Begin with the findings of the report compared with, each “not re-examined” until a person says otherwise.

    A finding keeps its number from report to report; its photograph stays behind, since it shows the old state.
    """
    if report.previous is None:
        return report
    with transaction.atomic():
        for old in report.previous.findings.all():
            kept = {name: getattr(old, name) for name in CARRIED}
            seen_on = old.first_seen_on or report.previous.examined_on
            Finding.objects.create(
                report=report, comparison=Finding.Comparison.NOT_REEXAMINED, first_seen_on=seen_on, **kept
            )
    return report


def refuse_if_signed(report: ConditionReport) -> None:
    """Called inside the transaction that writes, so that a signature given meanwhile holds."""
    if ConditionReport.objects.select_for_update().get(pk=report.pk).is_signed:
        raise ValidationError(SIGNED)


def next_position(report: ConditionReport) -> int:
    """The next number of a finding; never one that stood in the report compared with."""
    reports = [report.pk, report.previous_id]
    last = Finding.objects.filter(report__in=reports).aggregate(last=Max("position_count"))["last"]
    return (last or 0) + 1


def compare_finding(*, finding: Finding, comparison: str) -> Finding:
    """Say what became of a finding since the last report."""
    if comparison not in Finding.Comparison.values:
        raise ValidationError("Choose same, worse, better, treated, new or not re-examined.")
    with transaction.atomic():
        refuse_if_signed(finding.report)
        if comparison == Finding.Comparison.NEW and is_carried(finding):
            raise ValidationError(f"Finding {finding.position_count} stands in the last report: it is not new.")
        held = Finding.objects.select_for_update(of=("self",)).get(pk=finding.pk)  # others may have corrected it
        held.comparison = comparison
        held.save()
        finding.comparison, finding.version = comparison, held.version
    return finding


def strike_out(*, finding: Finding) -> None:
    """Take back a finding that was entered by mistake; one that stood in the last report needs an answer instead."""
    with transaction.atomic():
        refuse_if_signed(finding.report)
        if finding.report.previous and is_carried(finding):
            raise ValidationError(
                f"Finding {finding.position_count} stands in {finding.report.previous.number}: "
                "say what became of it (treated, better or not re-examined) instead of striking it out."
            )
        finding.delete()


def is_carried(finding: Finding) -> bool:
    """Whether the finding stood under this number in the report compared with."""
    before = Finding.objects.filter(report=finding.report.previous_id, position_count=finding.position_count)
    return finding.report.previous_id is not None and before.exists()
