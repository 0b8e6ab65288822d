"""The tables that the museum edits itself, on one page: what each says, and where it is used."""

from dataclasses import dataclass

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import NoReverseMatch, path, reverse

from records import access


@dataclass(frozen=True)
class EditableTable:
    """One table of the museum's own; a route that is not there (records without process) hides it."""

    label: str
    route: str
    sentence: str

    @property
    def url(self) -> str:
        try:
            return reverse(self.route)
        except NoReverseMatch:
            return ""


# In the order in which a piece meets them.
TABLES = (
    EditableTable(
        "Words", "vocabulary_list", "The words that forms offer: findings, materials, defects, each defined."
    ),
    EditableTable(
        "Surfaces and mould materials", "compatibility_list", "Which mould a surface bears: usual, after a test, avoid."
    ),
    EditableTable("Rules on marks", "mark_rule_list", "What marks are held against, and where it is written."),
    EditableTable("Usual values", "range_list", "What is usual and what is possible; a number beyond is asked about."),
    EditableTable("Power units", "power_unit_list", "What each can hold, and what it does after the mains fail."),
    EditableTable(
        "Prices", "price_list", "Labour, metal and energy, by the day from which they hold; plans reckon by them."
    ),
    EditableTable("Risk of an interruption", "risk_rule_list", "The rule that judges time without current."),
    EditableTable("Care", "care_rule_list", "What lead, plaster, silver, acid or resin inside asks of the keeper."),
    EditableTable(
        "Words above columns", "header_word_list", "How loggers name their columns, so that a trace is read."
    ),
)


def table_list(request: HttpRequest) -> HttpResponse:
    access.require(request, "view")
    return render(request, "records/table_list.html", {"tables": [table for table in TABLES if table.url]})


urls = [path("tables/", table_list, name="table_list")]
