"""Copies in other hands and under many hands: handed over with their papers, taken back, handled."""

from typing import Any

from process.demo.acting import step, without
from process.demo.chapters import papers
from process.demo.rows import Table, build, find, save, values_of
from process.demo.studio import Studio
from process.models import Expense, Run, WorkEstimate, WorkHours
from records.models import Commission, Disposal, HandlingSession, Handover, Item, SurveyDate, Tracked
from records.services.disposals import carry_out, decide
from records.services.handovers import agree, hand_over, take_back
from records.services.holding import log_handling

NESTED = ("item", "paper", "out", "back", "paper_after")


def tell(part: Table, studio: Studio) -> None:
    for table in part.get("handover", []):
        _hand_over(table)
    for table in part.get("handling", []):
        with step(table):
            log_handling(session=build(HandlingSession, without(table, "item"), item=find(Item, table["item"])))
    for table in part.get("survey_date", []):
        with step(table):
            save(SurveyDate, without(table, "item"), item=find(Item, table["item"]))


def tell_of_work(part: Table, studio: Studio) -> None:
    """Hours and bills as they were written down, and what was planned before."""
    for name, model in (("work", WorkHours), ("bill", Expense)):
        for table in part.get(name, []):
            with step(table):
                save(model, without(table, "of", "number"), **_for(table))
    for table in part.get("estimate", []):
        with step(table):
            commission = find(Commission, table["number"])
            save(WorkEstimate, without(table, "number"), commission=commission)


def _for(table: Table) -> dict:
    """The copy or run with its commission, as the page fills them in."""
    if table["of"] == "run":
        run = find(Run, table["number"])
        return {"run": run, "commission": run.commission}
    copy = find(Item, table["number"])
    return {"copy": copy, "commission": copy.made_for.first()}


def tell_of_ends(part: Table, studio: Studio) -> None:
    """What was given up: decided, then carried out."""
    for table in part.get("disposal", []):
        with step(table):
            columns = without(table, "item", "done")
            row = decide(disposal=build(Disposal, columns, item=find(Item, table["item"])))
        with step(table["done"]):
            carry_out(disposal=filled(row, without(table["done"])))


def _hand_over(table: Table) -> None:
    """Agreed, its papers issued, handed over and taken back, as far as it has come."""
    with step(table):
        agree(handover=build(Handover, without(table, *NESTED), item=find(Item, table["item"])))
    _issue(table, "paper")
    for name, act in (("out", hand_over), ("back", take_back)):
        if name in table:
            with step(table[name]):
                act(handover=filled(find(Handover, table["number"]), without(table[name])))
    _issue(table, "paper_after")


def filled(row: Tracked, columns: Table) -> Any:
    """The columns of a later moment, checked as its form checks them."""
    for name, value in values_of(type(row), columns).items():
        setattr(row, name, row.as_typed | value if name == "as_typed" else value)
    row.full_clean()
    return row


def _issue(table: Table, name: str) -> None:
    papers.issue_all({"paper": [{"of": table["number"]} | paper for paper in table.get(name, [])]})
