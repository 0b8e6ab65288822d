"""The only door to a record: permission is how you fetch, not a check afterwards."""

from typing import Any, TypeVar

from django.core.exceptions import PermissionDenied
from django.db.models import Model, QuerySet
from django.http import Http404, HttpRequest
from django.shortcuts import get_object_or_404

from records.models import Party
from records.roles import ACTS, ROLES, WRITERS

M = TypeVar("M", bound=Model)


def roles_of(user) -> frozenset[str]:
    """Roles of the person; asked of the database once for each request's user."""
    if not user.is_authenticated:
        return frozenset()
    if not hasattr(user, "_roles"):
        names = getattr(user, "role_names", None)
        names = user.groups.values_list("name", flat=True) if names is None else names
        user._roles = frozenset(names) & frozenset(ROLES)
    return user._roles


def _allowed_roles(verb: str, model: str | type[Model] | Model | None) -> frozenset[str]:
    if verb in ACTS:
        return ACTS[verb]
    name = model if isinstance(model, str) else getattr(model, "__name__", type(model).__name__)
    return WRITERS.get(name, frozenset())


def may(user, verb: str, model: str | type[Model] | Model | None = None) -> bool:
    """Whether the person may `view`, `write` rows of a model, or do a named act of `roles.ACTS`."""
    if not user.is_authenticated:
        return False
    if verb == "view" or user.is_superuser:
        return True
    return bool(roles_of(user) & _allowed_roles(verb, model))


def may_fulfil(user, role: str) -> bool:
    """A duty is written off by those who keep the list of duties, and by the role that it falls to."""
    return may(user, "write", "Duty") or role in roles_of(user)


def require(request: HttpRequest, verb: str, model: str | type[Model] | Model | None = None) -> None:
    """Go on, or refuse with a sentence that says whose task it is."""
    if not may(request.user, verb, model):
        who = " or ".join(sorted(_allowed_roles(verb, model))) or "administrator"
        raise PermissionDenied(f"This is for the {who}. Ask one of them, or sign in with another name.")


def fetch(request: HttpRequest, rows: type[M] | QuerySet[M], to: str = "view", **lookup: Any) -> M:
    """One record, for the person who asks, to `view`, to `write`, or for a named act."""
    model = rows.model if isinstance(rows, QuerySet) else rows
    require(request, to, model)
    if any("\0" in value for value in lookup.values() if isinstance(value, str)):
        raise Http404("No such record.")
    return get_object_or_404(rows, **lookup)


def signer(request: HttpRequest, act: str) -> tuple[Party, str]:
    """The party that signs and the role it signs in."""
    require(request, act)
    role = next((r for r in ROLES if r in roles_of(request.user) & ACTS[act]), "administrator")
    return party_of(request.user), role


def party_of(user) -> Party:
    """The person's own entry among the parties; a sign-in without one cannot put a name to anything."""
    party = getattr(user, "party", None)
    if party is None:
        raise PermissionDenied("Your sign-in is not linked to a person. Ask the registrar to link it under Parties.")
    return party
