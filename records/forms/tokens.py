"""The same entry sent twice is kept once: each rendered form carries a UUID."""

import uuid
from typing import Any

from django import forms
from django.db import IntegrityError, models, transaction

LOST = (
    "This form had lost its mark against double sending: look whether the entry is there already, "
    "and if not, send it again."
)


class UuidTokenField(forms.UUIDField):
    """A hidden UUID, made anew each time a form is first shown."""

    widget = forms.HiddenInput
    default_error_messages = {
        "required": LOST,
        "invalid": LOST,
    }

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**{"initial": uuid.uuid4, **kwargs})


class SentOnce:
    """For a model form whose model has a `token`: put it before the form class.

    A view may answer a second sending before any check: `if row := form.sent_before(): …`. Without that,
    `save` returns the row that the first sending made, and `was_sent_before` says so. `token_scope` names the
    columns within which a token is unique, as in ("run",); set them on the instance given to the form.
    """

    token_scope: tuple[str, ...] = ()
    was_sent_before = False

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        if self.instance._state.adding:
            self.fields["token"] = UuidTokenField()

    def sent_before(self) -> models.Model | None:
        """The row that the same form made when it was sent first."""
        try:
            token = uuid.UUID(str(self.data.get(self.add_prefix("token"))))
        except ValueError:
            return None
        scope = {name: getattr(self.instance, name) for name in self.token_scope}
        return self._meta.model._base_manager.filter(token=token, **scope).first()

    def _get_validation_exclusions(self) -> set[str]:
        return {*super()._get_validation_exclusions(), "token"}

    def _post_clean(self) -> None:
        super()._post_clean()
        if self.errors.pop("token", None):
            # Nothing was kept under a lost mark; the form comes back with a new one, ready to be sent.
            self.add_error(None, LOST)
            self.data = self.data.copy()
            self.data[self.add_prefix("token")] = str(uuid.uuid4())

    def save(self, commit: bool = True) -> Any:
        if "token" not in self.fields or self.errors:
            return super().save(commit)
        if first := self.sent_before():
            self.was_sent_before = True
            return first
        self.instance.token = self.cleaned_data["token"]
        try:
            with transaction.atomic():
                return super().save(commit)
        except IntegrityError:
            # Sent twice at the same moment: the other one was first.
            first = self.sent_before()
            if first is None:
                raise
            self.was_sent_before = True
            return first
