"""Telling a copy from its model: what each feature can prove, what an examination may say. Pure: facts in, words out.

No feature proves an original. The closed list of sentences in `conclusions.py` is as far as an examination goes.
"""

from records.telling.apart import Answer, Comparison, Value, compare, compare_words, told_apart
from records.telling.conclusions import CONCLUSIONS, Conclusion, conclude
from records.telling.features import FEATURES, Feature
from records.telling.signs import ANSWERS, SIGNS, Sign

__all__ = [
    "ANSWERS", "CONCLUSIONS", "FEATURES", "SIGNS", "Answer", "Comparison", "Conclusion", "Feature", "Sign", "Value",
    "compare", "compare_words", "conclude", "told_apart",
]  # fmt: skip
