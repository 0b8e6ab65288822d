"""The papers: issued by the persons who issue them, and stored."""

from django.db import models

from process.demo.acting import role_of, step
from process.demo.rows import Table
from process.models import Run
from records import extensions
from records.models import Commission, ConditionReport, Disposal, Document, Handover, Item, RiskAssessment
from records.services.papers import issue

SUBJECTS: tuple[type[models.Model], ...] = (Item, ConditionReport, Run, Handover, Disposal, Commission, RiskAssessment)


def issue_all(part: Table) -> list[Document]:
    """Papers whose kind is registered; a register without a part of the site issues fewer."""
    return [_issue(table) for table in part.get("paper", []) if table["kind"] in extensions.paper_kinds]


def _issue(table: Table) -> Document:
    with step(table) as party:
        return issue(kind=table["kind"], subject=_subject(table["of"]), party=party, role=role_of(party))


def _subject(number: str) -> models.Model:
    return next(row for model in SUBJECTS if (row := model._default_manager.filter(number=number).first()))
