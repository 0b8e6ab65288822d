"""Sign-ins that failed, kept for an hour, so that nobody can try passwords at leisure."""

from django.db import models

from records import clock


class FailedSignIn(models.Model):
    """One try with a wrong password, from one address of the network."""

    name = models.CharField(max_length=150, db_index=True)
    address = models.CharField(max_length=64)
    at = models.DateTimeField(default=clock.now, db_index=True)

    def __str__(self) -> str:
        return f"{self.name} from {self.address}"
