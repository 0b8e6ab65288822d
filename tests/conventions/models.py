"""The project's own models, without the history tables that shadow them."""

from django.apps import apps
from django.db.models import Model

from tests.conventions.source import APPS

MODELS: list[type[Model]] = [
    model
    for app in APPS
    for model in apps.get_app_config(app).get_models()
    if not model.__name__.startswith("Historical")
]
