"""A form that was sent and acted on: sending it again finds this row, and nothing is done a second time."""

from django.db import models

from records import clock


class SentForm(models.Model):
    """Kept for a month; what came of the form has its own history."""

    token = models.UUIDField(primary_key=True)
    digest = models.CharField(max_length=64)  # of who sent what to which address
    answer = models.CharField(max_length=500, blank=True)  # where the first sending led
    sent_at = models.DateTimeField(default=clock.now, db_index=True)

    def __str__(self) -> str:
        return str(self.token)
