from django.core.exceptions import ValidationError

from records.forms.base import RecordForm
from records.models import Place


class PlaceForm(RecordForm):
    class Meta:
        model = Place
        fields = ["name", "within", "note"]

    def clean_within(self) -> Place | None:
        """A room is not inside itself, nor inside one of its own cupboards."""
        outer = self.cleaned_data["within"]
        step = outer
        while step is not None:
            if step.pk == self.instance.pk:
                raise ValidationError("A place cannot lie inside itself: choose another one, or none.")
            step = step.within
        return outer
