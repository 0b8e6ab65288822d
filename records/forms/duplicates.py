"""A number that is taken already: said beside the field, with what to do."""

from typing import Any

from django.core.exceptions import NON_FIELD_ERRORS, ValidationError
from django.db.models import F, UniqueConstraint


def name_the_duplicate(form: Any, errors: ValidationError) -> ValidationError:
    """The same errors with each broken uniqueness moved to its field and worded as advice."""
    if not hasattr(errors, "error_dict"):
        return errors
    found: dict[str, list[ValidationError]] = {}
    named = _messages_of_constraints(form._meta.model)
    for field, several in errors.error_dict.items():
        for error in several:
            target = field
            if field == NON_FIELD_ERRORS and error.message in named:
                target = named[error.message]
            is_duplicate = error.code == "unique" or target != field
            if target in form.fields and is_duplicate:
                error = ValidationError(_advice(form, target), code="unique")
            found.setdefault(target if target in form.fields or target == field else field, []).append(error)
    return ValidationError(found)


def _advice(form: Any, field: str) -> str:
    label = form.fields[field].label or field
    value = form.cleaned_data.get(field, getattr(form.instance, field, ""))
    return f"“{value}” is taken: each {label.lower()} stands for one record. Open that one, or write another."


def _messages_of_constraints(model: Any) -> dict[str, str]:
    """Message -> field, for unique constraints over an expression of one field, such as Lower("number")."""
    named = {}
    for constraint in _expression_constraints(model):
        names = {part.name for expression in constraint.expressions for part in _columns(expression)}
        if len(names) == 1:
            named[constraint.get_violation_error_message()] = names.pop()
    return named


def _expression_constraints(model: Any) -> list[UniqueConstraint]:
    return [each for each in model._meta.constraints if isinstance(each, UniqueConstraint) and each.expressions]


def _columns(expression: Any) -> list[F]:
    if isinstance(expression, F):
        return [expression]
    return [column for part in expression.get_source_expressions() for column in _columns(part)]
