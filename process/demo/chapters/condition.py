"""Condition reports: findings carried over from the last one, compared, added to, and signed."""

from process.demo.acting import role_of, step, without
from process.demo.chapters.mapping import draw_all, lay_over
from process.demo.chapters.objects import photograph
from process.demo.rows import Table, find, save
from process.demo.studio import Studio
from records.models import ConditionReport, Finding, Item, Photo
from records.services.addenda import add_to_report
from records.services.condition import carry_over, compare_finding, next_position
from records.services.signing import sign_report


def tell(part: Table, studio: Studio) -> None:
    for table in part.get("report", []):
        if table["item"] in _made_here(part):
            continue
        report_on(table, studio)


def report_on(table: Table, studio: Studio) -> ConditionReport:
    """One report from its first photograph to its signature (`signed = false` leaves it open)."""
    photograph(find(Item, table["item"]), table, studio)
    with step(table) as party:
        columns = without(table, "finding", "photo", "pair", "signed", "addendum")
        photos = [photo["name"] for photo in table.get("photo", [])]
        report = carry_over(save(ConditionReport, columns | {"photos": photos}, examiner=party))
        pictures = {photo["name"]: photo["picture"] for photo in table.get("photo", [])}
        for finding in table.get("finding", []):
            draw_all(_find(report, finding), finding, pictures)
        for pair in table.get("pair", []):
            lay_over(report, pair, pictures)
        if table.get("signed", True):
            sign_report(report=report, party=party, role=role_of(party))
    for added in table.get("addendum", []):
        _add(report, added)
    return report


def _add(report: ConditionReport, table: Table) -> None:
    """What came later, and is kept apart from the signed text."""
    photos = Photo.objects.filter(item=report.item_id, caption__in=table.get("photos", []))
    with step(table) as party:
        add_to_report(report=report, words=table["words"], photos=photos, party=party, role=role_of(party))


def _find(report: ConditionReport, table: Table) -> Finding:
    if "carried" in table:
        old = report.findings.get(position_count=table["carried"])
        return compare_finding(finding=old, comparison=table["comparison"])
    position = next_position(report)
    return save(Finding, without(table, "drawn"), report=report, position_count=position,
                first_seen_on=report.examined_on)  # fmt: skip


def _made_here(part: Table) -> set[str]:
    """Copies are examined in their own chapter, once they exist."""
    return {table["number"] for table in part.get("copy", [])}
