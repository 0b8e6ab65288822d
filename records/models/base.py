"""What every kept row shares: its history, its version, and the words in which its numbers were typed."""

from typing import Any, NoReturn

from django.db import models
from simple_history.models import HistoricalRecords

from records import clock


class UntrackedWrite(TypeError):
    """A write that would leave no trace in the history."""


class TrackedQuerySet(models.QuerySet):
    """Refuses the writes that history cannot see."""

    def _refuse(self, verb: str) -> NoReturn:
        raise UntrackedWrite(f"{self.model.__name__}.{verb} leaves no history: save the rows one by one.")

    def update(self, **kwargs: Any) -> NoReturn:
        self._refuse("update")

    def bulk_create(self, *args: Any, **kwargs: Any) -> NoReturn:
        self._refuse("bulk_create")

    def bulk_update(self, *args: Any, **kwargs: Any) -> NoReturn:
        self._refuse("bulk_update")


class Tracked(models.Model):
    """Base of every row that a person's word stands behind."""

    created_at = models.DateTimeField(default=clock.now, editable=False)
    version = models.PositiveIntegerField(default=0, editable=False)
    # {"mass_g": {"number": 71.36, "unit": "g", "text": "71,36", "kind": "measured", "method": "", "plus_minus": 0.01}}
    as_typed = models.JSONField(default=dict, blank=True, editable=False)

    objects = TrackedQuerySet.as_manager()
    history = HistoricalRecords(inherit=True, history_change_reason_field=models.TextField(null=True))

    class Meta:
        abstract = True

    def save(self, *args: Any, **kwargs: Any) -> None:
        """Each change raises the version, so that a form opened before it can see that it is late."""
        fields = kwargs.get("update_fields")
        if not self._state.adding and (fields is None or "version" in fields):
            self.version += 1
        super().save(*args, **kwargs)

    def plus_minus(self, field: str) -> float | None:
        """The ± that was entered with a number, in the column's unit."""
        return (self.as_typed.get(field) or {}).get("plus_minus")

    def evidence(self, field: str) -> str:
        """The kind of evidence entered with a number: measured unless said otherwise."""
        return (self.as_typed.get(field) or {}).get("kind") or "measured"


class Signed(models.Model):
    """A signature keeps the person, the role it was given in, and the instant."""

    signed_by = models.ForeignKey("records.Party", models.PROTECT, null=True, blank=True, related_name="+")
    signed_role = models.CharField("signed as", max_length=20, blank=True, default="")
    signed_at = models.DateTimeField(null=True, blank=True)

    class Meta:
        abstract = True

    @property
    def is_signed(self) -> bool:
        return self.signed_at is not None
