"""From the record to the wording: facts, the proposal, and what is to be said against a draft."""

from datetime import date

import pytest

from records import extensions, labelling, wording
from records.extensions import CopyTraits
from records.models import DescentLink, LabelWording, Measurement
from tests.factories import make_consent, make_copy, make_item, make_mark, make_party, make_shell

pytestmark = pytest.mark.django_db


def _label(copy, **words):
    defaults = {"kind_of_copy": "Electrotype copy", "copy_date": "2026", "after": "after a portrait medal, 1624"}
    return LabelWording(item=copy, **defaults | words)


def _codes(label):
    return [complaint.code for complaint in labelling.refusals(label)]


def _first_generation(**about):
    medal = make_item("OVM.1931.0044", title="Portrait medal of Maud Ferrigan", maker="Corvin Aldersey the Younger")
    return make_copy("R.2026.1", shells=[make_shell(medal), make_shell(medal, side="reverse")], about=about)


def _copy_of_a_historic_one():
    historic = make_item("R.1889.7", kind="historic_copy", title="Electrotype of a medal", date_words="1889")
    DescentLink.objects.create(source=None, source_words="the medal of 1702", target=historic, transfer="unknown")
    return make_copy("R.2026.3", shells=[make_shell(historic), make_shell(historic, side="reverse")])


def test_the_proposal_is_accepted_by_its_own_checks():
    copy = _first_generation(materials="copper, tin-alloy filling, patinated")

    label = LabelWording(item=copy, **labelling.proposal(labelling.gather(copy)))

    assert labelling.draft_of(label).text.startswith(
        "Electrotype copy, 2026\nafter a portrait medal of Maud Ferrigan by Corvin"
    )
    assert _codes(label) == []


def test_a_copy_of_a_copy_says_so_in_its_proposal():
    copy = _copy_of_a_historic_one()

    label = LabelWording(item=copy, **labelling.proposal(labelling.gather(copy)))

    assert label.kind_of_copy == "Electrotype copy of a copy" and "an electrotype of 1889" in label.after
    assert _codes(label) == []


def test_after_the_original_is_refused_where_the_model_was_a_copy():
    """Planted fault 4 of the scenario."""
    label = _label(_copy_of_a_historic_one(), after="after the original medal of 1702")

    assert {"generation.hidden", "generation.after_original"} <= set(_codes(label))


def test_first_words_that_hide_the_kind_are_refused():
    """Planted fault 5 of the scenario."""
    label = _label(_first_generation(), kind_of_copy="Ten-groat piece of Sallowness", copy_date="1571", after="replica")

    assert "kind.first" in _codes(label)


def test_a_core_is_known_from_its_descent_where_nobody_says_more(monkeypatch):
    monkeypatch.setattr(extensions, "copy_traits", [])
    core = make_item("P-1", kind="core")
    shell, copy = make_item("S-1", kind="shell"), make_item("R.2026.5", kind="copy")
    DescentLink.objects.create(source=core, target=shell, transfer="skin")
    DescentLink.objects.create(source=shell, target=copy, transfer="making_up")

    assert labelling.gather(copy).facts.technique == "core"


def test_another_app_can_say_more(monkeypatch):
    monkeypatch.setattr(extensions, "copy_traits", [lambda item: CopyTraits("hollow", True, "silver")])

    facts = labelling.gather(make_item("R.2026.2", kind="copy")).facts

    assert (facts.technique, facts.one_sided, facts.skin) == ("hollow", True, "silver")


@pytest.mark.parametrize(
    ("prescribed", "heading", "is_refused"),
    [
        ("label must begin “Electrotype copy”", "Electrotype copy", False),
        ("label must begin “Electrotype copy”", "Core electrotype copy", True),
        ("courtesy of the Trust", "Electrotype copy", True),
    ],
)
def test_the_owners_prescribed_words_have_to_stand_there(prescribed, heading, is_refused):
    copy = _first_generation()
    model = labelling.gather(copy).descent.model
    make_consent(model, owner=make_party("The Trust"), label_wording=prescribed)

    assert ("consent.wording" in _codes(_label(copy, kind_of_copy=heading))) is is_refused


def test_the_weights_are_told_where_it_may_be_touched():
    copy = _first_generation()
    model = labelling.gather(copy).descent.model
    copy.status = "handling"
    Measurement.objects.create(item=copy, what="mass", mass_g=44.3, measured_on=date(2026, 2, 24))
    Measurement.objects.create(item=model, what="mass", mass_g=71.36)

    proposal = labelling.proposal(labelling.gather(copy))

    assert proposal["copy_date"] == "2026 — please touch"
    assert "It weighs 44 g, the piece it repeats 71 g" in " ".join(proposal["body"].split())


def test_the_mark_is_named():
    copy = _first_generation()
    make_mark(copy, text="COPY")

    assert labelling.gather(copy).facts.mark_text == "COPY"


def test_a_draft_stands_as_it_will_be_read():
    label = _label(_first_generation(), body="Copper.", credit="By permission of the Trust")

    draft = labelling.draft_of(label)

    assert draft.heading == "Electrotype copy, 2026" and draft.number == "R.2026.1"
    assert draft.body.endswith("Copper.\nBy permission of the Trust")
    assert wording.acceptable(labelling.complaints(label))
