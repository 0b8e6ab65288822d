"""Uncertain dates: words and EDTF (as published by the Library of Congress, 2019, levels 0 to 2)."""

from datetime import date

import pytest
from django.core.exceptions import ValidationError
from hypothesis import given, settings
from hypothesis import strategies as st

from records import dating
from records.forms.dates import EdtfField


@pytest.mark.parametrize(
    ("text", "edtf", "earliest", "latest"),
    [
        ("1702", "1702", date(1702, 1, 1), date(1702, 12, 31)),
        ("1868-05", "1868-05", date(1868, 5, 1), date(1868, 5, 31)),
        ("12 May 1868", "1868-05-12", date(1868, 5, 12), date(1868, 5, 12)),
        ("Feb 1868", "1868-02", date(1868, 2, 1), date(1868, 2, 29)),
        ("about 1868", "1868~", date(1863, 1, 1), date(1873, 12, 31)),
        ("c. 1868", "1868~", date(1863, 1, 1), date(1873, 12, 31)),
        ("1868~", "1868~", date(1863, 1, 1), date(1873, 12, 31)),
        ("probably 1868", "1868?", date(1868, 1, 1), date(1868, 12, 31)),
        ("before 1889", "[..1888]", None, date(1888, 12, 31)),
        ("before May 1889", "[..1889-04-30]", None, date(1889, 4, 30)),
        ("after 1900", "[1901..]", date(1901, 1, 1), None),
        ("1860 to 1870", "1860/1870", date(1860, 1, 1), date(1870, 12, 31)),
        ("between 1860 and 1870", "1860/1870", date(1860, 1, 1), date(1870, 12, 31)),
        ("1860-1870", "1860/1870", date(1860, 1, 1), date(1870, 12, 31)),
        ("1860 – about 1870", "1860/1870~", date(1860, 1, 1), date(1875, 12, 31)),
        ("1860s", "186X", date(1860, 1, 1), date(1869, 12, 31)),
        ("19th century", "18XX", date(1800, 1, 1), date(1899, 12, 31)),
        ("../1888", "../1888", None, date(1888, 12, 31)),
        ("/1888", "/1888", None, date(1888, 12, 31)),
        ("1889/..", "1889/..", date(1889, 1, 1), None),
        ("[1868, 1870]", "[1868, 1870]", date(1868, 1, 1), date(1870, 12, 31)),
        ("450 BC", "-0449", None, date(1, 1, 1)),
        ("5th century BC", "-0499/-0400", None, date(1, 1, 1)),
        ("undated", "", None, None),
    ],
)
def test_words_and_edtf_are_read(text, edtf, earliest, latest):
    read = EdtfField().clean(text)

    assert (read.words, read.edtf, read.earliest, read.latest) == (text, edtf, earliest, latest)


@pytest.mark.parametrize(
    "text",
    ["1.2.1868", "12/05/1868", "1868 or 1870", "early 19th century", "1868-13", "1868-02-30", "5 ft",
     "today", "..", "1870 to 1860", "1870/1860", "0th century", "32 May 1868", "after 9999", "1868-70",
     "X" * 4, "[", "[..]"],
)  # fmt: skip
def test_what_is_not_surely_a_date_is_refused_with_advice(text):
    with pytest.raises(ValidationError, match=r"Write the date|write the earlier"):
        EdtfField().clean(text)


@settings(max_examples=200, deadline=None)
@given(text=st.text(alphabet="0123456789-/.~?%X[]{}, ", max_size=30) | st.text(max_size=90))
def test_no_text_breaks_the_reading_of_dates(text):
    try:
        dating.read(text)
    except dating.DateError:
        return
