"""Our own words for what Django's form fields say by themselves: what to do, not what went wrong."""

from django import forms
from django.core import validators

from records.forms.unseen import refuse_endless, refuse_unseen

WORDS: dict[type[forms.Field], dict[str, str]] = {
    forms.Field: {"required": "Fill this in: it is needed here."},
    forms.ChoiceField: {
        "required": "Choose one: it is needed here.",
        "invalid_choice": "“%(value)s” is not on the list: choose from it.",
    },
    forms.ModelChoiceField: {"invalid_choice": "This is not on the list (any more): choose again."},
    forms.ModelMultipleChoiceField: {
        "invalid_choice": "“%(value)s” is not on the list (any more): choose again.",
        "invalid_list": "Choose from the list.",
        "invalid_pk_value": "“%(pk)s” is not on the list: choose again.",
    },
    forms.DateField: {"invalid": "Write the day as 2026-02-16."},
    forms.IntegerField: {"invalid": "Write a whole number."},
    forms.EmailField: {"invalid": "Write an address such as name@museum.example."},
    forms.FileField: {"required": "Choose a file.", "empty": "The file is empty: choose another one."},
}


LIMITS: dict[type[validators.BaseValidator], str] = {
    validators.MaxLengthValidator: "At most %(limit_value)d characters fit here, not %(show_value)d: shorten it.",
    validators.MinLengthValidator: "At least %(limit_value)d characters are needed here.",
    validators.MaxValueValidator: "At most %(limit_value)s is possible here: look at the number again.",
    validators.MinValueValidator: "At least %(limit_value)s is possible here: look at the number again.",
}


def use_own_words() -> None:
    """Before any form is made: fields take these over when they are declared."""
    forms.CharField.default_validators = [refuse_unseen, refuse_endless]
    validators.ProhibitNullCharactersValidator.message = "Type it anew, without what cannot be seen."
    for validator, words in LIMITS.items():
        validator.message = words
    for field, messages in WORDS.items():
        field.default_error_messages = {**field.default_error_messages, **messages}
