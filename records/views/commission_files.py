"""The file of a commission is closed and opened again."""

from django.http import HttpRequest, HttpResponse
from django.urls import path

from records import access
from records.commission_file import file_rows, open_matters, read_file
from records.forms.commission_files import CloseForm, ReopenForm
from records.services.commission_files import close_file, reopen_file
from records.views.answering import answer_form

CLOSING = "A file is closed when every copy is made, marked, accepted and named, and no duty is left."


def commission_close(request: HttpRequest, number: str) -> HttpResponse:
    party, role = access.signer(request, "close commission")
    commission = access.fetch(request, file_rows(), to="close commission", number=number)
    return answer_form(
        request, CloseForm(request.POST or None), title=f"Close the file of {number}", number=number,
        sentence=CLOSING, verb="Close the file", back_url=commission.get_absolute_url(),
        template="records/commission_close.html", matters=open_matters(read_file(commission)),
        act=lambda form: close_file(commission=commission, person=party, role=role, **form.cleaned_data),
        then=lambda _: commission,
    )  # fmt: skip


def commission_reopen(request: HttpRequest, number: str) -> HttpResponse:
    party, role = access.signer(request, "close commission")
    commission = access.fetch(request, file_rows(), to="close commission", number=number)
    return answer_form(
        request, ReopenForm(request.POST or None), title=f"Open the file of {number} again", number=number,
        sentence="Work goes on under the same number; when it was closed, and by whom, stays written.",
        verb="Open it again", back_url=commission.get_absolute_url(),
        act=lambda form: reopen_file(commission=commission, person=party, role=role, **form.cleaned_data),
        then=lambda _: commission,
    )  # fmt: skip


urls = [
    path("commissions/<str:number>/close/", commission_close, name="commission_close"),
    path("commissions/<str:number>/reopen/", commission_reopen, name="commission_reopen"),
]
