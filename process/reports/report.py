"""The process report of a copy made here: from the permission to the acceptance, with everything behind the figures."""

from itertools import chain
from typing import Any

from process.models import AreaPart
from process.reports import allowed, appendices, cores, finished, judgements, moulds, opening, people, runs
from process.reports.making import Making, gather
from process.summaries.struck import lines_with_struck
from records.extensions import PaperContext
from records.limits import limits_along
from records.models import Item
from records.pdf import blocks as b
from records.pdf.document import build
from records.reports.attached import record
from records.reports.parts import head
from records.sentences import named, title_of

KIND = "Process report"


def blocks(m: Making, context: PaperContext) -> list[b.Block]:
    ran = chain.from_iterable(runs.run(m, each) for each in m.runs)
    return [
        *opening.notices(m), opening.cover(m), *opening.descent(m), *allowed.permissions(m),
        *allowed.specification(m), *allowed.original(m),
        *moulds.moulds(m), *cores.core(m),
        *ran, *judgements.evidence(m), *finished.making_up(m), *finished.finish(m), *finished.marks(m),
        *finished.inspection(m),
        *finished.comparison(m),
        *finished.photographs(m), *finished.care(m), *people.signatures(context), *people.who(m, context),
        *appendices.workings(m), *appendices.readings(m), *appendices.definitions(),
    ]  # fmt: skip


def attached(m: Making, context: PaperContext) -> dict[str, Any]:
    """Every row behind the report."""
    cathodes = [shell.cathode for shell in m.shells]
    rows = {
        "copy": [m.copy], "making-up": [m.making_up], "core": [m.making_up.core] if m.making_up.core else [],
        "weighings": [row for thing in m.line for row in thing.weighings.all()],
        "closings of the core": [row for shell in m.shells for row in shell.closings.all()],
        "finish": m.finishes,
        "marks": m.marks, "inspections": m.inspections, "measurements of copy and model": m.sizes,
        "photographs": m.photos,
        "steps of the descent": m.chain.rows, "models": m.models, "consents": m.consents, "risk assessments": m.risks,
        "specifications": m.specifications,
        "condition reports": m.reports, "moulds": m.moulds,
        "pulls": chain.from_iterable(mould.pulls.all() for mould in m.moulds),
        "shells": m.shells, "cathodes": cathodes,
        "thickness points": chain.from_iterable(s.thickness_points.all() for s in m.shells),
        "coupons": chain.from_iterable(s.coupon_tests.all() for s in m.shells),
        "defects": chain.from_iterable(s.defects.all() for s in m.shells),
        "answers about interruptions": chain.from_iterable(e.run.interruption_answers.all() for e in m.runs),
        "runs": [each.run for each in m.runs],
        "steps of the ramps": chain.from_iterable(each.run.ramp_steps.all() for each in m.runs),
        "power units": {each.run.power_unit_id: each.run.power_unit for each in m.runs if each.run.power_unit}.values(),
        "parts of the areas": AreaPart.objects.filter(cathode__in=cathodes),
        "readings and events": [line.row for each in m.runs for line in lines_with_struck(each.run, each.sheet)],
        "baths": {each.run.bath_id: each.run.bath for each in m.runs}.values(),
        "bath analyses": {a.analysis.pk: a.analysis for a in m.analyses.values() if a}.values(),
        "concessions": m.concessions, "unmet gates, recorded afterwards": m.unmet,
    }  # fmt: skip
    figures = (figure for _, figure in appendices.named_figures(m))
    return record(KIND, m.copy.number, context, rows, figures, limits_along(m.copy, m.chain))


def make(copy: Item, context: PaperContext) -> tuple[bytes, dict[str, Any]]:
    m = gather(copy)
    data = attached(m, context)
    paper = head(KIND, copy.number, title_of(copy), opening.summary(m), context, named(copy))
    return build(paper, blocks(m, context), data, context.issued_at), data
