"""What every page knows about the site: its name and the entries of its table of contents."""

from dataclasses import dataclass

from django.conf import settings
from django.http import HttpRequest

from records.access import roles_of
from records.roles import CONSERVATOR, CURATOR, REGISTRAR, TECHNICIAN

WORKSHOP = frozenset({REGISTRAR, CONSERVATOR, TECHNICIAN})


@dataclass(frozen=True)
class Entry:
    """One line of the contents; without roles it is for everyone who is signed in."""

    label: str
    route: str
    roles: frozenset[str] = frozenset()


# In the order of the work. A route that is not there (records without process) hides its entry.
ENTRIES = (
    Entry("Today", "home"),
    Entry("Objects", "item_list"),
    Entry("Commissions", "commission_list"),
    Entry("Photographs", "photo_list"),
    Entry("Condition", "condition_list"),
    Entry("Surveys", "survey_list", frozenset({REGISTRAR, CONSERVATOR})),
    Entry("Moulds", "mould_list"),
    Entry("Baths", "bath_list", WORKSHOP),
    Entry("Runs", "run_list"),
    Entry("Failures", "failure_list", WORKSHOP),
    Entry("Copies", "copy_list"),
    Entry("In other hands", "handover_list"),
    Entry("Papers", "document_list"),
    Entry("Tags on sheets", "label_sheet", frozenset({REGISTRAR, CONSERVATOR, CURATOR})),
    Entry("Duties", "duty_list"),
    Entry("Parties", "party_list", WORKSHOP | {CURATOR}),
    Entry("Places", "place_list", WORKSHOP),
    Entry("Tables", "table_list", WORKSHOP),
)


def entries_for(user) -> list[Entry]:
    """The contents for this person; a superuser sees everything."""
    if not user.is_authenticated:
        return []
    if user.is_superuser:
        return list(ENTRIES)
    return [entry for entry in ENTRIES if not entry.roles or entry.roles & roles_of(user)]


def site(request: HttpRequest) -> dict[str, object]:
    """Context processor: `site.name`, `site.code`, `site.contents` (read only by pages that show it)."""
    user = getattr(request, "user", None)
    return {
        "site": {
            "name": settings.MUSEUM_NAME,
            "code": settings.MUSEUM_CODE,
            "contents": (lambda: entries_for(user)) if user else [],
        }
    }
