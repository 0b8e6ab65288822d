"""The questions about an interruption: what a form answered, else what the events on the sheet say."""

from dataclasses import dataclass

from process.chemistry.lamination import Risk
from process.models import Answer, Event, InterruptionAnswers
from process.summaries.stretches import Stretch
from records.units import show

ACTIVATING = {Event.Activation.ACID, Event.Activation.BRUSH, Event.Activation.REVERSE}
RISKS = {"note": Risk.NOTE, "low": Risk.LOW, "medium": Risk.MEDIUM, "high": Risk.HIGH}


@dataclass(frozen=True)
class Answers:
    """What is known; empty or None is not answered yet."""

    cause: str = ""
    handling: str = ""
    out_of_bath_s: float | None = None
    returned_by_itself: bool | None = None
    activation: tuple[str, ...] = ()
    row: InterruptionAnswers | None = None

    @property
    def activated(self) -> bool | None:
        """A rinse takes nothing off: only acid, a brush or a reversed current make the surface ready."""
        return bool(ACTIVATING & set(self.activation)) if self.activation else None

    def words(self) -> list[str]:
        """What was answered, in the order in which it is asked."""
        came = {True: "the current came back by itself", False: "switched on again by hand"}
        said = [
            Event.Cause(self.cause).label if self.cause else "", self._handled(),
            came.get(self.returned_by_itself, ""), self._activated(), self._ramp(),
        ]  # fmt: skip
        return [word for word in said if word]

    def unanswered(self, came_back: bool) -> list[str]:
        asked = [("cause", self.cause), ("what happened to the pieces meanwhile", self.handling)]
        if self.handling == Event.Handling.WET:
            asked.append(("how long they were out of the bath", self.out_of_bath_s is not None))
        if came_back:
            asked += [
                ("whether the current came back by itself", self.returned_by_itself is not None),
                ("what was done before the restart", self.activation),
            ]
        return [question for question, answer in asked if not answer]

    def _handled(self) -> str:
        words = Event.Handling(self.handling).label if self.handling else ""
        return f"{words}, {show(self.out_of_bath_s, '_s')} out of the bath" if self.out_of_bath_s is not None else words

    def _activated(self) -> str:
        steps = ", ".join(self._step(step) for step in self.activation)
        return f"before the restart: {steps}" if steps else ""

    def _step(self, step: str) -> str:
        words = Event.Activation(step).label
        if step != Event.Activation.ACID or self.row is None:
            return words
        acid = [show(self.row.acid_pct, "_pct") if self.row.acid_pct is not None else "",
                show(self.row.acid_s, "_s") if self.row.acid_s is not None else ""]  # fmt: skip
        return " ".join(filter(None, [words, *acid]))

    def _ramp(self) -> str:
        if self.row is None or self.row.restart_current_a is None:
            return ""
        after = f", full current after {show(self.row.restart_ramp_s, '_s')}" if self.row.restart_ramp_s else ""
        return f"restarted at {show(self.row.restart_current_a, '_a')}{after}"


def answers_to(stretch: Stretch, rows: list[InterruptionAnswers]) -> Answers:
    """The form's answers count before those that an event gave in passing."""
    said = _of_events(stretch)
    row = next((row for row in rows if _is_about(row, stretch)), None)
    if row is None:
        return said
    returned = {Answer.YES: True, Answer.NO: False}.get(row.returned_by_itself, said.returned_by_itself)
    return Answers(
        row.cause or said.cause, row.handling or said.handling, row.out_of_bath_s, returned,
        tuple(row.activation) or said.activation, row,
    )  # fmt: skip


def _is_about(row: InterruptionAnswers, stretch: Stretch) -> bool:
    """Bounds move when better evidence comes: answers stay with the stretch that covers their beginning."""
    return stretch.began_after <= row.began_at and (stretch.ended_by is None or row.began_at < stretch.ended_by)


def _of_events(stretch: Stretch) -> Answers:
    events = [row for row in stretch.rows if isinstance(row, Event)]
    gone = next((event for event in events if event.kind == Event.Kind.INTERRUPTION), None)
    back = next((event for event in events if event.kind == Event.Kind.RESTART), None)
    activation = (back and back.activation) or (gone and gone.activation) or ""
    return Answers(
        gone.cause if gone else "", gone.handling if gone else "", None, back.returned_by_itself if back else None,
        (activation,) if activation else (),
    )  # fmt: skip
