"""Wording: nobody may mistake the copy. Pieces and label texts are those of the demo scenario."""

from dataclasses import replace

import pytest

from records.wording import (
    CopyFacts,
    LabelDraft,
    check,
)
from records.wording.clauses import first_year
from tests.records.wording_pieces import COIN, HISTORIC, LIGHTSHIP, MASK, MEDAL, TOUCH


def codes(text: str, piece: CopyFacts, severity: str = "refuse") -> set[str]:
    found = check(LabelDraft.from_text(text, piece.number), piece)
    return {complaint.code for complaint in found if complaint.severity == severity}


@pytest.mark.parametrize(
    ("piece", "text"),
    [
        (
            MEDAL,
            "Electrotype copy, 2026\n"
            "after a cast bronze medal of Maud Ferrigan by Corvin Aldersey the Younger, 1624\n"
            "Copper, tin-alloy filling, patinated. Original OVM.1931.0044 in store",
        ),
        (
            COIN,
            "Electrotype copy, 2026\nafter a silver ten-groat piece of Sallowness, 1571\n"
            "Silvered copper, marked COPY. The coin belongs to the Thornwick Almshouse Trust",
        ),
        (
            LIGHTSHIP,
            "Electrotype copy of a copy, 2026\n"
            "Made from an electrotype of 1889; the medal of 1702 has not been seen since 1811",
        ),
        (
            TOUCH,
            "Electrotype copy, 2026 — please touch\n"
            "It weighs 44 g; the bronze medal of 1624 that it repeats weighs 71 g",
        ),
        (
            MASK,
            "Core electrotype copy, 2026\n"
            "copper skin on a plaster cast, after the plaster life mask of Bram Oostervane, about 1868\n"
            "Slightly larger than the mask",
        ),
        (
            HISTORIC,
            "Electrotype, maker unknown, before 1889, of a medal not now traced\n"
            "number of steps from the original not known.",
        ),
    ],
)
def test_the_scenarios_labels_are_not_refused(piece, text):
    assert codes(text, piece) == set()


def test_fault_4_after_the_original_is_refused_for_a_copy_of_a_copy():
    assert "generation.after_original" in codes("Electrotype copy of a copy, 2026\nafter the original medal", LIGHTSHIP)
    hidden = codes("Electrotype copy, 2026\nafter the original medal of 1702", LIGHTSHIP)
    assert {"kind.other", "generation.hidden", "generation.after_original"} <= hidden


def test_fault_5_a_replica_said_last_is_refused():
    found = codes("Ten-groat piece of Sallowness, 1571, replica", COIN)
    assert {"kind.first", "date.missing"} <= found


def test_fault_11_a_copy_called_original_medal_is_refused():
    assert {"kind.first", "original.claimed"} <= codes("Original medal of Maud Ferrigan, 1624", MEDAL)


@pytest.mark.parametrize(
    "text",
    [
        "Electrotype copy, 2026\nThis is the original medal of 1624",
        "Electrotype copy, 2026\nan original electrotype of the workshop",
        "Electrotype copy, 2026, original, 1624",
        "Electrotype copy, 2026\na genuine original",
    ],
)
def test_original_is_kept_for_the_other_piece(text):
    assert "original.claimed" in codes(text, MEDAL)


@pytest.mark.parametrize(
    "text",
    [
        "Electrotype copy, 2026\nOriginal: Ostrel Vale Museum, OVM.1931.0044, in store",
        "Electrotype copy, 2026, after the original of 1624",
        "Electrotype copy, 2026\nLighter than the original",
    ],
)
def test_original_may_be_named_as_what_was_copied(text):
    assert "original.claimed" not in codes(text, MEDAL)


@pytest.mark.parametrize(
    ("text", "refused"),
    [
        ("Electrotype copy, 2026\na replica of the original medal", True),
        ("Electrotype copy, 2026\nThe Original's REPLICA", True),
        ("Electrotype copy, 2026\nA replica. The original is in store", False),
        ("Electrotype copy, 2026\nA replica (the original is in store)", False),
        ("Electrotype copy, 2026\nA replica\noriginal in store", False),
        ("Electrotype copy, 2026\nReplicating is no original art", False),
    ],
)
def test_replica_and_original_never_share_a_clause(text, refused):
    assert ("replica.original" in codes(text, MEDAL)) is refused


@pytest.mark.parametrize(
    ("heading", "code"),
    [
        ("Electrotype copy after a medal of 1624, made 2026", "date.order"),
        ("Electrotype copy after a medal of 1624", "date.missing"),
        ("Electrotype copy", "date.missing"),
        ("Electrotypes of a medal, 2026", "kind.first"),
        ("Electrotype copying of a medal, 2026", "kind.other"),
        ("An electrotype copy, 2026", "kind.first"),
        ("Plaster cast, 2026", "kind.other"),
        ("Core electrotype copy, 2026", "kind.other"),
        ("Electrotype copy of a copy, 2026", "kind.other"),
        ("Gilt electrotype copy, 2026", "kind.other"),
        ("", "kind.first"),
    ],
)
def test_the_heading_is_the_kind_and_then_its_own_date(heading, code):
    assert code in codes(heading, MEDAL)


def test_a_piece_without_a_date_says_so():
    undated = replace(HISTORIC, made_date="")
    assert "date.missing" in codes("Historic electrotype, of a medal", undated)
    assert codes("Historic electrotype, date unknown", undated) == set()


def test_a_number_is_no_year():
    assert first_year("Original OVM.1931.0044, R.2026.1, cast 1624") == "1624"
    assert codes("Electrotype copy of OVM.1931.0044, 2026", MEDAL) == set()


def test_the_number_of_the_copy_stands_on_the_label():
    draft = LabelDraft("Electrotype copy, 2026", "after a medal, OVM.1931.0044")
    assert [complaint.code for complaint in check(draft, MEDAL)] == ["number.missing"]
    for written in ("R.2026.1", "No. R.2026.1."):
        assert check(replace(draft, body=f"OVM.1931.0044 {written}"), MEDAL) == []
    assert "number.missing" in {c.code for c in check(replace(draft, body="R.2026.12"), MEDAL)}


@pytest.mark.parametrize(
    ("body", "refused"),
    [
        ("Silver, marked COPY", True),
        ("a silver piece", True),
        ("Silvered copper", False),
        ("Silver-plated copper", False),
        ("Copper plated with silver", False),
        ("Silvered copper, after a silver ten-groat piece", False),
        ("Silvered copper. Lighter than the silver coin", False),
    ],
)
def test_a_skin_is_not_sold_as_silver(body, refused):
    assert ("metal.silver" in codes(f"Electrotype copy, 2026\n{body}", COIN)) is refused


def test_a_skin_left_out_is_only_warned_about():
    text = "Electrotype copy, 2026\nafter a silver coin of 1571"
    assert "skin.silver" in codes(text, COIN, "warn")
    assert codes(text, COIN) == set()


@pytest.mark.parametrize(("count", "severity"), [(50, None), (51, "warn"), (100, "warn"), (101, "refuse")])
def test_fifty_words_are_good_and_a_hundred_the_most(count, severity):
    body = "\n".join(["word"] * (count - 3))
    found = check(LabelDraft("Electrotype copy, 2026", body, "R.2026.1"), MEDAL)
    assert next((c.severity for c in found if c.code == "words.many"), None) == severity


@pytest.mark.parametrize(("length", "warned"), [(55, False), (56, True)])
def test_a_long_line_is_warned_about(length, warned):
    found = codes("Electrotype copy, 2026\n" + "x" * length, MEDAL, "warn")
    assert ("line.long" in found) is warned


def test_a_refusal_says_what_to_do():
    complaint = check(LabelDraft("Medal of 1624", "", "R.2026.1"), MEDAL)[0]
    assert complaint.severity == "refuse"
    assert "Begin with “Electrotype copy”" in complaint.sentence
