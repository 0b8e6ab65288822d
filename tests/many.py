"""A register that has grown: thousands of people, places and objects, hundreds of commissions and moulds."""

from datetime import date
from typing import Any

from django.db.models import Model, QuerySet

from process.models import Bath, Mould, Run
from records.models import Commission, Item, Party, Photo, Place, Term

DAY = date(2026, 1, 19)
HANDS, YEARS = ("Corvin Aldersey", "Maud Ferrigan", "the Sallowness mint", "an unknown hand"), range(1550, 1900)


def many(size: int) -> None:
    """`size` people, places and objects, and a quarter as many commissions and moulds."""
    people = [Party(name=f"Lender {count:05d}", function="collector") for count in range(size)]
    _keep(Party, people)
    _keep(Place, [Place(name=f"Drawer {count:05d}") for count in range(size)])
    items = [_medal(count) for count in range(size)]
    _keep(Item, items)
    purpose = Term.objects.filter(scheme="purpose").first() or Term.objects.create(scheme="purpose", label="handling")
    material = Term.objects.filter(scheme="mould_material").first() or Term.objects.create(
        scheme="mould_material", label="silicone"
    )
    quarter = range(size // 4)
    asked = {"requested_on": DAY, "purpose": purpose}
    numbers = [f"RQ-2000-{count:03d}" for count in quarter]
    _keep(Commission, [Commission(number=number, requester=people[0], **asked) for number in numbers])
    bodies = [Item(number=f"M-2000-{count:03d}", kind="mould", title="Mould") for count in quarter]
    _keep(Item, bodies)
    made = {"side": "obverse", "made_on": DAY, "material": material, "pulls_allowed_count": 8}
    _keep(Mould, [Mould(item=bodies[count], model=items[count], **made) for count in quarter])


def many_made(size: int) -> None:
    """`size` runs, copies and photographs."""
    bath = Bath.objects.create(number="B-2000", name="acid copper", volume_l=60)
    plan = {"planned_current_density_a_dm2": 1.5, "planned_thickness_mm": 0.6}
    _keep(Run, [Run(number=f"D-2000-{count:03d}", bath=bath, **plan) for count in range(size)])
    copies = [Item(number=f"R.2000.{count:03d}", kind="copy", title="Copy", status="workshop") for count in range(size)]
    _keep(Item, copies)
    _keep(Photo, [_photo(item, count) for count, item in enumerate(copies)])


def _photo(item: Item, count: int) -> Photo:
    return Photo(
        item=item, original_name="seen.jpg", path=f"originals/many{count}.jpg", sha256=f"{count:064x}",
        media_type="image/jpeg", size_bytes_count=1000, width_px_count=100, height_px_count=100,
    )  # fmt: skip


def _medal(count: int) -> Item:
    return Item(
        number=f"OVM.2000.{count:05d}", kind="original", title=f"Medal {count} of a series",
        maker=HANDS[count % len(HANDS)], date_words=str(YEARS[count % len(YEARS)]), materials="bronze, struck",
    )  # fmt: skip


def _keep(model: type[Model], rows: list[Any]) -> None:
    """All at once and without a history, which nobody reads here."""
    for row in rows:
        if isinstance(row, Item):
            row.search_text = f"{row.number} {row.title} {row.maker}".lower()
    QuerySet(model).bulk_create(rows)
