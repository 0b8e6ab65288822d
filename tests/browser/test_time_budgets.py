"""How long the commonest tasks take, counted in fields, keys and clicks.

Seconds by the keystroke-level model: key 0.28 s, pointing 1.1 s, button 0.2 s, hand 0.4 s, thought 1.35 s (Card, Moran
and Newell, Communications of the ACM 23, 1980, 396–410). Budgets: DOMAIN 9, workshop experience, from memory.
"""

from tests.browser.test_curator import copy
from tests.browser.test_registrar import log_commission
from tests.factories import make_item, make_party

__all__ = ["copy"]  # a fixture

KEY, POINT, BUTTON, HAND, THOUGHT = 0.28, 1.1, 0.2, 0.4, 1.35


class Counting:
    """A walker whose steps are counted."""

    def __init__(self, walker) -> None:
        self._walker, self.clicks, self.fields, self.keys = walker, 0, 0, 0

    def __getattr__(self, name):
        return getattr(self._walker, name)

    def follow(self, words) -> None:
        self.clicks += 1
        self._walker.follow(words)

    def press(self, words, **how) -> None:
        self.clicks += 1
        self._walker.press(words, **how)

    def fill(self, values) -> None:
        self.fields += len(values)
        self.keys += sum(len(str(value)) for value in values.values() if value is not True)  # ticking is no typing
        self._walker.fill(values)

    @property
    def seconds(self) -> float:
        steps = self.clicks * (THOUGHT + POINT + BUTTON) + self.fields * (THOUGHT + POINT + BUTTON + HAND)
        return steps + self.keys * KEY


def test_a_commission_is_logged_in_five_minutes(page, walk):
    make_item("L.2026.003", title="Ten-groat piece")
    make_party("Thornwick Almshouse Trust", kind="institution")
    registrar = Counting(walk(page, "registrar"))

    log_commission(registrar)

    assert registrar.clicks <= 4 and registrar.fields <= 4
    assert registrar.seconds <= 5 * 60


def test_a_correct_label_is_printed_in_a_minute(page, walk, copy):
    """The register proposes the wording; nothing is typed."""
    curator = Counting(walk(page, "curator"))
    curator.go(f"/things/{copy.number}/label/")

    curator.press("Keep the wording")
    curator.press("Approve")
    curator.go(f"/things/{copy.number}/")
    curator.clicks += 1  # the link back to the copy
    curator.press("Issue the gallery label")

    assert "is issued and kept" in curator.text()
    assert curator.clicks <= 4 and curator.fields == 0
    assert curator.seconds <= 60
