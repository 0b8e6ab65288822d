"""Requests, the owners' consents, risk assessments, specifications, and the concessions given on the way."""

from process.demo.acting import role_of, step, without
from process.demo.rows import Table, build, find, save
from process.demo.studio import Studio
from records.models import (
    Commission,
    Concession,
    Consent,
    Item,
    MarkRule,
    RiskAssessment,
    RuleCheck,
    Specification,
)
from records.services.permissions import give_concession, record_duties_of
from records.services.signing import sign


def tell(part: Table, studio: Studio) -> None:
    for table in part.get("commission", []):
        with step(table):
            save(Commission, without(table))
    for table in part.get("consent", []):
        with step(table):
            record_duties_of(consent=save(Consent, without(table)))
    for table in part.get("mark_rule", []):
        with step(table):
            save(MarkRule, without(table))
    for table in part.get("rule_compared", []):
        with step(table) as party:
            save(RuleCheck, without(table, "rule"), code=table["rule"], checked_by=party)
    for table in part.get("risk", []):
        _signed(RiskAssessment, table)
    for table in part.get("specification", []):
        _signed(Specification, table)


def _signed(model: type, table: Table) -> None:
    with step(table) as party:
        sign(row=save(model, without(table)), party=party, role=role_of(party))


def concede(tables: list[Table], given: str) -> None:
    """The concessions that a chapter needs, when it needs them: `given` names what they are for."""
    for table in tables:
        if table["for"] != given:
            continue
        with step(table) as party:
            columns = without(table, "items", "for")
            build(Concession, columns, unset=("given_by", "given_role"))
            give_concession(
                items=[find(Item, number) for number in table["items"]], given_by=party, role=role_of(party), **columns
            )
