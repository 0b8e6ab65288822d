"""Weighings that can be struck out: of a core or a skin that dries, and masses that stood on a shell."""

from process.models import Shell, Weighing
from process.services.cores import follow_series
from process.services.masses import STANDS, put_mass_back, refuse_standing
from records.clock import day_words
from records.extensions import Struck, strikables


def _refuse(row: Weighing) -> str:
    return refuse_standing(row) if row.is_struck else ""


def _follow(row: Weighing) -> None:
    """The shell's own mass is always that of the last weighing that stands."""
    if row.kind in STANDS and not row.is_struck:
        put_mass_back(row)
    elif row.kind == Weighing.Kind.SKIN:
        follow_series(Shell.objects.select_related("item", "cathode").get(pk=row.item_id))


strikables["weighing"] = Struck(
    rows=lambda: Weighing.every.select_related("item", "struck_by"),
    words=lambda row: f"{row.get_kind_display()}, {row.item.number}, {day_words(row.at)}",
    back=lambda row: f"{row.item.get_absolute_url()}#drying",
    refuse=_refuse, follow=_follow,
)  # fmt: skip
