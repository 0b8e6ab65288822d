"""What plans are reckoned with: power units, prices, throw tests of the bath."""

from process.demo.acting import step, without
from process.demo.rows import Table, save
from process.demo.studio import Studio
from process.models import PowerUnit, PriceList, ThrowTest


def tell(part: Table, studio: Studio) -> None:
    for model, name in ((PowerUnit, "power_unit"), (PriceList, "prices")):
        for table in part.get(name, []):
            with step(table):
                save(model, without(table))
    for table in part.get("throw_test", []):
        with step(table) as party:
            save(ThrowTest, without(table), tester=party)
