"""What the runs teach: answers about interruptions, coupons, defects, and the failure library."""

from process.demo.acting import step, without
from process.demo.rows import Table, build, find, instant, save
from process.demo.studio import Studio
from process.models import CouponTest, Defect, Failure, InterruptionAnswers, Run, Shell
from process.summaries.runs import summarise


def tell(part: Table, studio: Studio) -> None:
    for table in part.get("interruption", []):
        _answer(table)
    for table in part.get("coupon", []):
        with step(table) as party:
            save(CouponTest, without(table, "shell"), shell=find(Shell, table["shell"]), tested_by=party)
    for table in part.get("defect", []):
        with step(table) as party:
            save(Defect, without(table, "shell"), shell=find(Shell, table["shell"]), found_by=party)
    for table in part.get("failure", []):
        with step(table) as party:
            save(Failure, without(table), recorded_by=party)


def _answer(table: Table) -> None:
    """For the interruption that the register finds at that instant."""
    with step(table) as party:
        run = Run.objects.with_sheet().get(number=table["run"])
        found = next(each for each in summarise(run).interruptions if each.began_at == instant(table["at"]))
        row = build(
            InterruptionAnswers, without(table, "run", "at", "activation"), run=run, began_at=found.began_at,
            ended_at=found.ended_at, activation=table["activation"], answered_by=party,
        )  # fmt: skip
        row.save()
