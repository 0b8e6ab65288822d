"""The core weighed until it was dry, the skinned core weighed while it dried, and its closing."""

from process.demo.acting import role_of, step, without
from process.demo.rows import Table, build, find, save
from process.demo.studio import Studio
from process.forms.weighings import kind_for
from process.models import CoreClosing, Shell, Weighing
from process.services.cores import keep_weighing, sign_closing
from records.models import Item
from records.services.striking import strike_out


def tell_before_the_bath(part: Table, studio: Studio) -> None:
    """Cores, before anything grows on them."""
    _weigh(part, cores=True)


def tell(part: Table, studio: Studio) -> None:
    _weigh(part, cores=False)
    for table in part.get("closing", []):
        with step(table) as party:
            closing = save(CoreClosing, without(table, "of"), shell=find(Shell, table["of"]))
            sign_closing(closing=closing, party=party, role=role_of(party), afterwards=True)


def _weigh(part: Table, *, cores: bool) -> None:
    for table in part.get("weighing", []):
        is_core = Item.objects.filter(number=table["of"], kind=Item.Kind.CORE).exists()
        if is_core == cores:
            with step(table) as party:
                item = find(Item, table["of"])
                about = {"item": item, "kind": kind_for(item), "person": party}
                row = keep_weighing(weighing=build(Weighing, without(table, "of", "struck"), **about))
                if "struck" in table:
                    strike_out(row=row, kind="weighing", party=party, reason=table["struck"])
