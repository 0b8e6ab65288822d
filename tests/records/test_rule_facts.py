"""What rules on marks ask of a piece, entered and judged; rules compared with their text; marks of the original.

Boundaries: 16 CFR 304.6 (2.0 mm, 6.0 mm, 0.3 mm; the proportions of a sixth and a half by 53 FR 38942, quoted from
memory) meet at 12 mm across and 0.6 mm of thickness. Reg. (EC) 2182/2004 Annex II 3 (1.0 to 7.0 µVs·cm) and Art. 3
(gold 375 ‰, silver 500 ‰, platinum 850 ‰, a hole over 6 mm, up to six corners). Hallmarking Act 1973 s. 5 (2 µm), s. 6.
"""

from html import unescape

import pytest
from django.urls import reverse

from records import clock
from records.gates import Subject, checks
from records.judging import piece_facts
from records.marking import MarkFacts, PieceFacts, judge, load_rules
from records.models import Gate, Item, RuleCheck, RuleFacts
from records.own_rules import all_rules
from tests.factories import make_commission, make_copy, make_item, make_mark, make_photo, make_user

pytestmark = pytest.mark.django_db


@pytest.fixture
def conservator(client):
    client.force_login(make_user("conservator"))
    return client


def outcomes(mark: MarkFacts, piece: PieceFacts, *ids: str) -> list[str]:
    found = {verdict.rule.id: verdict.outcome for verdict in judge(mark, piece)}
    return [found[name] for name in ids]


@pytest.mark.parametrize(
    ("across_mm", "height_mm", "width_mm", "expected"),
    [
        (11.99, 1.999, 5.996, ["pass", "pass"]),  # just below 12 mm the sixth and the half are the smaller
        (11.99, 1.997, 5.994, ["fail", "fail"]),
        (12.00, 2.000, 6.000, ["pass", "pass"]),
        (12.00, 1.999, 5.999, ["fail", "fail"]),
        (12.01, 2.000, 6.000, ["pass", "pass"]),  # just above it the plain figures are
        (12.01, 1.999, 5.999, ["fail", "fail"]),
    ],
)
def test_height_and_width_on_both_sides_of_twelve_millimetres(across_mm, height_mm, width_mm, expected):
    mark = MarkFacts("COPY", "obverse", height_mm=height_mm, width_mm=width_mm)

    assert outcomes(mark, PieceFacts("coin", across_mm), "us-copy.height", "us-copy.width") == expected


@pytest.mark.parametrize(
    ("thickness_mm", "depth_mm", "expected"),
    [
        (0.59, 0.295, "pass"), (0.59, 0.294, "fail"), (0.60, 0.300, "pass"), (0.60, 0.299, "fail"),
        (0.61, 0.300, "pass"), (0.61, 0.299, "fail"),
    ],
)  # fmt: skip
def test_depth_on_both_sides_of_six_tenths_of_a_millimetre(thickness_mm, depth_mm, expected):
    mark = MarkFacts("COPY", "obverse", technique="incuse", depth_mm=depth_mm)

    assert outcomes(mark, PieceFacts("coin", 31.19, thickness_mm), "us-copy.depth") == [expected]


def write(client, item: Item, **typed):
    return client.post(reverse("rule_facts", args=[item.number]), typed)


def facts(item: Item) -> PieceFacts:
    return piece_facts(Item.objects.get(pk=item.pk))


def test_what_rules_ask_is_entered_on_a_page_and_reaches_the_judgement(conservator):
    copy = make_copy("R.2026.2")
    typed = {
        "coating_um": "4,5", "coating_um_unit": "µm", "fineness_permille": "925 ‰", "moment_uvs_cm": "0.4",
        "hole_mm": "6.1 mm", "corner_count": "0",
    }  # fmt: skip

    answer = write(conservator, copy, **typed)

    assert answer.url == reverse("mark_plan", args=["R.2026.2"])
    found = facts(copy)
    assert (found.coating_um, found.fineness_permille, found.moment_uvs_cm) == (4.5, 925.0, 0.4)
    assert (found.hole_mm, found.corner_count) == (6.1, 0)


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        ("coating_um", "-1"), ("coating_um", "2000"), ("fineness_permille", "1001"), ("moment_uvs_cm", "-3"),
        ("hole_mm", "2 m"), ("corner_count", "51"), ("corner_count", "six"),
    ],
)  # fmt: skip
def test_figures_that_cannot_be_come_back_with_what_was_typed(conservator, name, typed):
    answer = write(conservator, make_copy("R.2026.2"), **{name: typed})

    assert answer.status_code == 422 and name in answer.context["form"].errors
    assert not RuleFacts.objects.exists()


def test_nothing_entered_leaves_everything_unknown_and_no_coating_is_no_unknown_one(conservator):
    copy = make_copy("R.2026.2")
    assert write(conservator, copy, coating_um="").status_code == 302
    assert facts(copy).coating_um is None

    write(conservator, copy, coating_um="0", hole_mm="0", version=RuleFacts.objects.get().version)
    assert (facts(copy).coating_um, facts(copy).hole_mm) == (None, None)


@pytest.mark.parametrize(
    ("piece", "expected"),
    [
        ({"metal": "silver", "fineness_permille": 500}, "pass"),
        ({"metal": "silver", "fineness_permille": 499}, "fail"),
        ({"metal": "gold", "fineness_permille": 375}, "pass"),
        ({"metal": "platinum", "fineness_permille": 849}, "fail"),
        ({"metal": "copper", "hole_mm": 6.01}, "pass"), ({"metal": "copper", "hole_mm": 6.0}, "fail"),
        ({"metal": "copper", "corner_count": 6}, "pass"), ({"metal": "copper", "corner_count": 7}, "fail"),
    ],
)  # fmt: skip
def test_exceptions_inside_the_band_of_euro_coins(piece, expected):
    inside = PieceFacts("coin", 23.25, edge_mm=2.3, **piece)

    assert outcomes(MarkFacts("COPY"), inside, "eu-2182.exc") == [expected]


@pytest.mark.parametrize(
    ("moment", "expected"), [(0.9, "pass"), (1.0, "fail"), (7.0, "fail"), (7.1, "pass"), (None, "unknown")]
)
def test_the_magnetic_moment_decides_where_the_conductivity_is_that_of_a_euro_coin(moment, expected):
    piece = PieceFacts("coin", 23.25, conductivity_pct=5.0, moment_uvs_cm=moment)

    assert outcomes(MarkFacts("COPY"), piece, "eu-2182.metal") == [expected]


@pytest.mark.parametrize(("coating_um", "expected"), [(2.0, "pass"), (2.1, "fail"), (None, "unknown")])
def test_a_coating_on_a_hallmarked_piece(coating_um, expected):
    piece = PieceFacts("beaker", hallmarked=True, skin="silver", coating_um=coating_um)

    assert outcomes(MarkFacts("COPY"), piece, "uk-hallmark-5") == [expected]


class TestTextsCompared:
    def test_the_day_is_kept_shown_and_stands_under_every_verdict(self, conservator):
        address = reverse("rule_check", args=["us-copy.face"])
        typed = {"checked_on": "2026-03-01", "text_version": "as in force in March 2026", "confirmed": "on"}

        assert conservator.post(address, typed).status_code == 302

        rule = next(rule for rule in all_rules() if rule.id == "us-copy.face")
        assert (rule.evidence, rule.checked_on.isoformat()) == ("seen", "2026-03-01")
        page = unescape(conservator.get(reverse("mark_rule_list")).content.decode())
        assert "as in force in March 2026, checked 1 March 2026; seen" in page and "Compare again" in page

    def test_a_text_that_differs_leaves_its_rule_in_doubt_and_needs_a_note(self, conservator):
        address = reverse("rule_check", args=["us-copy.height"])
        typed = {"checked_on": "2026-03-01", "text_version": "2026"}

        assert "note" in conservator.post(address, typed).context["form"].errors
        conservator.post(address, typed | {"note": "2.5 mm now"})

        assert next(rule for rule in all_rules() if rule.id == "us-copy.height").evidence == "from memory"

    def test_a_day_to_come_and_a_rule_that_is_none_are_refused(self, conservator):
        address = reverse("rule_check", args=["us-copy.height"])
        typed = {"checked_on": "2999-01-01", "text_version": "2026", "confirmed": "on"}

        assert conservator.post(address, typed).status_code == 422
        assert conservator.get(reverse("rule_check", args=["no.such"])).status_code == 404
        assert not RuleCheck.objects.exists()

    def test_every_rule_can_be_compared(self, conservator):
        for rule in load_rules():
            assert conservator.get(reverse("rule_check", args=[rule.id])).status_code == 200


def check_of(copy: Item):
    fresh = Item.objects.get(pk=copy.pk)
    found = checks(Gate.MARK, Subject(fresh, fresh.number, (fresh,)), clock.today())
    return next((check for check in found if check.name == "marks of the original"), None)


class TestMarksOfTheOriginal:
    @pytest.fixture
    def copy(self):
        beaker = make_item(object_type="beaker", hallmarks="present")
        make_mark(beaker, text="lion", purpose="hallmark")
        return make_copy(model=beaker)

    def told(self, copy: Item, **fields) -> None:
        mark = next(thing.marks.get() for thing in Item.objects.filter(kind="original", marks__isnull=False))
        copy.suppressed_marks.create(mark=mark, **fields)

    def test_the_gate_is_closed_until_each_is_accounted_for(self, copy):
        assert not check_of(copy).met and "What became of “lion”" in check_of(copy).sentence

        self.told(copy, how="removed")
        assert "no photograph shows the place" in check_of(copy).sentence

        row = copy.suppressed_marks.get()
        row.photo = make_photo(copy, view="detail")
        row.save()
        assert check_of(copy).met

    def test_a_hallmark_left_on_the_copy_keeps_it_closed(self, copy):
        self.told(copy, how="left", reason="overlooked")

        assert "a hallmark is removed" in check_of(copy).sentence

    def test_a_makers_mark_may_be_left_for_a_reason(self):
        medal = make_item()
        make_mark(medal, text="C. ALDERSEY F.", purpose="maker")
        copy = make_copy(model=medal)
        self.told(copy, how="left", reason="the signature belongs to the design")

        assert check_of(copy).met

    def test_where_the_original_carries_none_nothing_is_asked(self):
        assert check_of(make_copy()) is None

    def test_the_table_of_a_commission_asks_it_of_each_copy_along_its_own_line(self, conservator, copy):
        """The copy of a medal without marks is asked nothing, whatever its neighbour in the commission carries."""
        beaker = Item.objects.get(hallmarks="present")
        medal = make_item("OVM.1931.0044")
        plain = make_copy("R.2026.9", model=medal)
        commission = make_commission(originals=[beaker, medal])
        commission.copies.set([copy, plain])

        page = unescape(conservator.get(commission.get_absolute_url()).content.decode())
        assert f"{copy.number}: What became of “lion”" in page and f"{plain.number}: What" not in page

        self.told(copy, how="removed", photo=make_photo(copy, view="detail"))
        page = unescape(conservator.get(commission.get_absolute_url()).content.decode())
        assert "What became of" not in page and page.count("is accounted for") == 1
