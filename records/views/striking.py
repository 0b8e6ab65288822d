"""One page for striking out a wrong row, whatever its kind, and for putting it back."""

from django import forms
from django.http import Http404, HttpRequest, HttpResponse
from django.urls import path

from records import access, extensions
from records.services.striking import put_back, strike_out
from records.views.answering import answer_form

STRIKE = "It stays where it is, struck through, with your name and reason; nothing is counted from it any more."
BACK = "It was struck out by {}: “{}”. Put back, it counts again; the history keeps both."


class ReasonForm(forms.Form):
    reason = forms.CharField(
        max_length=300, help_text="“Reading of another run”, “slip of the balance”.",
        error_messages={"required": "Say why: figures that vanish without a reason prove nothing."},
    )  # fmt: skip


def strike(request: HttpRequest, kind: str, pk: int) -> HttpResponse:
    if kind not in extensions.strikables:
        raise Http404("No such kind of row.")
    source = extensions.strikables[kind]
    row = access.fetch(request, source.rows(), to="write", pk=pk)
    party, back = access.party_of(request.user), source.back(row)
    form = ReasonForm(request.POST or None)

    def act(form: ReasonForm) -> str:
        reason = form.cleaned_data["reason"]
        if row.is_struck:
            put_back(row=row, kind=kind, reason=reason)
        else:
            strike_out(row=row, kind=kind, party=party, reason=reason)
        return back

    sentence = BACK.format(row.struck_by, row.struck_reason) if row.is_struck else STRIKE
    verb, title = ("Put it back", "Put back") if row.is_struck else ("Strike it out", "Strike out")
    return answer_form(request, form, title=f"{title}: {source.words(row)}", sentence=sentence, verb=verb, act=act,
                       then=lambda address: address, back_url=back)  # fmt: skip


urls = [path("strike-out/<str:kind>/<int:pk>/", strike, name="strike")]
