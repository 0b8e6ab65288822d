"""Who stands beside a line: the people of the house, by their initials or names."""

from typing import Any

from django import forms


def person_field(form: forms.ModelForm, name: str, user: Any = None) -> None:
    """Offer in this field the one who is signed in."""
    if user is not None and form.instance._state.adding:
        form.offer(name, getattr(user, "party", None))
