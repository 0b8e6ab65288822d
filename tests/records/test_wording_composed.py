"""Labels and sentences composed from facts: they pass their own checks and read like English."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from records.wording import (
    CopyFacts,
    acceptable,
    check,
    compose,
    file_name,
    fitting_kinds,
    kind_of_text,
    load_kinds,
    phrases,
)
from records.wording.clauses import clauses
from tests.records.wording_pieces import COIN, HISTORIC, LIGHTSHIP, MEDAL, PIECES, TOUCH


@pytest.mark.parametrize("piece", PIECES, ids=lambda piece: piece.number)
def test_the_composed_label_passes_its_own_checks(piece):
    assert check(compose(piece), piece) == []


def test_the_composed_label_reads_like_a_label():
    assert compose(MEDAL).text == (
        "Electrotype copy, 2026\n"
        "after a cast bronze medal of Maud Ferrigan by Corvin\n"
        "Aldersey the Younger, 1624\n"
        "Copper, tin-alloy filling, patinated, marked OVM 2026\n"
        "COPY.\n"
        "Original: OVM.1931.0044, in store."
    )
    assert compose(LIGHTSHIP).heading == "Electrotype copy of a copy, 2026"
    assert compose(TOUCH).heading == "Electrotype copy, 2026 — please touch"
    assert compose(HISTORIC).heading == "Historic electrotype, before 1889"


words_of_facts = st.text(st.sampled_from("abc defg éß"), max_size=30)


@given(
    st.sampled_from(["hollow", "core", "cast", "print", "matrix"]),
    st.integers(1, 4),
    st.booleans(),
    st.booleans(),
    st.sampled_from(["", "silver"]),
    words_of_facts,
)
def test_no_composed_label_is_ever_refused(technique, generation, at_least, one_sided, skin, subject):
    piece = CopyFacts(
        "R.2027.9",
        "2027",
        technique,
        generation,
        at_least or generation > 1,
        False,
        one_sided,
        skin,
        subject,
        "1624",
    )
    assert acceptable(check(compose(piece), piece))


def test_every_kind_is_found_again_in_its_own_words():
    for kind in load_kinds():
        assert kind_of_text(f"{kind.words}, 2026") == kind


def test_every_kind_names_what_it_is_and_none_is_an_original():
    assert not any("original" in kind.words.lower() or "replica" in kind.words.lower() for kind in load_kinds())
    assert [kind.words for kind in fitting_kinds(COIN)] == ["Electrotype copy", "Silvered electrotype copy"]


def test_clauses_end_at_punctuation_but_not_inside_numbers():
    assert clauses("After a medal, 1624. OVM.1931.0044 (in store)") == [
        "After a medal", "1624", "OVM.1931.0044", "in store",
    ]  # fmt: skip


def test_a_file_name_begins_with_the_kind():
    assert file_name("R.2026.1", "Electrotype copy", "obverse", ".jpg") == "electrotype-copy_R.2026.1_obverse.jpg"
    assert file_name("R 1/2", "Électrotype", "../../x") == "electrotype_R-1-2_x"


@pytest.mark.parametrize(
    ("sentence", "expected"),
    [
        (
            phrases.made_from("OVM.1931.0044", date(2026, 2, 16), mould="silicone", owner="the museum"),
            "This copy was deposited in copper on a silicone mould taken from OVM.1931.0044 "
            "on 16 February 2026, with permission of the museum.",
        ),
        (
            phrases.wall_thickness(0.586, 36.85, [0.71, 0.33], "micrometer"),
            "The wall is 0.59 mm thick on average, calculated from 36.85 ampere-hours and weighing; "
            "the thinnest of 2 measured points is 0.33 mm (micrometer).",
        ),
        (
            phrases.wall_thickness(0.42, 8.94, weighed=False),
            "No thickness was measured; the average of 0.42 mm is calculated from 8.94 ampere-hours.",
        ),
        (
            phrases.interruption(11_400, date(2026, 3, 3), 0.185, "Layers part after three bends."),
            "The current was absent for 3 h 10 min on 3 March 2026; a boundary between layers lies about "
            "0.18 mm from the contact face. Layers part after three bends.",
        ),
        (
            phrases.generation(2, 4, True),
            "It repeats a copy, not the original; at least 4 copying steps lie between the original "
            "and this piece, and at least one of them is not documented.",
        ),
        (
            phrases.original_after_moulding(date(2026, 3, 13), ["flake lost"]),
            "One change was seen on 13 March 2026: flake lost.",
        ),
        (phrases.weight(64.71, 71.36), "The copy weighs 64.71 g, the original 71.36 g (90.7 % of it)."),
        (phrases.inside(None), "Whether the filling contains lead is not known; treat it as if it did."),
        (phrases.edition(1, 3, 2), "Copy 1 of 3 authorised; 2 made."),
        (
            phrases.caption("Electrotype copy", "R.2026.2", "coin"),
            "Photograph of electrotype copy R.2026.2, not of the coin.",
        ),
    ],
)  # fmt: skip
def test_phrases(sentence, expected):
    assert sentence == expected
