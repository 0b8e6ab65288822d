"""Hours, bills and estimates."""

from typing import Any

from django.core.exceptions import ValidationError

from process.forms.asking import AsksUnusual
from process.models import Expense, PriceList, WorkEstimate, WorkHours
from records import clock
from records.forms.base import RecordForm
from records.forms.money import say_currency


class HoursForm(AsksUnusual, RecordForm):
    class Meta:
        model = WorkHours
        fields = ["kind", "work_h", "person", "done_on", "is_rework", "note"]
        ranged = ["work_h"]
        bounds = {"work_h": (0.01, 1000)}
        groups = [("", fields)]
        help_texts = {"work_h": "Of one person; two at the bench write two lines."}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        if self.instance._state.adding:
            self.offer("done_on", clock.today())


class ExpenseForm(RecordForm):
    class Meta:
        model = Expense
        bounds = {"sum_money": (0, 1e7)}
        fields = ["what", "sum_money", "paid_to", "spent_on", "is_rework"]
        groups = [("", fields)]
        help_texts = {"sum_money": "In the currency of the price list."}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        if self.instance._state.adding:
            self.offer("spent_on", clock.today())
        prices = PriceList.objects.first()
        say_currency(self, prices.currency if prices else "")


class EstimateForm(RecordForm):
    class Meta:
        model = WorkEstimate
        bounds = {"work_h": (0.01, 1000)}
        fields = ["kind", "work_h"]
        groups = [("", fields)]

    def clean_kind(self) -> str:
        """Which commission it is for stands in the address, so the form itself looks for the other one."""
        kind = self.cleaned_data["kind"]
        others = WorkEstimate.objects.filter(commission=self.instance.commission_id, kind=kind)
        if others.exclude(pk=self.instance.pk).exists():
            raise ValidationError("This kind of work is estimated already: correct that estimate.")
        return kind
