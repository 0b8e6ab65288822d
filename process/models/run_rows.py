"""Questions that are asked of runs, as queryset methods."""

from django.apps import apps
from django.db.models import Exists, F, OuterRef, Prefetch, Subquery, Sum

from records.models import TrackedQuerySet


class RunQuerySet(TrackedQuerySet):
    def _with(self, kind: str) -> Exists:
        events = apps.get_model("process", "Event").objects
        return Exists(events.filter(run=OuterRef("pk"), kind=kind))

    def planned(self) -> "RunQuerySet":
        return self.filter(~self._with("entry"), outcome="")

    def in_the_bath(self) -> "RunQuerySet":
        return self.filter(self._with("entry"), ~self._with("stop"))

    def going_on(self) -> "RunQuerySet":
        """In the bath now: entered and not stopped, whether current flows or not."""
        return self.in_the_bath().filter(outcome="")

    def to_be_judged(self) -> "RunQuerySet":
        """Stopped, without an outcome yet."""
        return self.filter(self._with("stop"), outcome="")

    def with_traced(self) -> "RunQuerySet":
        """`traced_ah`: what the accepted logger traces counted together; None where there is none."""
        traces = apps.get_model("process", "Trace").objects.accepted().filter(run=OuterRef("pk")).order_by()
        total = traces.values("run").annotate(total=Sum(F("known_ah") + F("bridged_ah"))).values("total")
        return self.annotate(traced_ah=Subquery(total))

    def with_evidence(self) -> "RunQuerySet":
        """What a charge is counted from, and no more."""
        return self.with_traced().prefetch_related("readings", "events")

    def with_traces(self) -> "RunQuerySet":
        """The traces themselves, for a page that shows them; and whether a line of the sheet was struck out."""
        gone = {
            f"has_struck_{name}": Exists(
                apps.get_model("process", name).every.filter(run=OuterRef("pk"), struck_at__isnull=False)
            )
            for name in ("reading", "event")
        }
        return self.annotate(**gone).prefetch_related(
            Prefetch("traces", apps.get_model("process", "Trace").objects.light())
        )

    def with_sheet(self, points: bool = True) -> "RunQuerySet":
        """Everything that a summary reads, in few queries; without points for a list without walls and ramps."""
        model = apps.get_model
        cathodes = model("process", "Cathode").objects.select_related(
            "mould__item", "mould__model", "core__item", "coat", "pull", "shell__item", "shell__making_up__copy"
        )
        steps = model("process", "RampStep").objects.all()
        measured = model("process", "ThicknessPoint").objects.all()
        related = ("bath", "commission", "operator", "power_unit")
        return (
            self.with_traced()
            .select_related(*related)
            .prefetch_related(
                Prefetch("ramp_steps", steps if points else steps.none()),
                Prefetch("readings", model("process", "Reading").objects.select_related("person")),
                Prefetch("events", model("process", "Event").objects.select_related("person")),
                Prefetch("cathodes", cathodes),
                Prefetch("cathodes__shell__thickness_points", measured if points else measured.none()),
            )
        )
