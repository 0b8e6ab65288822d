"""What the making puts among the limits of use of a piece: boundaries in its walls, and the core under its skin."""

from collections.abc import Iterable

from django.db.models import BooleanField, Exists, ExpressionWrapper, OuterRef, Q

from process.models import Shell
from process.models.run_rows import was_cut
from process.summaries.copy_limits import limits_of_shells
from process.summaries.core_limits import limit_of_core
from records.extensions import Limit, limit_signs, limit_sources

WAS_CUT = was_cut("cathode__run")


def of_shells(inside: set[int]) -> Iterable[Limit]:
    """Of each shell in the piece; what grew undisturbed off a mould forbids nothing.

    Two shells of one run are named, for one coupon does not speak for the other. Of a skin on a core: what may have
    stayed in it, and what was left open.
    """
    rows = (
        Shell.objects.filter(pk__in=inside)
        .filter(Q(cathode__core__isnull=False) | WAS_CUT)
        .annotate(cut=ExpressionWrapper(WAS_CUT, BooleanField()))
    )
    shells = list(rows.select_related("item", "cathode__run", "making_up"))
    if cut := [shell for shell in shells if shell.cut]:
        for wall in limits_of_shells(cut):
            yield Limit(f"{wall.name}: {wall.sentence}", f"wall of {wall.name}", wall.reason)
    for shell in shells:
        if shell.cathode.core_id:
            yield limit_of_core(shell)


_OWN = Shell.objects.filter(Q(pk=OuterRef("pk")) | Q(making_up=OuterRef("pk")))
limit_sources.append(of_shells)
limit_signs.append(Q(Exists(_OWN.filter(Q(cathode__core__isnull=False) | WAS_CUT))))
