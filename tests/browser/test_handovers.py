"""A copy goes out of the house and comes back, by mouse at a desk; the pages hold at a phone's width too."""

from records.models import Handover
from tests.browser.walking import day
from tests.factories import make_handover, make_party, make_term
from tests.process.leaving_copies import certify, copy, marked

__all__ = ["copy", "marked"]  # fixtures


def test_a_loan_from_agreement_to_return(page, walk, marked):
    certify(marked)
    make_party("Town Gallery", kind="institution")
    make_term("purpose", "display surrogate")
    registrar = walk(page, "registrar")

    registrar.go(f"/things/{marked.number}/")
    registrar.follow("Hand it over")
    registrar.fill({"Kind": "loan", "Goes to": "Town Gallery", "Agreed work or purpose": "an exhibition",
                    "Serves there as": "display surrogate",
                    "Due back on": day(-30)})  # fmt: skip
    registrar.press("Keep what is agreed")
    assert "agreed, still here" in registrar.text()

    registrar.follow("Hand it over")
    registrar.fill({"Condition on the way out": "sound", "Mass on the way out": "64.71", "Received by": "A. Receiver",
                    "Acknowledged as a copy on": day()})  # fmt: skip
    registrar.press("It is handed over")
    assert "out, due back" in registrar.text()

    registrar.follow("Take it back")
    registrar.fill({"Condition on the way back": "sound", "Mass on the way back": "64.31",
                    "Compared with the way out": "no change seen"})  # fmt: skip
    registrar.press("It is back", refused=True)
    assert "correct one of the two" in registrar.text()
    registrar.fill({"Compared with the way out": "changed"})
    registrar.press("It is back")

    assert Handover.objects.get().back_on is not None


def test_what_is_overdue_reads_on_a_phone(phone, walk, marked):
    make_handover(marked, party=make_party("Town Gallery"), out_on="2026-02-12")
    registrar = walk(phone, "registrar")

    registrar.go("/")
    registrar.follow("Overdue: ask for R.2026.1 back")
    assert "overdue since 30 March 2026" in registrar.text()
