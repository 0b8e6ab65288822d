"""The partials keep their word: shapes with words, figures with units, errors with a way to the field."""

import re
from datetime import UTC, datetime
from types import SimpleNamespace

import pytest
from django import forms
from django.contrib.auth.models import AnonymousUser, Group, User
from django.template import Context, Template
from django.template.loader import render_to_string
from django.test import RequestFactory, override_settings

from process.chemistry.faraday import deposited_mass
from process.chemistry.metals import ion
from process.chemistry.worked import worked
from records.context import ENTRIES, entries_for
from records.models import ConditionReport
from records.templatetags import register
from records.units import ureg


def text_of(html: str) -> str:
    words = re.sub(r"</(td|th|dt|dd|p|li)>", " ", html)
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", "", words)).strip()


def component(name: str, **context) -> str:
    return render_to_string(f"components/{name}.html", context)


class Piece(forms.Form):
    number = forms.CharField(help_text="As on the tag.")
    face = forms.ChoiceField(choices=[("o", "obverse")], widget=forms.RadioSelect)
    note = forms.CharField(required=False)


class GroupedPiece(Piece):
    def grouped(self):
        return [("Before", False, [self["number"]]), ("More?", True, [self["face"], self["note"]])]


# figures


def test_a_quantity_sets_its_unit_apart_after_a_thin_space():
    html = register.quantity(71.36, "_g")
    assert text_of(html) == "71.36 g"
    assert '<span class="number">71.36</span>\u2009<span class="unit">g</span>' in html


def test_zero_is_a_quantity_and_nothing_is_said_to_be_not_recorded():
    assert text_of(register.quantity(0.0, "_g")) == "0.00 g"
    assert text_of(register.quantity(None, "_g")) == "–not recorded"


def test_a_spread_decides_the_digits():
    assert text_of(register.quantity_within(402.3, "_um", 12.0)) == "402 ± 12 µm"


def test_a_table_heading_and_its_cells_share_number_and_unit():
    assert register.unit("_a_dm2") == "A/dm²"
    assert register.number(-0.08, "_mm") == "−0.08"


@pytest.mark.parametrize("kind", ["measured", "calculated", "estimated"])
def test_a_figure_names_its_kind_of_evidence(kind):
    html = component("_figure", label="Thickness", value=402.0, suffix="_um", kind=kind)
    assert f"swatch-{kind}" in html and f"</span>{kind}" in html


def test_growth_is_hatched_unless_it_was_measured():
    bar = {"label": "Shell", "percent": 62.4, "value": 312.0, "target": 500.0, "suffix": "_um"}
    assert 'fill="url(#hatch)" width="62.4%"' in component("_growth_bar", **bar)
    assert "hatch" not in component("_growth_bar", **bar, kind="measured")


@pytest.mark.parametrize(("percent", "width"), [(None, "0.0"), (-3, "0.0"), (62.44, "62.4"), (130, "100.0")])
def test_a_bar_stays_within_its_frame(percent, width):
    assert register.within_hundred(percent) == width


def test_a_working_shows_formula_numbers_result_and_sources():
    """1 A for 1 h deposits 1.1855 g of copper: IUPAC atomic weight 63.546, CODATA 2018 Faraday constant (exact)."""
    working = worked(deposited_mass, ion=ion("Cu2+"), charge=ureg.Quantity(1, "A*h"))

    text = text_of(component("_working", working=working))

    assert working.equation in text and "1.18549 g" in text
    assert "Faraday constant" in text and "CODATA" in text


# states and instants


SAID = {"blocked": "■ blocked", "look": "▲ look here", "done": "● done", "open": "○ open"}


@pytest.mark.parametrize("state", SAID)
def test_a_state_carries_a_shape_and_a_word(state):
    assert text_of(component("_state", state=state)) == SAID[state]


def test_a_state_may_have_its_own_word():
    assert text_of(component("_state", state="look", word="unmarked")) == "▲ unmarked"


@override_settings(TIME_ZONE="Europe/Berlin")
def test_the_repeated_hour_of_a_clock_change_is_told_apart_by_its_offset():
    # IANA tz database, Europe/Berlin: summer time ends on 25 October 2026 at 01:00 UTC.
    first, second = datetime(2026, 10, 25, 0, 30, tzinfo=UTC), datetime(2026, 10, 25, 1, 30, tzinfo=UTC)
    assert register.local_instant(first) == "25 Oct 2026, 02:30 +02:00"
    assert register.local_instant(second) == "25 Oct 2026, 02:30 +01:00"
    assert register.local_instant(None) == ""


# forms


def test_each_error_is_summed_up_with_a_link_to_an_element_that_exists():
    html = component("_form", form=GroupedPiece({}), verb="Save")
    targets = re.findall(r'<li><a href="#([^"]+)"', html)
    assert targets == ["id_number", "id_face_group"]
    assert all(f'id="{target}"' in html for target in targets)


def test_a_folded_group_opens_where_a_field_is_wrong():
    assert '<details class="fold" open>' in component("_fields", form=GroupedPiece({"number": "R.1"}))
    assert '<details class="fold">' in component("_fields", form=GroupedPiece())


def test_help_and_error_are_tied_to_their_field():
    html = component("_fields", form=Piece({}))
    assert 'aria-describedby="id_number_helptext id_number_error"' in html
    assert 'id="id_number_helptext"' in html and 'id="id_number_error"' in html


def test_a_form_printed_without_a_partial_looks_the_same():
    form = Piece()
    assert str(form) == component("_fields", form=form).strip()


def test_a_conflict_shows_what_is_stored_and_what_was_typed():
    change = SimpleNamespace(label="Place", theirs="", yours="case 4")
    assert "Place empty case 4" in text_of(component("_conflict", conflict=[change]))


def test_what_was_typed_is_escaped():
    html = component("_lede", title="<b>Medal</b>", number="R.1", sentence='"copy"')
    assert "&lt;b&gt;Medal&lt;/b&gt;" in html and "<b>" not in html


# links


def test_the_pager_keeps_the_filter():
    request = RequestFactory().get("/", {"kind": "mould", "after": "M-2026-01"})
    html = component("_pager", request=request, next_key="M-2026-07")
    assert 'href="?kind=mould&amp;after=M-2026-07"' in html
    assert 'href="?kind=mould"' in html


def test_nothing_is_paged_when_everything_is_shown():
    assert component("_pager", request=RequestFactory().get("/"), next_key="").strip() == ""


# contents


def test_a_stranger_has_no_contents():
    assert entries_for(AnonymousUser()) == []


@pytest.mark.django_db
def test_the_contents_follow_the_role():
    technician = User.objects.create_user("tech")
    technician.groups.add(Group.objects.get_or_create(name="technician")[0])
    labels = [entry.label for entry in entries_for(technician)]
    assert "Baths" in labels and "Words" not in labels
    assert entries_for(User(is_superuser=True)) == list(ENTRIES)


@pytest.mark.django_db
def test_may_asks_the_table_of_roles():
    request = RequestFactory().get("/")
    request.user = User.objects.create_user("curator")
    request.user.groups.add(Group.objects.get_or_create(name="curator")[0])
    said = Template('{% may "write" "Item" as item %}{% may "write" "Bath" as bath %}{{ item }} {{ bath }}')
    assert said.render(Context({"request": request})) == "True False"


def test_an_entered_number_keeps_the_digits_and_the_margin_that_were_written():
    report = ConditionReport(mass_g=1940.0, as_typed={"mass_g": {"text": "1940", "unit": "g", "plus_minus": 1.0}})
    assert text_of(register.entered(report, "mass_g")) == "1940 ± 1 g"
    assert "not recorded" in register.entered(ConditionReport(), "mass_g")


@pytest.mark.parametrize(
    ("words", "left"),
    [
        ("M-1: 3 pulls left", "3 pulls left"), ("M-1 went in", "went in"),
        ("Custody paper M-1, copy R.1", "Custody paper, copy R.1"),
        ("Process report, copy M-1", "Process report, copy"), ("M-10 went in", "M-10 went in"),
    ],
)  # fmt: skip
def test_a_number_that_is_shown_already_is_not_said_again(words, left):
    assert register.without_number(words, "M-1") == left
