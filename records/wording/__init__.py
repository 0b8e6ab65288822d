"""Wording of labels and papers, so that nobody mistakes the copy. Pure: facts in, words out."""

from records.wording import phrases
from records.wording.check import acceptable, by_weight, check
from records.wording.compose import compose, heading
from records.wording.facts import Complaint, CopyFacts, LabelDraft
from records.wording.kinds import Kind, fitting_kinds, kind_of_text, load_kinds
from records.wording.naming import file_name

__all__ = [
    "Complaint", "CopyFacts", "Kind", "LabelDraft", "acceptable", "by_weight", "check", "compose", "file_name",
    "fitting_kinds", "heading", "kind_of_text", "load_kinds", "phrases",
]  # fmt: skip
