"""Interruptions of a run: the questions answered, a risk set in one's own name, and the rule itself."""

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import path, reverse

from process.forms.interruptions import InterruptionForm, RiskRuleForm, SetRiskForm
from process.models import InterruptionAnswers, RiskRule, Run
from process.services.interruptions import set_risk
from process.summaries.interruptions import WORDS, Interruption
from process.summaries.runs import summarise
from records import access
from records.views.answering import answer_form

RULE = (
    "Every row that fits counts, the most severe wins, and where no row fits the risk is high. "
    "What nobody has answered counts as its worst answer."
)


def _found(run: Run, key: str) -> Interruption:
    """The interruption of that address; evidence that came later may have moved it away."""
    found = next((each for each in summarise(run).interruptions if each.key == key), None)
    if found is None:
        raise Http404("There is no interruption at that time: open the run and choose one there.")
    return found


def _answers(run: Run, found: Interruption) -> InterruptionAnswers:
    """The row that answers for it; kept under the beginning that is known today."""
    return found.answers.row or InterruptionAnswers(run=run, began_at=found.began_at, ended_at=found.ended_at)


def interruption_answer(request: HttpRequest, number: str, key: str) -> HttpResponse:
    run = access.fetch(request, Run.objects.with_sheet(), number=number)
    access.require(request, "write", InterruptionAnswers)
    found = _found(run, key)
    form = InterruptionForm(request.POST or None, instance=_answers(run, found), found=found, user=request.user)
    return answer_form(
        request, form, title=f"{found.duration} without current", number=number, verb="Keep the answers",
        sentence="What the layers of the wall are worth hangs on these answers.",
        then=InterruptionAnswers.get_absolute_url, back_url=f"{run.get_absolute_url()}#interruptions",
    )  # fmt: skip


def interruption_risk(request: HttpRequest, number: str, key: str) -> HttpResponse:
    run = access.fetch(request, Run.objects.with_sheet(), number=number)
    party, role = access.signer(request, "set lamination risk")
    found = _found(run, key)
    form = SetRiskForm(request.POST or None, instance=_answers(run, found))

    def act(form: SetRiskForm) -> InterruptionAnswers:
        cleaned = form.cleaned_data
        return set_risk(
            answers=form.instance, risk=cleaned["set_risk"], reason=cleaned["set_risk_reason"], party=party, role=role
        )

    return answer_form(
        request, form, title="Risk of the boundary", number=number, verb="Set it in my name", act=act,
        sentence=f"The rule says {WORDS[found.verdict.risk]}: {found.rule_words}.",
        then=InterruptionAnswers.get_absolute_url, back_url=f"{run.get_absolute_url()}#interruptions",
    )  # fmt: skip


def risk_rule_list(request: HttpRequest) -> HttpResponse:
    access.require(request, "view", RiskRule)
    return render(request, "process/risk_rule_list.html", {"rows": RiskRule.objects.all(), "sentence": RULE})


def risk_rule_add(request: HttpRequest) -> HttpResponse:
    access.require(request, "write", RiskRule)
    form = RiskRuleForm(request.POST or None)
    return _answer_rule(request, form, "A row of the rule")


def risk_rule_edit(request: HttpRequest, pk: int) -> HttpResponse:
    row = access.fetch(request, RiskRule, to="write", pk=pk)
    return _answer_rule(request, RiskRuleForm(request.POST or None, instance=row), row.words)


def _answer_rule(request: HttpRequest, form: RiskRuleForm, title: str) -> HttpResponse:
    back = reverse("risk_rule_list")
    return answer_form(request, form, title=title, sentence=RULE, verb="Keep", back_url=back, then=lambda _: back)


urls = [
    path("runs/<str:number>/interruptions/<str:key>/", interruption_answer, name="interruption_answer"),
    path("runs/<str:number>/interruptions/<str:key>/risk/", interruption_risk, name="interruption_risk"),
    path("risk-rule/", risk_rule_list, name="risk_rule_list"),
    path("risk-rule/new/", risk_rule_add, name="risk_rule_add"),
    path("risk-rule/<int:pk>/edit/", risk_rule_edit, name="risk_rule_edit"),
]
