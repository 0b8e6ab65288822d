from django import forms

from records import clock
from records.forms.base import RecordForm
from records.forms.dates import DayField
from records.forms.lookup import LookupField
from records.models import Duty
from records.roles import ROLE_CHOICES


class DutyForm(RecordForm):
    role = forms.ChoiceField(label="For the", choices=ROLE_CHOICES)
    item = LookupField("things", label="Thing", required=False, help_text="By its number.")
    commission = LookupField("commissions", required=False, help_text="By its number.")

    class Meta:
        model = Duty
        fields = ["sentence", "due_on", "role", "item", "commission"]
        groups = [("What and when", ["sentence", "due_on", "role"]), ("What it concerns", ["item", "commission"])]


class DutyDoneForm(forms.Form):
    """How a duty was done; who did it is who signs in."""

    on = DayField(label="Done on", initial=clock.today)
    words = forms.CharField(label="How it was done", max_length=300, help_text="Witness, certificate, letter.")
