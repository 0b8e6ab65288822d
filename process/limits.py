"""What the making puts among the limits of use of a piece: boundaries in its walls, and the core under its skin."""

from collections.abc import Iterable

from django.db.models import Exists, OuterRef, Q

from process.models import Shell
from process.models.run_rows import was_cut
from process.summaries.copy_limits import limits_of_shells
from process.summaries.core_limits import limit_of_core
from records.extensions import Limit, limit_signs, limit_sources


def walls(inside: set[int]) -> Iterable[Limit]:
    """Of each shell in the piece; two shells of one run are named, for one coupon does not speak for the other."""
    shells = Shell.objects.filter(pk__in=inside)
    for wall in limits_of_shells(shells.filter(was_cut("cathode__run"))):
        yield Limit(f"{wall.name}: {wall.sentence}", f"wall of {wall.name}", wall.reason)


def cores(inside: set[int]) -> Iterable[Limit]:
    """Of each skin on a core: what may have stayed in it, and what was left open."""
    skins = Shell.objects.filter(pk__in=inside, cathode__core__isnull=False)
    for shell in skins.select_related("item", "cathode__run", "making_up"):
        yield limit_of_core(shell)


_OWN = Shell.objects.filter(Q(pk=OuterRef("pk")) | Q(making_up=OuterRef("pk")))
limit_sources.extend([walls, cores])
limit_signs.append(Q(Exists(_OWN.filter(Q(cathode__core__isnull=False) | was_cut("cathode__run")))))
