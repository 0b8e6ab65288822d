"""The name of the demo's museum, which also says that a data folder is the demo's own."""

import json
import tomllib
from typing import Any

from django.conf import settings

from records.models import Item

FIRST = "OVM.1931.0044"


def belongs_to_demo() -> bool:
    """Whether this folder's records are a demonstration that was loaded to its end."""
    if not settings.MUSEUM_FILE.exists() or not Item.objects.filter(number=FIRST).exists():
        return False
    return bool(tomllib.loads(settings.MUSEUM_FILE.read_text(encoding="utf-8")).get("demonstration"))


def name_museum(museum: dict[str, Any], *, finished: bool = False) -> None:
    """Name the museum for this process, and once everything is loaded for those to come."""
    settings.MUSEUM_NAME, settings.MUSEUM_CODE = museum["name"], museum["code"]
    if finished:
        names = {key: museum[key] for key in ("name", "code", "time_zone")}
        lines = [f"{key} = {json.dumps(value)}" for key, value in names.items()]
        text = "\n".join(["# Written by the demonstration.", *lines, "demonstration = true", ""])
        settings.MUSEUM_FILE.write_text(text, encoding="utf-8")
