"""Moulds taken from the objects, and the core cast in one of them."""

from process.demo.acting import step, without
from process.demo.chapters.objects import photograph
from process.demo.chapters.permissions import concede
from process.demo.rows import Table, build, find
from process.demo.studio import Studio
from process.models import Core, Mould
from process.services.moulds import cast_core, take_mould
from records.models import Party, Place


def tell(part: Table, studio: Studio) -> None:
    concede(part.get("concession", []), "moulds")
    for table in part.get("mould", []):
        with step(table):
            mould = build(Mould, without(table, *_NOT_COLUMNS), unset=("item",))
            take_mould(number=table["number"], mould=mould, afterwards=True, **_item_of(table))
        photograph(mould.item, table, studio)
    for table in part.get("core", []):
        with step(table):
            core = build(Core, without(table, "mould", *_NOT_COLUMNS), unset=("item", "pull"))
            cast_core(
                mould=find(Mould, table["mould"]), number=table["number"], core=core, afterwards=True, **_item_of(table)
            )
        photograph(core.item, table, studio)


_NOT_COLUMNS = ("number", "title", "owner", "place", "photo")


def _item_of(table: Table) -> dict:
    return {"title": table["title"], "owner": find(Party, table["owner"]), "place": find(Place, table["place"])}
