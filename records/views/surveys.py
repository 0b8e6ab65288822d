"""Surveys: the round by place, the museum's intervals, and a date of its own for one piece."""

from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import render
from django.urls import path, reverse

from records import access, clock
from records.forms.surveys import RoundFilter, SurveyDateForm, SurveyRuleForm, WithdrawnDateForm
from records.models import Item, SurveyDate, SurveyRule
from records.pdf.page_sizes import PAGE_SIZES, page_size
from records.services.surveys import withdraw_date
from records.surveys import Survey, stops_due, surveyed, surveys_of
from records.views.answering import answer_form
from records.views.listing import PAGE_SIZE, Page, export, wants_export
from records.views.writing import correct

COLUMNS = [
    ("place", lambda survey: survey.place or ""), ("number", "item__number"), ("title", "item__title"),
    ("due on", "due_on"), ("state", "state_words"), ("because", "because"),
    ("last report", lambda survey: survey.last.number if survey.last else ""),
]  # fmt: skip
RULE = "How soon such copies are looked at again; a piece with a date of its own keeps it."
ON_PAPER = 300  # more is no round for one day
COPIES = Item.objects.copies().select_related("place", "survey_date")
DATE = "It is due on {:%-d %B %Y} ({}). A date set here holds until a report is signed after it."


WITHDRAWN = "A person set {:%-d %B %Y} ({}). Withdrawn, the museum’s table counts again; the history keeps both."


def survey_list(request: HttpRequest) -> HttpResponseBase:
    access.require(request, "view", Item)
    every = surveys_of(surveyed())
    form = RoundFilter(request.GET, list(dict.fromkeys(survey.place for survey in every)))
    rows = form.narrow(every)
    if wants_export(request):
        return export(rows, COLUMNS, "surveys")
    begin = urlencode({"occasion": "survey", **form.carried})
    context = {
        "form": form, "page": _page(rows, request.GET.get("after", "")), "count": len(rows), "begin": begin,
        "later": len(every) - len(rows), "rules": SurveyRule.objects.all(), "sizes": PAGE_SIZES,
        "too_many": len(rows) > ON_PAPER,
    }  # fmt: skip
    return render(request, "records/survey_list.html", context)


def _page(rows: list[Survey], after: str) -> Page:
    """By the number after which it begins; one that is no longer due begins at the beginning."""
    numbers = [survey.item.number for survey in rows]
    start = numbers.index(after) + 1 if after in numbers else 0
    shown = rows[start : start + PAGE_SIZE]
    return Page(shown, shown[-1].item.number if start + PAGE_SIZE < len(rows) else None)


def survey_paper(request: HttpRequest) -> HttpResponse:
    """The round as it is shown, to take along; made anew each time it is asked for, no issued paper."""
    from records.reports.survey_round import make_round  # the paper kit is read when a paper is made

    access.require(request, "view", Item)
    every = surveys_of(surveyed())
    form = RoundFilter(request.GET, list(dict.fromkeys(survey.place for survey in every)))
    rows = form.narrow(every)[:ON_PAPER]
    size = page_size(request.GET.get("page_size", ""))
    content = make_round(rows, words=form.words, light=form.carried, now=clock.now(), page_size=size)
    answer = HttpResponse(content, content_type="application/pdf")
    answer["Content-Disposition"] = 'inline; filename="surveys.pdf"'
    return answer


def survey_due(request: HttpRequest) -> HttpResponseBase:
    """The part of the day's list that asks for surveys; fetched by the page, which asks enough already."""
    access.require(request, "view", Item)
    if not request.htmx:
        return survey_list(request)
    return render(request, "records/_surveys_due.html", {"stops": stops_due()})


def survey_rule_edit(request: HttpRequest, pk: int) -> HttpResponse:
    return correct(
        request, SurveyRuleForm, where={"pk": pk}, title=lambda rule: f"Surveys: {rule.label.lower()}", sentence=RULE,
        then=lambda rule: f"{reverse('survey_list')}#intervals",
    )  # fmt: skip


def survey_date(request: HttpRequest, number: str) -> HttpResponse:
    access.require(request, "write", SurveyDate)
    item = access.fetch(request, COPIES, number=number)
    (now,) = surveys_of([item])
    row = getattr(item, "survey_date", None) or SurveyDate(item=item)
    return answer_form(
        request, SurveyDateForm(request.POST or None, instance=row), title=f"Next survey of {number}",
        sentence=DATE.format(now.due_on, now.because), verb="Set the date", back_url=reverse("survey_list"),
        then=SurveyDate.get_absolute_url, template="records/survey_date.html", set_already=not row._state.adding,
        number=number,
    )  # fmt: skip


def survey_date_withdraw(request: HttpRequest, number: str) -> HttpResponse:
    row = access.fetch(request, SurveyDate.objects.select_related("item"), to="write", item__number=number)
    return answer_form(
        request, WithdrawnDateForm(request.POST or None, instance=row), title=f"Withdraw the survey date of {number}",
        sentence=WITHDRAWN.format(row.due_on, row.because), verb="Withdraw the date", back_url=reverse("survey_list"),
        act=lambda form: withdraw_date(row=row, reason=form.cleaned_data["reason"]),
        then=lambda _: reverse("survey_list"),
    )  # fmt: skip


urls = [
    path("surveys/", survey_list, name="survey_list"),
    path("surveys/list.pdf", survey_paper, name="survey_paper"),
    path("surveys/due/", survey_due, name="survey_due"),
    path("surveys/intervals/<int:pk>/edit/", survey_rule_edit, name="survey_rule_edit"),
    path("things/<str:number>/survey/", survey_date, name="survey_date"),
    path("things/<str:number>/survey/withdraw/", survey_date_withdraw, name="survey_date_withdraw"),
]
