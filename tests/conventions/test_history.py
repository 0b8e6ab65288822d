"""Who changed what is kept for every row, and the writes that would bypass it are refused."""

import pytest
from django.db.models import Model

from records.models import Tracked, TrackedQuerySet
from records.models.base import UntrackedWrite
from tests.conventions.models import MODELS

# Model: why its rows need no history.
EXEMPT: dict[str, str] = {
    "FileCheck": "says what a reading of all files found; the next one says it anew",
    "FailedSignIn": "counts wrong passwords and is forgotten within the hour",
    "Job": "a passing order to the worker; what comes of it has its own history",
    "SentForm": "remembers for a month that a form was sent; what came of it has its own history",
    "TraceCurve": "drawn anew from the kept file whenever its trace is reckoned; the trace itself has its history",
}
TRACKED: list[type[Model]] = [model for model in MODELS if issubclass(model, Tracked)]


@pytest.mark.parametrize("model", MODELS)
def test_a_model_keeps_its_history(model):
    if model.__name__ in EXEMPT:
        assert not issubclass(model, Tracked)
        return
    assert issubclass(model, Tracked), f"{model.__name__} is not tracked: derive it from Tracked, or exempt it here"
    assert model.history.model._meta.get_field("history_user")


@pytest.mark.parametrize("model", TRACKED)
def test_every_manager_of_a_tracked_model_refuses_what_history_cannot_see(model):
    for manager in model._meta.managers:
        assert issubclass(manager._queryset_class, TrackedQuerySet), f"{model.__name__}.{manager.name}"
    with pytest.raises(UntrackedWrite):
        model.objects.all().update(version=0)
    with pytest.raises(UntrackedWrite):
        model.objects.bulk_create([])
    with pytest.raises(UntrackedWrite):
        model.objects.bulk_update([], ["version"])


def test_no_exemption_outlives_its_model():
    assert set(EXEMPT) <= {model.__name__ for model in MODELS}
