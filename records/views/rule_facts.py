"""What rules on marks ask: of a piece what nothing else records, of a rule the day on which its text was compared."""

from django.http import Http404, HttpRequest, HttpResponse
from django.urls import path, reverse

from records import access, clock, marking
from records.forms.mark_rules import RuleCheckForm, RuleFactsForm
from records.models import Item, RuleCheck, RuleFacts
from records.views.answering import answer_form

ASKED = "Only what rules on marks, coins and precious metal ask; what is left empty is judged as not recorded."
COMPARED = "Read the text in force, then say when, which version, and whether it still asks this: "


def rule_facts(request: HttpRequest, number: str) -> HttpResponse:
    item = access.fetch(request, Item, number=number)
    access.require(request, "write", RuleFacts)
    row = RuleFacts.objects.filter(item=item).first() or RuleFacts(item=item)
    back = reverse("mark_plan", args=[number])
    return answer_form(
        request, RuleFactsForm(request.POST or None, instance=row), title=f"What rules ask of {number}", sentence=ASKED,
        verb="Keep", back_url=back, then=lambda _: back,
    )  # fmt: skip


def rule_check(request: HttpRequest, code: str) -> HttpResponse:
    access.require(request, "write", RuleCheck)
    rule = next((rule for rule in marking.load_rules() if rule.id == code), None)
    if rule is None:
        raise Http404("No rule of this name came with the register.")
    row = RuleCheck.objects.filter(code=code).first() or RuleCheck(code=code)
    offered = {
        "checked_on": clock.today(),
        "text_version": rule.text_version,
        "checked_by": access.party_of(request.user),
    }
    back = reverse("mark_rule_list")
    return answer_form(
        request, RuleCheckForm(request.POST or None, instance=row, initial=offered if row._state.adding else None),
        title=f"Text compared: {rule.citation}", sentence=f"{COMPARED}{rule.asks}", verb="Keep",
        back_url=back, then=lambda _: back,
    )  # fmt: skip


urls = [
    path("things/<str:number>/marks/facts/", rule_facts, name="rule_facts"),
    path("mark-rules/<str:code>/compared/", rule_check, name="rule_check"),
]
