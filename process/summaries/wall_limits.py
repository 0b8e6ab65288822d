"""What a boundary in its wall forbids a shell, until a bend test of its coupon has shown that the layers hold."""

from dataclasses import dataclass

from process.chemistry.lamination import Risk, passes_bend_test
from process.models import CouponTest, Shell
from process.summaries.cathodes import CathodeSummary
from process.summaries.interruptions import WORDS, Interruption
from process.summaries.runs import RunSummary
from records.units import show


@dataclass(frozen=True)
class WallLimit:
    """The gravest boundary of one shell, and how it may be used."""

    label: str
    shell: Shell | None
    interruption: Interruption
    depth: str
    tests: tuple[CouponTest, ...]
    on_core: bool

    @property
    def risk(self) -> Risk:
        return self.interruption.risk

    @property
    def risk_word(self) -> str:
        return WORDS[self.risk]

    @property
    def shape(self) -> str:
        return "blocked" if self.risk == Risk.HIGH and not self.has_passed else "look"

    @property
    def has_passed(self) -> bool:
        """Every tested coupon held, and there is one."""
        tested = [test for test in self.tests if test.is_tested]
        return bool(tested) and all(
            passes_bend_test(test.bends_count, test.layers == CouponTest.Layers.YES) for test in tested
        )

    @property
    def has_failed(self) -> bool:
        return any(test.is_tested for test in self.tests) and not self.has_passed

    @property
    def bars_heat(self) -> bool:
        """A high risk bars hot soldering for ever, a medium one until a coupon has passed."""
        return self.risk == Risk.HIGH or not self.has_passed

    @property
    def bars_handling(self) -> bool:
        return self.risk == Risk.HIGH and not self.has_passed

    @property
    def name(self) -> str:
        return self.shell.item.number if self.shell else self.label

    @property
    def sentence(self) -> str:
        """“No hot soldering; no handling unless …”, as it stands on pages and papers."""
        if self.risk == Risk.MEDIUM:
            return "" if self.has_passed else "No hot work until a bend test of the coupon passes."
        if self.has_passed:
            return "No hot soldering. The bend test of the coupon passed: handling is not barred."
        if self.on_core:
            return "No hot soldering, no handling; a skin on a core with this risk is not to be accepted."
        if self.has_failed:
            return "No hot soldering, no handling: the coupon did not pass its bend test."
        return "No hot soldering; handling barred unless a bend test of the coupon passes."

    @property
    def reason(self) -> str:
        began = self.interruption
        depth = f", boundary at {self.depth} from the contact face" if self.depth else ""
        return f"{self.risk_word.capitalize()}: {began.duration} without current after " \
               f"{show(began.charge_before_ah, '_ah')}{depth}."  # fmt: skip


def limits_of(summary: RunSummary) -> tuple[WallLimit, ...]:
    """A limit for each wall with a boundary of medium or high risk, if anything is still barred."""
    found = (limit_of(summary, each) for each in summary.cathodes)
    return tuple(limit for limit in found if limit and limit.sentence)


def limit_of(summary: RunSummary, each: CathodeSummary) -> WallLimit | None:
    """By the gravest boundary in this wall; the deeper one of two that are equally grave counts as well as any."""
    found = [
        (cut, boundary)
        for cut in summary.interruptions
        for boundary in cut.boundaries
        if boundary.wall.label == each.cathode.label and cut.risk >= Risk.MEDIUM
    ]
    if not found:
        return None
    cut, boundary = max(found, key=lambda pair: pair[0].risk)
    depth = show(boundary.depth.value, "_mm") if boundary.depth.value is not None else ""
    tests = _tests(each) if each.shell else ()
    return WallLimit(each.cathode.label, each.shell, cut, depth, tests, bool(each.cathode.core_id))


def _tests(each: CathodeSummary) -> tuple[CouponTest, ...]:
    """Coupons as they came with the run; asked for where they did not."""
    if not hasattr(each.cathode, "coupon_rows"):
        return tuple(each.shell.coupon_tests.all())
    return tuple(CouponTest(**row) for row in sorted(each.cathode.coupon_rows or (), key=lambda row: row["number"]))
