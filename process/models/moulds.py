"""Moulds, and every use that was made of one."""

from django.db import models

from records.models import Tracked


class Side(models.TextChoices):
    OBVERSE = "obverse", "obverse"
    REVERSE = "reverse", "reverse"
    FRONT = "front", "front"
    BACK = "back", "back"
    WHOLE = "whole", "whole"
    SECTION = "section", "one section of several"


class Mould(Tracked):
    class Fate(models.TextChoices):
        IN_STORE = "in_store", "in store"
        ON_LOAN = "on_loan", "on loan"
        RETURNED = "returned", "returned"
        DESTROYED = "destroyed", "destroyed"
        LOST = "lost", "lost"

    item = models.OneToOneField("records.Item", models.PROTECT, primary_key=True, related_name="mould")
    model = models.ForeignKey(
        "records.Item",
        models.PROTECT,
        related_name="moulds",
        verbose_name="taken from",
        help_text="The piece it was moulded on.",
    )
    side = models.CharField(max_length=20, choices=Side)
    commission = models.ForeignKey("records.Commission", models.PROTECT, null=True, blank=True, related_name="moulds")
    material = models.ForeignKey(
        "records.Term", models.PROTECT, related_name="+", limit_choices_to={"scheme": "mould_material"}
    )
    batch = models.CharField("batch and mix", max_length=200, blank=True)
    barrier = models.CharField("release or barrier", max_length=200, blank=True)
    made_on = models.DateField()
    made_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    present = models.ForeignKey(
        "records.Party",
        models.PROTECT,
        null=True,
        blank=True,
        related_name="+",
        verbose_name="also present",
        help_text="For the owner, or as a conservator.",
    )
    contact_h = models.FloatField("time on the original", null=True, blank=True)
    working_temperature_degc = models.FloatField("temperature at contact", null=True, blank=True)
    demoulding = models.TextField("demoulding: force, anything left behind", blank=True)
    shrinkage_pct = models.FloatField(
        "linear change", null=True, blank=True, help_text="Negative when the mould is smaller."
    )
    shrinkage_on = models.DateField("measured on", null=True, blank=True)
    pulls_allowed_count = models.PositiveSmallIntegerField(
        "pulls allowed", help_text="What the mould can bear; the consent may allow less."
    )
    accepted_on = models.DateField(null=True, blank=True, help_text="Inspected under the lens, numbered and tagged.")
    accepted_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    fate = models.CharField(max_length=20, choices=Fate, default=Fate.IN_STORE)
    fate_on = models.DateField(null=True, blank=True)
    fate_witness = models.ForeignKey(
        "records.Party", models.PROTECT, null=True, blank=True, related_name="+", verbose_name="witness"
    )
    fate_how = models.CharField(
        "how it ended", max_length=300, blank=True, help_text="Cut up, melted, sent by whom; with which of its parts."
    )
    custodian = models.ForeignKey(
        "records.Party", models.PROTECT, null=True, blank=True, related_name="+",
        help_text="Who answers for it while it is kept.",
    )  # fmt: skip
    kept_how = models.CharField(
        "how it is kept", max_length=200, blank=True, help_text="Dark, cool, flat, in its jacket."
    )
    decide_by = models.DateField(
        "next decision by", null=True, blank=True, help_text="Use again, retire, return or destroy: it stands on the "
        "list of duties with this day.",
    )  # fmt: skip

    class Meta:
        ordering = ["item__number"]

    def get_absolute_url(self) -> str:
        return self.item.get_absolute_url()

    def __str__(self) -> str:
        return f"{self.item.number} ({self.get_side_display()})"


class Pull(Tracked):
    """One use of a mould: a row of its own, so that no use is ever counted twice or forgotten."""

    class Use(models.TextChoices):
        DEPOSIT = "deposit", "deposit"
        CAST = "cast", "cast"

    mould = models.ForeignKey(Mould, models.PROTECT, related_name="pulls")
    number_count = models.PositiveSmallIntegerField("pull")
    use = models.CharField(max_length=20, choices=Use, default=Use.DEPOSIT)
    used_on = models.DateField()

    class Meta:
        ordering = ["mould", "number_count"]
        constraints = [models.UniqueConstraint(fields=["mould", "number_count"], name="pull_once")]

    def __str__(self) -> str:
        return f"pull {self.number_count} of {self.mould.item.number}"
