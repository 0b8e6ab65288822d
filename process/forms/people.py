"""Who stands beside a line: the people of the house, by their initials."""

from typing import Any

from django import forms

from records.models import Party


class PersonField(forms.ModelChoiceField):
    """A person, shown as the initials that stand on the sheet."""

    def label_from_instance(self, person: Party) -> str:
        return f"{person.initials}  {person.name}" if person.initials else person.name


def person_field(form: forms.ModelForm, name: str, user: Any = None) -> None:
    """Offer people in this field, the one who is signed in first."""
    old = form.fields[name]
    people = Party.objects.filter(kind=Party.Kind.PERSON)
    form.fields[name] = PersonField(
        people, required=old.required, label=old.label, help_text=old.help_text,
        empty_label="choose" if old.required else "not said",
    )  # fmt: skip
    if user is not None and form.instance._state.adding:
        form.offer(name, Party.objects.filter(user=user).values_list("pk", flat=True).first())
