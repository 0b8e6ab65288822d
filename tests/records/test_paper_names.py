"""No name of a paper lets a copy pass for its original: its file, its title in the list, its first words."""

import pytest

from records.sentences import title_of
from records.services import papers
from tests.factories import make_item, make_party, make_report
from tests.pdf.reading import pages

pytestmark = pytest.mark.django_db


def issue(kind: str, subject):
    return papers.issue(kind=kind, subject=subject, party=make_party(), role="curator")


@pytest.mark.parametrize(
    ("kind", "word"),
    [
        ("historic_copy", "historic-copy"),
        ("shell", "part-of-a-copy"),
        ("core", "part-of-a-copy"),
        ("matrix", "copy-matrix"),
    ],
)
def test_the_file_of_a_copy_says_so(kind, word):
    paper = issue("object-tag", make_item("R.1889.7", kind=kind))
    assert paper.path == f"object-tag_R.1889.7_{word}-v1.pdf"
    assert paper.title == f"Object tag, {word.replace('copy-matrix', 'copy (matrix)').replace('-', ' ')} R.1889.7"


def test_the_file_of_an_original_carries_no_such_word():
    paper = issue("object-tag", make_item("OVM.1931.0044"))
    assert (paper.path, paper.title) == ("object-tag_OVM.1931.0044-v1.pdf", "Object tag OVM.1931.0044")


def test_a_report_on_a_copy_that_is_titled_like_its_original_begins_with_the_word():
    old = make_item("R.1889.7", kind="historic_copy", title="Launch of the Lightship, 1702")
    paper = issue("condition-report", make_report(old))
    assert paper.title == f"Condition report {paper.number}, historic copy R.1889.7"
    first = pages(papers.path_of(paper).read_bytes())[0]
    assert first.startswith("Condition report Historic copy: Launch of the Lightship, 1702")


def test_a_title_that_says_it_already_stays_as_it_is():
    said = make_item(kind="copy", title="Electrotype copy of a medal")
    assert title_of(said) == said.title
    assert title_of(make_item(title="Portrait medal")) == "Portrait medal"
