"""Where a run stands, as a word and a shape; computed from its events, its outcome apart never set by hand."""

from dataclasses import dataclass

from process.models import Run
from process.summaries.sheet import Sheet

SHAPES = {
    "planned": "open", "running": "open", "interrupted": "look", "stopped": "look",
    "good": "done", "reserved": "look", "failed": "blocked", "abandoned": "blocked",
}  # fmt: skip


@dataclass(frozen=True)
class Standing:
    """`code` is one of SHAPES; `shape` is a state of the site (open, look, done, blocked)."""

    code: str

    @property
    def word(self) -> str:
        return Run.Outcome(self.code).label if self.code in Run.Outcome else self.code

    @property
    def shape(self) -> str:
        return SHAPES[self.code]

    @property
    def is_live(self) -> bool:
        return self.code in {"running", "interrupted"}


def standing_of(run: Run, sheet: Sheet) -> Standing:
    """The outcome where one is given, else what the sheet says."""
    if run.outcome:
        return Standing(run.outcome)
    if sheet.started_at is None:
        return Standing("planned")
    if sheet.stopped_at:
        return Standing("stopped")
    return Standing("running" if sheet.current_a > 0 else "interrupted")
