from records.forms.base import RecordForm
from records.models import Party


class PartyForm(RecordForm):
    class Meta:
        model = Party
        fields = ["name", "kind", "function", "initials", "email", "address", "user"]
        groups = [
            ("Who", ["name", "kind", "function"]),
            ("Where to write, and the sign-in", ["email", "address", "initials", "user"]),
        ]
