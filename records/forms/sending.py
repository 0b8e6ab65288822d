"""Each form that is shown carries a UUID; a double click sends it twice, and it is acted on once."""

import hashlib
import uuid
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import timedelta

from django import forms
from django.db import IntegrityError, transaction
from django.http import HttpRequest

from records import clock
from records.models import SentForm

NAME = "sending"
KEPT = timedelta(days=30)
SENT_OTHERWISE = (
    "This form was saved already, with other words than these: look whether what you mean stands there. If this is "
    "something further, save it again; to correct what stands, open it."
)


class SentAlready(Exception):
    """The same form came a second time, while or after the first was acted on."""


class MarkField(forms.CharField):
    """The mark of a showing; it says nothing about the record, so that a form with nothing else new is unchanged."""

    def has_changed(self, initial: object, data: object) -> bool:
        return False


def offer(form: forms.BaseForm) -> None:
    """The hidden UUID, on whatever form it is."""
    form.fields[NAME] = MarkField(required=False, widget=forms.HiddenInput, initial=uuid.uuid4)


def renew(form: forms.BaseForm) -> None:
    """What is sent next counts as a new sending."""
    form.data = form.data.copy()
    for name in (NAME, "token"):  # a line of a sheet carries a mark of its own besides
        if name in form.fields:
            form.data[form.add_prefix(name)] = str(uuid.uuid4())


def token_of(form: forms.BaseForm) -> uuid.UUID | None:
    try:
        return uuid.UUID(str(form.data.get(form.add_prefix(NAME))))
    except ValueError:
        return None


def digest_of(request: HttpRequest) -> str:
    """Who sent what to which address, but for the marks that each showing of a form changes."""
    left = {"csrfmiddlewaretoken", NAME}
    said = sorted((name, values) for name, values in request.POST.lists() if name not in left)
    files = [(name, file.name, file.size) for name, several in request.FILES.lists() for file in several]
    return hashlib.sha256(repr((request.user.pk, request.get_full_path(), said, files)).encode()).hexdigest()


def sent_before(form: forms.BaseForm) -> SentForm | None:
    token = token_of(form)
    return SentForm.objects.filter(token=token).first() if token else None


def claim(form: forms.BaseForm, request: HttpRequest) -> SentForm | None:
    """Take this sending, inside the transaction that acts on it; whoever comes second waits and is told."""
    token = token_of(form)
    if token is None:
        return None
    SentForm.objects.filter(sent_at__lt=clock.now() - KEPT).delete()
    try:
        with transaction.atomic():
            return SentForm.objects.create(token=token, digest=digest_of(request))
    except IntegrityError as error:
        raise SentAlready from error


@contextmanager
def taken(form: forms.BaseForm, request: HttpRequest) -> Iterator[None]:
    """A sending whose work is done outside a transaction, such as keeping files; given free again if it fails."""
    claimed = claim(form, request)
    try:
        yield
    except BaseException:
        if claimed:
            claimed.delete()
        raise
