"""Logger traces: what a file says, what it says against itself, and the charge that a person lets it prove.

A file is surveyed and sniffed (`sniff`), read by a mapping that a person has confirmed (`read`), argued with (`argue`),
evaluated by the person's decisions (`evaluate`) and reduced for a chart (`reduce`). Pure: no Django here.
"""

from process.tracing.argue import argue
from process.tracing.case import Case, Context, Switching
from process.tracing.cuts import Cut
from process.tracing.errors import AskFirst, TraceRefused
from process.tracing.evaluate import Evaluation, evaluate
from process.tracing.findings import Choice, Finding
from process.tracing.mapping import Mapping
from process.tracing.reading import read
from process.tracing.reduce import reduce
from process.tracing.samples import Samples
from process.tracing.sniff import Proposal, Question, sniff
from process.tracing.stretches import Stretch, zero_stretches
from process.tracing.survey import survey

# Raised whenever the same file with the same decisions could give another figure.
ENGINE = "2"

__all__ = [
    "ENGINE", "AskFirst", "Case", "Choice", "Context", "Cut", "Evaluation", "Finding", "Mapping", "Proposal",
    "Question", "Samples", "Stretch", "Switching", "TraceRefused", "argue", "evaluate", "read", "reduce", "sniff",
    "survey", "zero_stretches",
]  # fmt: skip
