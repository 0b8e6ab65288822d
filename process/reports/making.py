"""Everything that the process report of a copy tells, read once: its parts, runs, moulds, permissions and people."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

from django.db.models import Q

from process.models import BathAnalysis, FinishStep, Inspection, MakingUp, Mould, Run, Shell
from process.summaries.baths import AnalysisSummary, analysis_summary
from process.summaries.cathodes import CathodeSummary
from process.summaries.copies import CopySummary
from process.summaries.copies import summarise as copy_summary
from process.summaries.runs import RunSummary, summarise
from records.limits import concessions_along
from records.lineage import Descent, descent_of
from records.models import (
    Concession,
    ConditionReport,
    Consent,
    Gate,
    Item,
    Mark,
    Measurement,
    Photo,
    RiskAssessment,
    Specification,
    UnmetGate,
)  # fmt: skip
from records.portraits import best_of, in_order

MADE = MakingUp.objects.select_related(
    "fill", "core__item", "core__pull__mould", "made_up_by", "commission__requester", "commission__purpose"
)
MOULDS = Mould.objects.select_related("item", "model__owner", "material", "made_by", "accepted_by", "fate_witness")
MOULD_ROWS = ("pulls", "gauges", "parts", "wear_seen__pull")


@dataclass(frozen=True)
class Making:
    """A copy and all that it came of."""

    copy: Item
    making_up: MakingUp
    chain: Descent

    @property
    def line(self) -> list[Item]:
        """The copy and everything that it was made from."""
        return [self.copy, *self.chain.forebears]

    @property
    def things(self) -> list[Item]:
        """Its line with the models, also where a step of the descent was not recorded."""
        return [*self.line, *self.models]

    @cached_property
    def shells(self) -> list[Shell]:
        return list(
            self.making_up.shells.select_related("item", "cathode").prefetch_related("thickness_points__measured_by")
        )

    @cached_property
    def runs(self) -> list[RunSummary]:
        rows = (
            Run.objects.with_sheet()
            .with_traces()
            .filter(cathodes__shell__making_up=self.making_up)
            .distinct()
            .order_by("number")
        )
        return [summarise(run) for run in rows.prefetch_related("bath__limits")]

    @cached_property
    def moulds(self) -> list[Mould]:
        used = Q(cathodes__shell__making_up=self.making_up) | Q(item__in=[thing.pk for thing in self.line])
        return list(MOULDS.filter(used).distinct().order_by("item__number").prefetch_related(*MOULD_ROWS))

    @cached_property
    def models(self) -> list[Item]:
        return list({mould.model_id: mould.model for mould in self.moulds}.values())

    @property
    def model_word(self) -> str:
        """What it was copied from is called the original only where it is one; a copy of a copy has a model."""
        return "original" if all(model.kind == Item.Kind.ORIGINAL for model in self.models) else "model"

    @cached_property
    def consents(self) -> list[Consent]:
        """Those under which the work was done: of its commission, or in force when a mould was made."""
        rows = Consent.objects.filter(items__in=self.things).select_related("owner", "given_by")
        rows = rows.prefetch_related("items", "commissions").distinct().order_by("given_on")
        return [row for row in rows if self._worked_under(row)]

    def _worked_under(self, consent: Consent) -> bool:
        if self.making_up.commission_id in consent.commission_keys:
            return True
        return any(consent.in_force_on(mould.made_on) for mould in self.moulds)

    @cached_property
    def risks(self) -> list[RiskAssessment]:
        rows = RiskAssessment.objects.filter(item__in=self.things, signed_at__isnull=False)
        return list(rows.select_related("item", "assessor", "signed_by").order_by("assessed_on"))

    @cached_property
    def specifications(self) -> list[Specification]:
        """Of its commission, for the piece that was copied."""
        rows = Specification.objects.filter(commission=self.making_up.commission_id, item__in=self.models)
        return list(rows.select_related("item", "signed_by"))

    @cached_property
    def reports(self) -> list[ConditionReport]:
        pair = [ConditionReport.Occasion.BEFORE, ConditionReport.Occasion.AFTER]
        rows = ConditionReport.objects.filter(item__in=self.models, occasion__in=pair)
        return list(rows.select_related("item", "examiner", "signed_by").order_by("examined_on"))

    @cached_property
    def concessions(self) -> list[Concession]:
        """Those that hold along its line, those of models whose step was not recorded, and those of its inspections."""
        unlinked = [model.pk for model in self.models if model not in self.line]
        models = Q(items__in=unlinked, given_on__lte=self.making_up.made_up_on)
        named = concessions_along(self.chain) | models | Q(inspections__copy=self.copy)
        rows = Concession.objects.filter(named).select_related("given_by").prefetch_related("items")
        return list(rows.distinct().order_by("number"))

    @cached_property
    def unmet(self) -> list[UnmetGate]:
        """What was recorded afterwards of this copy's own making, not of its sisters'."""
        numbers = {thing.number for thing in self.line} | {each.run.number for each in self.runs}
        found: dict[tuple[str, str], UnmetGate] = {}
        for row in UnmetGate.objects.filter(subject_number__in=numbers):
            found.setdefault((row.gate, row.sentence), row)
        return list(found.values())

    @cached_property
    def marks(self) -> list[Mark]:
        return list(self.copy.marks.select_related("photo", "made_by", "witness"))

    @cached_property
    def finishes(self) -> list[FinishStep]:
        return list(self.copy.finish_steps.select_related("finish", "done_by"))

    @cached_property
    def inspections(self) -> list[Inspection]:
        return list(self.copy.inspections.select_related("inspector", "signed_by", "concession"))

    @property
    def inspection(self) -> Inspection | None:
        return next(iter(self.inspections), None)

    @cached_property
    def photos(self) -> list[Photo]:
        marked = {mark.photo_id for mark in self.marks}
        return [photo for photo in in_order(self.copy.photos.all()) if photo.pk not in marked]

    @property
    def portrait(self) -> Photo | None:
        """The photograph that stands for the copy; one of a mark where there is no other."""
        return best_of(self.photos) or best_of(mark.photo for mark in self.marks if mark.photo)

    @cached_property
    def sizes(self) -> list[Measurement]:
        return list(Measurement.objects.filter(item__in=[self.copy, *self.models]))

    @cached_property
    def figures(self) -> CopySummary:
        return copy_summary(self.making_up, self.finishes, self.inspection)

    @cached_property
    def analyses(self) -> dict[str, AnalysisSummary | None]:
        """For each run the last analysis of its bath before the start."""
        found = {}
        for each in self.runs:
            rows = BathAnalysis.objects.filter(bath=each.run.bath).select_related("bath", "analyst")
            if each.sheet.started_at:
                rows = rows.filter(sampled_at__lte=each.sheet.started_at)
            last = rows.order_by("-sampled_at").first()
            found[each.run.number] = analysis_summary(last) if last else None
        return found

    def own(self, summary: RunSummary) -> list[CathodeSummary]:
        """The cathodes of a run whose shells are in this copy."""
        mine = {shell.pk for shell in self.shells}
        return [each for each in summary.cathodes if each.shell and each.shell.pk in mine]


def gather(copy: Item) -> Making:
    return Making(copy, MADE.get(pk=copy.pk), descent_of(copy))


def gate_words(gate: str) -> str:
    return Gate(gate).label


def listed(numbers: Iterable[object]) -> str:
    return ", ".join(str(number) for number in numbers)
