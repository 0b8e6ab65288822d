"""The bounds of one constituent of a bath; an acid copper bath is offered the usual ones, to be judged and saved."""

from itertools import pairwise

from process.forms.asking import AsksUnusual
from process.models import BathLimit, Constituent
from process.ranges import Opinion, judge
from records.forms.base import RecordForm

ORDER = ["stop_low_g_l", "warn_low_g_l", "target_g_l", "warn_high_g_l", "stop_high_g_l"]
CROSSED = "The bounds cross: stop below, look below, target, look above, stop above must not fall."
# Conventional acid copper without additives: workshop practice, no published source.
USUAL_G_L = {
    Constituent.COPPER_SULPHATE: (170, 190, 210, 230, 260),
    Constituent.SULPHURIC_ACID: (35, 50, 60, 75, 100),
    Constituent.CHLORIDE: (None, None, None, 0.08, None),
}
ACID_COPPER = "Cu2+"


class BathLimitForm(AsksUnusual, RecordForm):
    class Meta:
        model = BathLimit
        fields = ["target_g_l", "warn_low_g_l", "warn_high_g_l", "stop_low_g_l", "stop_high_g_l"]
        ranged = ORDER

    def __init__(self, *args, **kwargs) -> None:
        super().__init__(*args, **kwargs)
        if self.instance._state.adding and self.instance.bath.ion == ACID_COPPER:
            for name, usual in zip(ORDER, USUAL_G_L[self.instance.constituent], strict=True):
                if usual is not None:
                    self.offer(name, usual)

    def opinion(self, name: str) -> Opinion:
        """A bound is judged by the row of what it bounds: g/L and oz/gal differ by the factor 7.5."""
        typed = self.entered.get(name)
        known = {"number": typed.number, "unit": typed.unit} if typed else {}
        return judge(f"{self.instance.constituent}_g_l", self.cleaned_data[name], **known)

    def clean(self) -> dict:
        """Bounds stand in the order stop, look, target, look, stop; any of them may be left open."""
        cleaned = super().clean()
        given = [(name, cleaned[name]) for name in ORDER if cleaned.get(name) is not None]
        for (_, lower), (name, upper) in pairwise(given):
            if upper < lower:
                self.add_error(name, CROSSED)
                break
        return cleaned
