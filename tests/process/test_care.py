"""What lies inside a piece says how it is kept. Rules: DOMAIN step 31, common practice, from memory."""

import pytest
from django.urls import reverse

from process.models import CareRule, FinishStep
from records.care import care_of, survey_of, tag_words_of
from records.models import Item
from records.reports.tags import tag_of
from tests.factories import make_copy, make_item, make_term, make_user

pytestmark = pytest.mark.django_db


def finished(copy: Item, label: str) -> Item:
    FinishStep.objects.create(copy=copy, finish=make_term("finish", label), done_on="2026-02-22")
    return Item.objects.get(pk=copy.pk)


def said(item: Item) -> str:
    return " ".join(care.sentence for care in care_of(item))


@pytest.mark.parametrize(
    ("fields", "finish", "words", "tag"),
    [
        ({"lead_inside": "yes"}, "", "no acid woods", "Lead inside."),
        ({"lead_inside": "unknown"}, "", "store it as if it did", "Perhaps lead inside."),
        (
            {},
            "silvered",
            "a sulphur absorber in the box. Relative humidity at most 50.0",
            "Silver skin, do not polish.",
        ),
        ({"fill_words": "clear epoxy, poured"}, "", "no heat, no solvents", "Resin inside, no heat."),
        ({}, "wax", "dust with a soft brush", ""),
        ({"technique": "uniface"}, "", "the rim of a shell cuts", "Sharp rim."),
    ],
)
def test_the_composition_speaks_on_page_and_tag(fields, finish, words, tag):
    copy = make_copy(**fields)
    copy = finished(copy, finish) if finish else Item.objects.get(pk=copy.pk)

    assert words in said(copy) and tag_words_of(copy) == tag
    assert tag in tag_of(copy).title


def test_the_shortest_time_between_two_looks_is_asked_for():
    copy = finished(make_copy(lead_inside="yes"), "silvered")
    CareRule.objects.get(trait="silver").delete()
    rule = CareRule.objects.get(trait="lead")
    rule.survey_months_count = 6
    rule.save()

    assert survey_of(copy).survey_months_count == 6


def test_a_historic_copy_is_kept_by_what_its_materials_say():
    old = make_item("R.1889.7", kind="historic_copy", materials="copper shells on tin-lead solder")
    assert "no acid woods" in said(old)
    assert said(make_item(kind="historic_copy", materials="copper on tin solder, no lead")) == ""


def test_an_original_is_not_kept_by_these_rules():
    assert care_of(make_item(materials="lead")) == []


class TestPages:
    def test_the_museum_edits_its_table_and_every_page_follows(self, client):
        client.force_login(make_user("conservator"))
        copy = make_copy("R.2026.1", lead_inside="yes")
        rule = CareRule.objects.get(trait="lead")
        sent = {"sentence": "In the steel cupboard.", "tag_words": "Lead", "survey_months_count": "9",
                "humidity_to_pct": "55", "humidity_to_pct_unit": "%", "version": rule.version}  # fmt: skip

        assert client.post(reverse("care_rule_edit", args=[rule.pk]), sent).status_code == 302

        page = client.get(copy.get_absolute_url()).content.decode()
        assert "In the steel cupboard." in page and "at least every 9 months" in page
        assert "In the steel cupboard." in client.get(reverse("care_rule_list")).content.decode()

    @pytest.mark.parametrize(
        "wrong",
        [
            {"humidity_from_pct": "60", "humidity_to_pct": "40"},
            {"humidity_to_pct": "140"},
            {"survey_months_count": "0"},
            {"survey_months_count": "100000"},
        ],
    )
    def test_what_cannot_be_is_given_back(self, client, wrong):
        client.force_login(make_user("conservator"))
        rule = CareRule.objects.get(trait="core")
        units = {"humidity_from_pct_unit": "%", "humidity_to_pct_unit": "%"}

        answer = client.post(
            reverse("care_rule_edit", args=[rule.pk]), {"sentence": "x", "version": rule.version} | units | wrong
        )

        assert answer.status_code == 422
