"""Two people at one record: nothing is overwritten silently."""

import pytest
from django.template.loader import render_to_string

from records.forms.base import RecordForm
from records.forms.conflicts import StaleRecord
from records.models import Item, Measurement
from tests.factories import make_item


class ItemForm(RecordForm):
    class Meta:
        model = Item
        fields = ["number", "kind", "title", "date_words", "maker", "description"]


class MassForm(RecordForm):
    class Meta:
        model = Measurement
        fields = ["what", "mass_g"]


def make_measurement(**fields):
    return Measurement.objects.create(**{"item": make_item(), "what": "mass", "mass_g": 71.36} | fields)


def item_data(**changes):
    return {"number": "OVM.1", "kind": "original", "title": "Medal"} | changes


@pytest.mark.django_db
def test_second_person_is_shown_the_difference_and_may_then_save():
    row = make_item("OVM.1", title="Medal", date_words="")
    first = ItemForm(item_data(title="Portrait medal", version="0"), instance=Item.objects.get(pk=row.pk))
    assert first.is_valid(), first.errors
    first.save()

    second = ItemForm(item_data(title="Medal of a man", version="0"), instance=Item.objects.get(pk=row.pk))

    assert not second.is_valid()
    assert [tuple(each) for each in second.conflict] == [("Title", "Portrait medal", "Medal of a man")]
    assert "Someone else saved this record" in second.non_field_errors()[0]
    assert 'value="Medal of a man"' in str(second["title"])
    assert 'value="1"' in str(second["version"])

    again = ItemForm(item_data(title="Medal of a man", version="1"), instance=Item.objects.get(pk=row.pk))
    assert again.is_valid(), again.errors
    assert again.save().version == 2
    assert Item.objects.get(pk=row.pk).title == "Medal of a man"


@pytest.mark.django_db
def test_difference_of_numbers_and_of_wrong_entries_is_readable():
    row = make_measurement(mass_g=71.36, version=3)

    form = MassForm({"what": "density", "mass_g": "70", "mass_g_unit": "kg", "version": "2"}, instance=row)
    assert not form.is_valid()
    assert [tuple(each) for each in form.conflict] == [
        ("Dimension", "mass", "density"),
        ("Mass", "71.36 g", "70 kg"),
    ]

    wrong = MassForm({"what": "mass", "mass_g": "much", "mass_g_unit": "g", "version": "2"}, instance=row)
    assert not wrong.is_valid()
    assert ("Mass", "71.36 g", "much g") in [tuple(each) for each in wrong.conflict]


@pytest.mark.django_db
def test_form_that_lost_its_version_overwrites_nothing():
    row = make_item("OVM.1", title="Medal")

    assert not ItemForm(item_data(title="Other"), instance=row).is_valid()


@pytest.mark.django_db
def test_change_between_check_and_saving_is_refused():
    row = make_item("OVM.1", title="Medal")
    form = ItemForm(item_data(title="Mine", version="0"), instance=Item.objects.get(pk=row.pk))
    assert form.is_valid()
    row.version = 1
    row.save()

    with pytest.raises(StaleRecord):
        form.save()


@pytest.mark.django_db
def test_removed_record_is_said():
    row = make_item("OVM.1", title="Medal")
    mine = Item.objects.get(pk=row.pk)
    row.delete()

    assert "removed meanwhile" in ItemForm(item_data(version="0"), instance=mine).non_field_errors()[0]


@pytest.mark.django_db
def test_the_page_shows_stored_and_own_side_by_side():
    row = make_item("OVM.1", title="Portrait medal", version=1, date_words="")
    form = ItemForm(item_data(title="Medal of a man", version="0"), instance=row)

    html = render_to_string("components/_form.html", {"form": form})

    assert "<td>Portrait medal</td><td>Medal of a man</td>" in html
    assert html.count("Nothing of yours is lost") == 1
