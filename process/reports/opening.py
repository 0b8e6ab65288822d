"""The first page of a process report: what was made of what, what limits its use, and how it came to be."""

from process.chemistry.judgement import Band
from process.models import Inspection
from process.reports import judgements
from process.reports.making import Making, gate_words
from process.summaries.copy_states import state_from
from records import sentences
from records.models import Concession, Photo
from records.pdf import blocks as b
from records.reports.figures import figure_fact
from records.reports.marking import is_unmarked
from records.reports.parts import caption_of, local_day, losses, printed, strip
from records.wording import phrases

LONGEST_HEADING = 160


def summary(m: Making) -> str:
    """One sentence: what it is, of what, when and by whom."""
    kind = sentences.kind_words(m.copy, m.chain)
    models = phrases.listed([f"{model.number}, {model.title}" for model in m.models]) or "a model that is not recorded"
    runs = phrases.listed([each.run.number for each in m.runs])
    by = f" by {m.making_up.made_up_by}" if m.making_up.made_up_by else ""
    grown = f", deposited in {'runs' if len(m.runs) > 1 else 'run'} {runs}" if runs else ""
    return f"{kind} of {models}{grown} and made up{by} on {local_day(m.making_up.made_up_on)}; {m.chain.words}."


def notices(m: Making) -> list[b.Block]:
    """All that must be known before the piece is used: first what it lacks, then what was conceded."""
    blocks: list[b.Block] = losses(m.chain.forebears)
    if is_unmarked(m.copy):
        blocks.append(
            b.Notice(phrases.UNMARKED, "The piece carries no permanent, photographed mark that says it is a copy.")
        )
    if not any(inspection.accepts for inspection in m.inspections):
        blocks.append(b.Notice("Not accepted", _acceptance_words(m)))
    for each in m.runs:
        for drying in each.dryings:
            if drying.shape == "blocked":
                blocks.append(b.Notice(f"{drying.word.capitalize()}: {drying.shell}", drying.sentence))
        if each.result and each.result.shape == "blocked" and each.result.band is not Band.ABSORBED:
            blocks.append(b.Notice(f"The balance of run {each.run.number} is in doubt", each.result.sentence))
    blocks += judgements.notices(m)
    for concession in m.concessions:
        blocks.append(_conceded(concession))
    if m.unmet:
        rows = [
            f"{gate_words(row.gate).capitalize()}, {row.subject_number}, {local_day(row.happened_on)}: {row.sentence}"
            for row in m.unmet
        ]
        blocks.append(b.Notice("Not met, recorded afterwards", "\n".join(rows)))
    return blocks


def _conceded(concession: Concession) -> b.Notice:
    """The limits in the heading, where they are no longer than one."""
    limits, words = concession.limits_of_use or "No limits of use are written.", concession_words(concession)
    if len(limits) <= LONGEST_HEADING:
        return b.Notice(f"Concession {concession.number}: {limits}", words)
    return b.Notice(f"Concession {concession.number}: limits of use", f"{limits}\n{words}")


def concession_words(concession: Concession) -> str:
    """What it passes and why, who gave it, and from when to when it holds."""
    end = f", holds to {local_day(concession.valid_to)}" if concession.valid_to else ""
    given = f"Given by {concession.given_by}, {concession.given_role}, {local_day(concession.given_on)}{end}."
    return f"Passes {concession.passes_words}: {concession.reason}".rstrip(".") + f". {given}"


def _acceptance_words(m: Making) -> str:
    last = m.inspection
    if last is None:
        return "No inspection of the finished copy is on record."
    decision = last.get_decision_display()
    signed = "signed" if last.is_signed else "not signed"
    return f"The last inspection, {local_day(last.inspected_on)}, decided “{decision}” and is {signed}."


def cover(m: Making) -> b.Cover:
    """Photograph and facts; the predicted figures are marked as calculated."""
    photo = m.portrait
    making = m.making_up
    least = "at least " if m.chain.lineage.at_least else ""
    facts = [
        b.Fact("Copy", m.copy.number), b.Fact("Made from", ", ".join(model.number for model in m.models)),
        b.Fact("Technique", making.get_technique_display()), b.Fact("Metal and filling", m.copy.materials),
        b.Fact("Lead inside", making.get_lead_inside_display()),
        b.Fact("Mark", phrases.listed([f"“{mark.text}”" for mark in m.marks])),
        *(figure_fact(figure) for figure in (*m.figures.mass, *m.figures.size)),
        b.Fact("Steps of copying", f"{least}{m.chain.lineage.transfer_count}"),
        b.Fact("Commission", making.commission.number if making.commission else ""),
        b.Fact("Standing", _standing(m)), b.Fact("Place", str(m.copy.place or "")),
    ]  # fmt: skip
    return b.Cover(_printed(m, photo), tuple(fact for fact in facts if fact.value))


def _standing(m: Making) -> str:
    signed: list[Inspection] = [each for each in m.inspections if each.is_signed]
    return state_from(True, not is_unmarked(m.copy), signed[0].decision if signed else None).word


def _printed(m: Making, photo: Photo | None) -> b.Photo | None:
    return printed(photo, caption_of(photo, m.copy)) if photo else None


def descent(m: Making) -> list[b.Block]:
    line = m.chain.lineage
    words = phrases.generation(line.generation, line.transfer_count, line.at_least)
    return [b.Heading("Line of descent"), strip(m.chain), b.Prose(f"{words} (+) is a positive, (−) a negative.")]
