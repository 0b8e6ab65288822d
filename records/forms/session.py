"""Signing in: Django's form with sentences of our own."""

from django.contrib.auth.forms import AuthenticationForm


class SignInForm(AuthenticationForm):
    error_messages = {
        "invalid_login": "No one signs in with this name and password. Capitals count in both. "
        "If the password is forgotten, the administrator can set a new one.",
        "inactive": "This account is closed. The administrator can open it again.",
    }
