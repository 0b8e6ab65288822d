"""Signing in: Django's form with sentences of our own, and a wait after several wrong passwords."""

from typing import Any

from django.contrib.auth.forms import AuthenticationForm
from django.core.exceptions import ValidationError

from records.services import sign_in


class SignInForm(AuthenticationForm):
    error_messages = {
        "invalid_login": "No one signs in with this name and password. Capitals count in both. "
        "If the password is forgotten, the administrator can set a new one.",
        "inactive": "This account is closed. The administrator can open it again.",
        "wait": "Too many wrong passwords from here: wait %(minutes)s, then try again. "
        "If the password is forgotten, the administrator can set a new one.",
    }

    def clean(self) -> dict[str, Any]:
        """The password is not even looked at while the person has to wait."""
        who = {"name": self.data.get("username", ""), "address": self.request.META.get("REMOTE_ADDR", "")[:64]}
        if minutes := sign_in.minutes_to_wait(**who):
            words = f"{minutes} minute{'s' if minutes > 1 else ''}"
            raise ValidationError(self.error_messages["wait"], "wait", {"minutes": words})
        try:
            cleaned = super().clean()
        except ValidationError:
            sign_in.keep_failure(**who)
            raise
        sign_in.forget_failures(**who)
        return cleaned
