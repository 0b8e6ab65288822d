"""The one row for every physical thing: original, historic copy, cast, mould, core, matrix, shell and copy."""

from django.db import models
from django.db.models.functions import Lower
from django.urls import reverse

from records.searching import words_of

from .base import Tracked, TrackedQuerySet


class ItemQuerySet(TrackedQuerySet):
    def originals(self) -> "ItemQuerySet":
        """What a commission can ask a copy of: originals, and copies that become models."""
        return self.filter(kind__in=[Item.Kind.ORIGINAL, Item.Kind.HISTORIC_COPY, Item.Kind.COPY])

    def copies(self) -> "ItemQuerySet":
        return self.filter(kind__in=[Item.Kind.COPY, Item.Kind.HISTORIC_COPY])

    def made_here(self) -> "ItemQuerySet":
        return self.filter(kind=Item.Kind.COPY)


class Item(Tracked):
    class Kind(models.TextChoices):
        ORIGINAL = "original", "original"
        HISTORIC_COPY = "historic_copy", "historic copy"
        CAST = "cast", "cast"
        MOULD = "mould", "mould"
        CORE = "core", "core"
        MATRIX = "matrix", "matrix"
        SHELL = "shell", "shell"
        COPY = "copy", "copy"

    class Status(models.TextChoices):
        """Step 28: how a thing is held. Where a commission stands is computed, this is not."""

        ACCESSIONED = "accessioned", "accessioned"
        LOAN_IN = "loan_in", "on loan to us"
        INVENTORY = "inventory", "inventory, not accessioned"
        HANDLING = "handling", "handling stock"
        FOR_SALE = "for_sale", "for sale"
        EXCHANGE = "exchange", "for exchange"
        WORKSHOP = "workshop", "in the workshop"
        EVIDENCE = "evidence", "kept as evidence"
        LEFT = "left", "left the museum"
        LOST = "lost", "lost or untraced"
        STOLEN = "stolen", "stolen"
        DESTROYED = "destroyed", "destroyed"

    class Hallmarks(models.TextChoices):
        NONE = "none", "looked for, none"
        PRESENT = "present", "present"

    class Money(models.TextChoices):
        NO = "no", "no money, or none any more"
        CURRENT = "current", "money that is used now, anywhere"

    number = models.CharField(max_length=40, unique=True)
    kind = models.CharField(max_length=20, choices=Kind)
    status = models.CharField("held as", max_length=20, choices=Status, default=Status.ACCESSIONED)

    # The nine categories of Object ID; measurements, marks and photographs have rows of their own.
    title = models.CharField(max_length=300)
    object_type = models.CharField("type of object", max_length=200, blank=True)
    materials = models.CharField("materials and techniques", max_length=300, blank=True)
    inscriptions = models.TextField("inscriptions and markings", blank=True)
    features = models.TextField("distinguishing features", blank=True, help_text="Damage, repair, defects of making.")
    subject = models.CharField(max_length=300, blank=True)
    maker = models.CharField(max_length=200, blank=True)
    date_words = models.CharField(
        "date or period", max_length=80, blank=True, help_text="“1624”, “about 1868”, “before 1889”"
    )
    date_edtf = models.CharField(max_length=80, blank=True, editable=False)
    date_earliest = models.DateField(null=True, blank=True, editable=False)
    date_latest = models.DateField(null=True, blank=True, editable=False)
    description = models.TextField("short description", blank=True)

    origin = models.CharField("place of origin or discovery", max_length=200, blank=True)
    related_material = models.TextField("related written material", blank=True)

    owner = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="owned")
    place = models.ForeignKey("records.Place", models.PROTECT, null=True, blank=True, related_name="items")
    documented_on = models.DateField(null=True, blank=True)

    # What rules on marks ask of an original.
    hallmarks = models.CharField("hallmarks or assay marks", max_length=20, choices=Hallmarks, blank=True)
    money = models.CharField("is it money?", max_length=20, choices=Money, blank=True)

    search_text = models.TextField(blank=True, editable=False)

    objects = ItemQuerySet.as_manager()

    class Meta:
        ordering = ["number"]
        constraints = [
            models.UniqueConstraint(
                Lower("number"), name="item_number_once", violation_error_message="This number is taken."
            )
        ]
        indexes = [models.Index(fields=["kind", "number"])]

    def get_absolute_url(self) -> str:
        return reverse("item", args=[self.number])

    def __str__(self) -> str:
        return f"{self.number} {self.title}"

    def save(self, *args, **kwargs) -> None:
        self.search_text = words_of(self)
        super().save(*args, **kwargs)

    def reindex(self) -> None:
        """Refresh the search words after a mark changed; not a change of the record itself."""
        self.skip_history_when_saving = True
        self.save(update_fields=["search_text"])
        del self.skip_history_when_saving

    @property
    def is_copy(self) -> bool:
        return self.kind in {self.Kind.COPY, self.Kind.HISTORIC_COPY}

    @property
    def made_here(self) -> bool:
        return self.kind == self.Kind.COPY
