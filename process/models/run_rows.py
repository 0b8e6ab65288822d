"""Questions that are asked of runs, as queryset methods."""

from django.apps import apps
from django.db.models import Exists, F, OuterRef, Prefetch, Q, Subquery, Sum

from records.models import TrackedQuerySet
from records.riding import riding

# What a row of the rule for interruptions is judged by.
RULE_COLUMNS = (
    "id", "words", "longer_than_s", "up_to_s", "time_known", "contact_lost", "handling", "out_up_to_s", "activated",
    "returned_by_itself", "risk",
)  # fmt: skip


def _rule() -> Subquery:
    """The whole rule for interruptions."""
    return riding(apps.get_model("process", "RiskRule").objects.filter(is_retired=False), RULE_COLUMNS)


COUPON_COLUMNS = ("id", "number", "bends_count", "layers", "layers_at_mm", "note")


def _coupons() -> Subquery:
    """The coupons of what grew on a cathode."""
    return riding(apps.get_model("process", "CouponTest").objects.filter(shell__cathode=OuterRef("pk")), COUPON_COLUMNS)


def was_cut(run: str) -> Q:
    """Whether the current was gone at least once during the run that this column names."""
    model = apps.get_model
    gone = model("process", "Event").objects.filter(run=OuterRef(run), kind="interruption")
    dead = model("process", "Reading").objects.filter(run=OuterRef(run), current_a=0)
    logged = model("process", "Trace").objects.accepted().filter(run=OuterRef(run)).exclude(stretches=[])
    return Q(Exists(gone)) | Q(Exists(dead)) | Q(Exists(logged))


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

    def with_sheet(self, points: bool = True, walls: bool | None = None) -> "RunQuerySet":
        """Everything that a summary reads, in few queries; without `points` no measured wall or ramp is shown.

        `walls` is what boundaries are judged by: the rule, its answers, the coupons; as `points` where not said.
        """
        walls = points if walls is None else walls
        model = apps.get_model
        cathodes = model("process", "Cathode").objects.select_related(
            "mould__item", "mould__model", "core__item", "coat", "pull", "shell__item", "shell__making_up__copy"
        )
        steps = model("process", "RampStep").objects.all()
        measured = model("process", "ThicknessPoint").objects.all()
        answers = model("process", "InterruptionAnswers").objects
        cathodes = cathodes.annotate(coupon_rows=_coupons()) if walls else cathodes
        related = ("bath", "commission", "operator", "power_unit")
        rows = self.with_traced()
        return (
            (rows.annotate(rule_rows=_rule()) if walls else rows)
            .select_related(*related)
            .prefetch_related(
                Prefetch("ramp_steps", steps if points else steps.none()),
                Prefetch("readings", model("process", "Reading").objects.select_related("person")),
                Prefetch("events", model("process", "Event").objects.select_related("person", "cathode")),
                Prefetch("cathodes", cathodes),
                Prefetch("cathodes__shell__thickness_points", measured if points else measured.none()),
                *([] if walls else [Prefetch("interruption_answers", answers.none())]),  # else asked of what was cut
            )
        )
