"""A copy in other hands: agreed, handed over with its condition and mass, and for some kinds taken back."""

from datetime import date

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models
from django.db.models import F, Q
from django.urls import reverse

from records.clock import day_words
from records.purposes import EXCHANGE, SALE

from .base import Tracked, TrackedQuerySet

MASS = [MinValueValidator(0.001), MaxValueValidator(1_000_000)]
MONEY = [MinValueValidator(0), MaxValueValidator(10_000_000)]


class HandoverQuerySet(TrackedQuerySet):
    def out(self) -> "HandoverQuerySet":
        """Handed over and expected back."""
        rows = self.filter(kind__in=Handover.RETURNING, out_on__isnull=False)
        return rows.filter(back_on__isnull=True, called_off_on__isnull=True)

    def agreed(self) -> "HandoverQuerySet":
        """Agreed, and still in the house."""
        return self.filter(out_on__isnull=True, called_off_on__isnull=True)


class Handover(Tracked):
    class Kind(models.TextChoices):
        FINISHER = "finisher", "outside finisher"
        LOAN = "loan", "loan"
        EXCHANGE = "exchange", "exchange"
        GIFT = "gift", "gift"
        SALE = "sale", "sale"

    RETURNING = (Kind.FINISHER, Kind.LOAN)
    FINAL = (Kind.EXCHANGE, Kind.GIFT, Kind.SALE)

    class Change(models.TextChoices):
        NONE = "none", "no change seen"
        AGREED = "agreed", "changed as agreed, and not otherwise"
        CHANGED = "changed", "changed"

    number = models.CharField(max_length=40, unique=True)
    item = models.ForeignKey("records.Item", models.PROTECT, related_name="handovers", editable=False)
    kind = models.CharField(max_length=20, choices=Kind)
    party = models.ForeignKey("records.Party", models.PROTECT, related_name="handovers", verbose_name="goes to")
    commission = models.ForeignKey(
        "records.Commission", models.PROTECT, null=True, blank=True, related_name="handovers"
    )
    purpose = models.CharField("agreed work or purpose", max_length=300)
    serves = models.ForeignKey(
        "records.Term", models.PROTECT, null=True, blank=True, related_name="+", verbose_name="serves there as",
        limit_choices_to={"scheme": "purpose"},
    )  # fmt: skip
    terms = models.TextField("further conditions", blank=True)
    described_as = models.CharField("described by the receiver as", max_length=300, blank=True)
    agreed_on = models.DateField()
    due_on = models.DateField("due back on", null=True, blank=True, db_index=True)
    value_money = models.FloatField("insured for", null=True, blank=True, validators=MONEY)
    price_money = models.FloatField("price", null=True, blank=True, validators=MONEY)
    currency = models.CharField(max_length=12, blank=True)

    out_on = models.DateField("handed over on", null=True, blank=True)
    handed_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    mass_out_g = models.FloatField("mass on the way out", null=True, blank=True, validators=MASS)
    condition_out = models.TextField("condition on the way out", blank=True)
    packing = models.CharField("packed and carried", max_length=300, blank=True)
    receiver = models.CharField("received by", max_length=200, blank=True)
    acknowledged_on = models.DateField("acknowledged as a copy on", null=True, blank=True)

    back_on = models.DateField("taken back on", null=True, blank=True)
    taken_back_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    mass_back_g = models.FloatField("mass on the way back", null=True, blank=True, validators=MASS)
    condition_back = models.TextField("condition on the way back", blank=True)
    change = models.CharField("compared with the way out", max_length=20, choices=Change, blank=True)

    called_off_on = models.DateField(null=True, blank=True, editable=False)
    called_off_because = models.CharField(max_length=300, blank=True, editable=False)

    objects = HandoverQuerySet.as_manager()

    class Meta:
        ordering = ["-agreed_on", "-number"]
        indexes = [models.Index(fields=["due_on"], condition=Q(back_on__isnull=True), name="handover_open_by_due")]
        constraints = [
            models.UniqueConstraint(
                fields=["item"], name="handover_open_once",
                condition=Q(out_on__isnull=False, back_on__isnull=True),
                violation_error_message="It is in other hands already: take it back first.",
            ),
            models.CheckConstraint(
                condition=Q(back_on__isnull=True) | Q(out_on__isnull=False, back_on__gte=F("out_on")),
                name="handover_back_after_out",
                violation_error_message="It did not come back before it went: correct one of the two days.",
            ),
        ]  # fmt: skip

    def get_absolute_url(self) -> str:
        return reverse("handover", args=[self.number])

    def __str__(self) -> str:
        return self.number

    @property
    def is_final(self) -> bool:
        return self.kind in self.FINAL

    @property
    def purposes(self) -> tuple[str, ...]:
        """What consents are asked about: that it is sold or exchanged, and what it is to serve as where it goes."""
        by_kind = {self.Kind.SALE: SALE, self.Kind.EXCHANGE: EXCHANGE}.get(self.Kind(self.kind), "")
        return tuple(filter(None, (by_kind, self.serves.label if self.serves else "")))

    @property
    def is_out(self) -> bool:
        return self.out_on is not None and self.back_on is None

    def overdue_on(self, day: date) -> bool:
        return self.is_out and not self.is_final and self.due_on is not None and self.due_on < day


class HandlingSession(Tracked):
    """Hours in which hands were on a copy: a touch table, a class, a sorting."""

    item = models.ForeignKey("records.Item", models.PROTECT, related_name="handling", editable=False)
    happened_on = models.DateField("on")
    time_h = models.FloatField("for", validators=[MinValueValidator(0.01), MaxValueValidator(24)])
    people_count = models.PositiveSmallIntegerField(
        "people", null=True, blank=True, validators=[MinValueValidator(1), MaxValueValidator(10_000)]
    )
    occasion = models.CharField(max_length=300)
    supervised_by = models.ForeignKey("records.Party", models.PROTECT, related_name="+")
    seen = models.CharField("seen afterwards", max_length=300, blank=True)

    class Meta:
        ordering = ["-happened_on", "-id"]

    def __str__(self) -> str:
        return f"{self.item.number} handled on {day_words(self.happened_on)}"
