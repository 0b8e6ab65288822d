"""The filter of the list of runs, as parts of a sentence."""

from django import forms
from django.db.models import QuerySet

from records.forms.lookup import LookupField

STATES = {
    "": "in any state", "going_on": "in the bath now", "planned": "planned", "to_be_judged": "stopped, to be judged",
    "good": "good", "reserved": "usable, with a reservation", "failed": "failed", "abandoned": "abandoned",
}  # fmt: skip


class RunFilter(forms.Form):
    state = forms.ChoiceField(label="that are", choices=STATES.items(), required=False)
    bath = LookupField("baths", label="in", required=False, words="any bath")

    def narrow(self, rows: QuerySet) -> QuerySet:
        """The rows that the sentence describes; an unknown choice shows everything, with its error."""
        chosen = self.cleaned_data if self.is_valid() else {}
        state = chosen.get("state")
        if state in {"going_on", "planned", "to_be_judged"}:
            rows = getattr(rows, state)()
        elif state:
            rows = rows.filter(outcome=state)
        return rows.filter(bath=chosen["bath"]) if chosen.get("bath") else rows
