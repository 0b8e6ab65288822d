"""A core as one line of a list: dry or not, tight or not, and how its skin dries."""

from dataclasses import dataclass

from django.db.models import Prefetch

from process.models import Cathode, Core, Shell
from process.summaries.core_drying import CoreDrying, core_drying
from process.summaries.cores import leak_of, leak_words
from process.summaries.drying import Drying, bare_drying_of
from records.figures import Figure
from records.units import show

SHELLS = Shell.objects.select_related("item", "making_up").prefetch_related("item__weighings__person", "closings")
GROWN = Cathode.objects.prefetch_related(Prefetch("shell", SHELLS))


@dataclass(frozen=True)
class CoreLine:
    core: Core
    before: CoreDrying
    leak: Figure | None
    skin: Drying | None

    @property
    def leak_words(self) -> str:
        return show(self.leak.value, "_pct", digits=2) if self.leak and self.leak.value is not None else "not tested"

    @property
    def skin_words(self) -> str:
        return self.skin.word if self.skin else "no skin yet"

    @property
    def leak_shape(self) -> str:
        return "done" if self.leak and self.leak.value is not None and not leak_words(self.leak) else "look"


def cores_with_lines():
    rows = Core.objects.select_related("item", "pull__mould__item")
    return rows.prefetch_related("item__weighings", Prefetch("cathodes", GROWN))


def line_of_core(core: Core) -> CoreLine:
    shells: list[Shell] = [each.shell for each in core.cathodes.all() if hasattr(each, "shell")]
    return CoreLine(core, core_drying(core), leak_of(core), bare_drying_of(shells[-1]) if shells else None)
