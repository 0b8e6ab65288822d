"""The core weighed until it was dry, the skinned core weighed while it dried, and its closing."""

from process.demo.acting import role_of, step, without
from process.demo.rows import Table, build, find, save
from process.demo.studio import Studio
from process.forms.weighings import kind_for
from process.models import CoreClosing, Shell, Weighing
from process.services.cores import keep_weighing, sign_closing
from records.models import Item


def tell(part: Table, studio: Studio) -> None:
    for table in part.get("weighing", []):
        with step(table) as party:
            item = find(Item, table["of"])
            about = {"item": item, "kind": kind_for(item), "person": party}
            keep_weighing(weighing=build(Weighing, without(table, "of"), **about))
    for table in part.get("closing", []):
        with step(table) as party:
            closing = save(CoreClosing, without(table, "of"), shell=find(Shell, table["of"]))
            sign_closing(closing=closing, party=party, role=role_of(party), afterwards=True)
