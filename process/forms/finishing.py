"""A finish step: what was done to the surface, here or by an outside plater."""

from typing import Any

from process.forms.asking import AsksUnusual
from process.models import FinishStep
from process.ranges import Opinion
from process.summaries.copy_skin import skin_of
from records import clock
from records.forms.base import RecordForm
from records.forms.measurements import not_ahead
from records.models import Party, Term


class FinishForm(AsksUnusual, RecordForm):
    class Meta:
        model = FinishStep
        fields = ["finish", "words", "thickness_um", "done_on", "done_by"]
        ranged = ["thickness_um"]
        groups = [("", ["finish", "words", "thickness_um", "done_on", "done_by"])]
        labels = {"finish": "What was done", "done_by": "By whom", "done_on": "On"}
        help_texts = {
            "words": "The class of material, coats, colour before and after; never a recipe.",
            "thickness_um": "Of silver, gold or another metal; from the plater’s certificate.",
            "done_by": "For silver and gold the outside plater.",
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        terms = Term.objects.filter(scheme=Term.Scheme.FINISH)
        self.fields["finish"].queryset = terms.filter(is_retired=False) | terms.filter(pk=self.instance.finish_id)
        if self.instance._state.adding:
            self.initial["done_on"] = self.initial.get("done_on") or clock.today()

    @property
    def caution(self) -> str:
        """The cautions of the finishes that are offered, each with its name."""
        return " ".join(f"{t.label.capitalize()}: {t.caution}" for t in self.fields["finish"].queryset if t.caution)

    def clean_done_on(self):
        return not_ahead(self.cleaned_data["done_on"])

    def _metal(self) -> str:
        finish = self.cleaned_data.get("finish")
        return skin_of([FinishStep(finish=finish)]) if finish else ""

    def opinions(self) -> dict[str, Opinion]:
        found = super().opinions()
        by = self.cleaned_data.get("done_by")
        if self._metal() and by and by.kind != Party.Kind.WORKSHOP:
            sentence = (
                f"{by} is not on file as an outside workshop; plating with {self._metal()} is for a licensed plater."
            )
            found["done_by"] = Opinion("unusual", sentence)
        return found

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        made_up = self.instance.copy.making_up.made_up_on if hasattr(self.instance.copy, "making_up") else None
        if made_up and cleaned.get("done_on") and cleaned["done_on"] < made_up:
            self.add_error("done_on", f"The copy was made up on {made_up}: its finish came later.")
        if self._metal():
            if cleaned.get("thickness_um") is None and "thickness_um" not in self.errors:
                self.add_error("thickness_um", "Say how thick the skin is; it stands on the plater’s certificate.")
            if not cleaned.get("done_by"):
                self.add_error("done_by", "Name the plater: the piece was out of the house.")
        return cleaned
