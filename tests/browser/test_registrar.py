"""The registrar's path: an original with its measurements, a commission, the owner's consent."""

from records.models import Commission, Consent, Duty, Item
from tests.browser.walking import day, picture
from tests.factories import make_party, make_place


def test_from_an_original_to_its_owners_consent(page, walk):
    make_party("Thornwick Almshouse Trust", kind="institution")
    make_place("Strongroom")
    registrar = walk(page, "registrar")

    registrar.go("/")
    registrar.follow("Objects")
    registrar.follow("Enter an object")
    registrar.fill(
        {
            "Number": "L.2026.003",
            "Title": "Ten-groat piece",
            "Date or period": "1571",
            "Held as": "on loan to us",
            "Materials and techniques": "silver",
            "Owner": "Thornwick Almshouse Trust",
            "Place": "Strongroom",
        }
    )
    registrar.press("Enter it")
    assert "L.2026.003" in registrar.text()

    measure(registrar, {"Dimension": "diameter", "Number and unit": "31,20 mm", "How is it known": "measured"})
    measure(registrar, {"Dimension": "mass", "Number and unit": "0.5086", "Unit of Number and unit": "oz (troy)"})
    assert "31.20" in registrar.text() and "15.82" in registrar.text()

    registrar.follow("Add photographs")
    registrar.fill({"Photographs": picture(), "What they show": "obverse", "Scale in the frame": True})
    registrar.send_photographs()

    commission = log_commission(registrar)
    record_consent(registrar)

    assert list(commission.originals.all()) == [Item.objects.get(number="L.2026.003")]
    assert Consent.objects.get().in_force_on(commission.requested_on)
    assert Duty.objects.filter(sentence__startswith="Destroy the moulds").exists()
    assert "Thornwick" in registrar.text()


def measure(registrar, values):
    registrar.go("/things/L.2026.003/")
    registrar.page.get_by_role("link", name="measure").first.click()
    registrar.arrived()
    registrar.fill(values)
    registrar.press("Save the measurement")


def log_commission(registrar):
    registrar.go("/")
    registrar.follow("Commissions")
    registrar.follow("Log a commission")
    registrar.fill(
        {
            "Requester": "Thornwick Almshouse Trust",
            "Purpose": "handling",
            "Originals": "L.2026.003",
            "Needed by": day(-90),
        }
    )
    registrar.press("Log it")
    return Commission.objects.get()


def record_consent(registrar):
    registrar.follow("Record the owner")
    registrar.fill(
        {
            "Owner": "Thornwick Almshouse Trust",
            "Given by": "Thornwick Almshouse Trust",
            "L.2026.003 Ten-groat piece": True,
            "Highest temperature": "30",
            "Pulls allowed of each mould": "2",
            "Copies allowed": "1",
            "What becomes of the moulds": "destroyed",
            "By when": day(-60),
            "Valid to": day(-200),
        }
    )
    registrar.press("Keep")
