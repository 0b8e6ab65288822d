"""Who changed what of a run: its plan and the choice of its charge, each line of its sheet, its rail, its answers."""

from process.models import Bath, Cathode, Event, InterruptionAnswers, PowerUnit, Reading, Run
from records.changes import Entry, changes_in
from records.models import Commission, Term

PARTS = ((Reading, "reading"), (Event, "event"), (Cathode, "cathode"), (InterruptionAnswers, "answers"))
NAMED = (Bath, PowerUnit, Cathode, Commission, Term)


def changes_of_run(run: Run) -> list[Entry]:
    """The latest first; a reading that was corrected shows what stood there, and why."""
    rows = [("", Run.history.filter(id=run.pk))]
    return changes_in(rows + [(noun, model.history.filter(run_id=run.pk)) for model, noun in PARTS], NAMED)
