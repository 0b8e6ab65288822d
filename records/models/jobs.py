"""Long work that a worker does while its person goes on: what was asked, how far it is, and how it ended."""

import uuid
from datetime import timedelta

from django.conf import settings
from django.db import models
from django.urls import reverse

from records import clock

LOST_AFTER = timedelta(seconds=30)  # without a sign of life


class Job(models.Model):
    """`seen_at` is the last sign of life; `url` is where it led, or where one goes on after a refusal."""

    class State(models.TextChoices):
        WAITING = "waiting", "waiting for its turn"
        WORKING = "working", "at work"
        DONE = "done", "done"
        REFUSED = "refused", "cannot be done so"
        FAILED = "failed", "failed"

    token = models.UUIDField(unique=True, default=uuid.uuid4, editable=False)
    kind = models.CharField(max_length=40)
    title = models.CharField(max_length=300)
    arguments = models.JSONField(default=dict)
    asked_by = models.ForeignKey(settings.AUTH_USER_MODEL, models.SET_NULL, null=True, related_name="+")
    asked_at = models.DateTimeField()
    seen_at = models.DateTimeField()
    state = models.CharField(max_length=20, choices=State, default=State.WAITING)
    attempt_count = models.PositiveIntegerField(default=1)
    step = models.CharField(max_length=200, blank=True)
    done_pct = models.FloatField(default=0.0)
    fault = models.TextField(blank=True)
    url = models.CharField(max_length=500)

    class Meta:
        ordering = ["-asked_at"]

    def __str__(self) -> str:
        return self.title

    def get_absolute_url(self) -> str:
        return reverse("job", args=[self.token])

    @property
    def is_open(self) -> bool:
        return self.state in {self.State.WAITING, self.State.WORKING}

    @property
    def is_lost(self) -> bool:
        """Nobody works on it: its worker died, or there is none; one that waits behind another is not lost."""
        if not self.is_open or clock.now() - self.seen_at < LOST_AFTER:
            return False
        alive = Job.objects.filter(state=self.State.WORKING, seen_at__gt=clock.now() - LOST_AFTER)
        return self.state == self.State.WORKING or not alive.exists()
