"""Our own words for what Django's form fields say by themselves: what to do, not what went wrong."""

from django import forms

WORDS: dict[type[forms.Field], dict[str, str]] = {
    forms.Field: {"required": "Fill this in: it is needed here."},
    forms.ChoiceField: {"invalid_choice": "“%(value)s” is not on the list: choose from it."},
    forms.ModelChoiceField: {"invalid_choice": "This is not on the list (any more): choose again."},
    forms.ModelMultipleChoiceField: {
        "invalid_choice": "“%(value)s” is not on the list (any more): choose again.",
        "invalid_list": "Choose from the list.",
        "invalid_pk_value": "“%(pk)s” is not on the list: choose again.",
    },
    forms.DateField: {"invalid": "Write the day as 2026-02-16."},
    forms.IntegerField: {"invalid": "Write a whole number."},
    forms.FileField: {"required": "Choose a file.", "empty": "The file is empty: choose another one."},
}


def use_own_words() -> None:
    for field, messages in WORDS.items():
        field.default_error_messages = {**field.default_error_messages, **messages}
