"""The conservator's path, with the technician at the bench: from the condition report to the accepted copy."""

from process.models import Cathode, Event, Reading, Run, Shell
from records.models import ConditionReport, Item
from tests.browser.walking import day, moment, picture
from tests.factories import make_commission, make_consent, make_item, make_party


def test_from_condition_report_to_accepted_copy(page, phone, walk):
    original = make_item("OVM.1931.0044", title="Medal of Maud Ferrigan", owner=make_party("Ostrel Vale Museum"))
    commission = make_commission("RQ-1", originals=[original])
    make_consent(original, commission=commission)
    conservator = walk(page, "conservator")

    photograph(conservator, "OVM.1931.0044", picture("obverse.jpg"))
    examine(conservator, "before moulding", finding=True)
    assess(conservator)
    take_mould(conservator)
    examine(conservator, "after moulding", days_ago=3, change="no change observed")
    keep_bath(conservator)
    plan(conservator)
    run = Run.objects.get()
    grow(walk(phone, "technician"), run)
    weigh(conservator, run)
    copy = make_up(conservator)
    mark(conservator, copy)
    accept(conservator, copy)

    copy.refresh_from_db()
    assert copy.status == Item.Status.ACCESSIONED
    assert Shell.objects.get().making_up.copy == copy


def photograph(walker, number, file):
    walker.go(f"/things/{number}/")
    walker.follow("Add photographs")
    walker.fill(
        {
            "Photographs": file,
            "Light used": "raking, left",
            "Scale in the frame": True,
            "Taken, if the camera wrote no date": moment(96),
        }
    )
    walker.send_photographs()


def examine(walker, occasion, *, days_ago=4, finding=False, change=""):
    walker.go("/things/OVM.1931.0044/condition/new/")
    walker.fill(
        {
            "Occasion": occasion,
            "Examiner": "Conservator",
            "Light used": "raking, left",
            "Mass on the day": "71.36",
            "Examined on": day(days_ago),
        }
    )
    walker.press("Begin the report")
    report = ConditionReport.objects.order_by("pk").last()
    if finding:
        walker.follow("Add a finding")
        walker.fill({"What is seen": "scratch", "Location": "rim, 4 h", "Extent": "1.5 mm", "1 minor, cosmetic": True})
        walker.press("Keep")
    walker.follow("Choose photographs")
    walker.page.get_by_role("checkbox").first.check()
    walker.press("Keep this choice")
    if change:
        walker.follow("Complete the report")
        walker.fill({"Statement": change})
        walker.press("Keep")
    walker.press("Sign")
    report.refresh_from_db()
    assert report.is_signed, walker.text()


def assess(walker):
    walker.go("/things/OVM.1931.0044/risks/new/")
    walker.fill(
        {
            "Number": "RA-1",
            "Assessed on": day(4),
            "Assessor": "Conservator",
            "Commission": "RQ-1",
            "Decision": "direct mould",
            "Materials and surface layers": "leaded bronze, stable patina",
            "Reason": "The surface bears silicone.",
        }
    )
    walker.press("Keep")
    walker.press("Sign")


def take_mould(walker):
    walker.go("/")
    walker.follow("Moulds")
    walker.follow("Record a mould")
    walker.fill(
        {
            "Number": "M-1",
            "Title": "Mould of the obverse",
            "Taken from": "OVM.1931.0044",
            "Side": "obverse",
            "Commission": "RQ-1",
            "Material": "silicone",
            "Made on": day(3),
            "Pulls allowed": "8",
            "Linear change": "-0.08",
        }
    )
    walker.press("Record the mould")


def keep_bath(walker):
    walker.go("/")
    walker.follow("Baths")
    walker.follow("Enter a bath")
    walker.fill({"Number": "B-1", "Name": "acid copper", "Volume at the mark": "60"})
    walker.press("Enter it")
    walker.go("/baths/B-1/limits/copper_sulphate/")
    walker.fill({"Target": "210", "Look below": "190", "Look above": "230", "Stop below": "170", "Stop above": "260"})
    walker.press("Save")
    walker.go("/baths/B-1/analyses/new/")
    walker.fill(
        {
            "Number": "BA-1",
            "Sampled at": moment(72),
            "Copper: titrant used": "8.403",
            "Acid: alkali used": "12.28",
        }
    )
    walker.press("Keep the analysis")
    assert "209.8" in walker.text() and "60.2" in walker.text()


def plan(walker):
    walker.go("/")
    walker.follow("Runs")
    walker.follow("Plan a run")
    walker.fill(
        {
            "Number": "D-1",
            "Bath": "B-1",
            "Current density": "1.5",
            "Target mean thickness": "0.60",
            "Commission": "RQ-1",
        }
    )
    walker.press("Keep the plan")
    walker.follow("Add a cathode")
    walker.fill(
        {
            "Label": "obverse",
            "Mould": "M-1",
            "Face area": "28.9 cm²",
            "Whole area in the bath": "0.402",
            "Wires and clips before": "0",
        }
    )
    walker.press("Add it")


def grow(technician, run):
    """At the bench, on a phone: in, readings, out."""
    technician.go("/runs/D-1/")
    technician.go("/runs/D-1/start/")
    technician.fill({"Time": moment(31), "Current": "0.12"})
    technician.press("Start the run")
    technician.go("/runs/D-1/")
    technician.go("/runs/D-1/events/new/")
    technician.follow("Current changed")
    technician.fill({"Time": moment(29), "Current": "0,603 A"})
    technician.press("Save")
    technician.go("/runs/D-1/readings/new/")
    technician.fill({"Time": moment(10), "Current": "600 mA", "Cell voltage": "0.8", "Bath temperature": "22.1"})
    technician.press("Save the reading")
    technician.go("/runs/D-1/events/new/?kind=stop")
    technician.fill({"Time": moment(1), "charge reached": True})
    technician.press("Save")
    assert Reading.objects.filter(run=run).count() == 1
    assert Event.objects.filter(run=run).count() == 3


def weigh(walker, run):
    walker.go("/runs/D-1/")
    walker.follow("Weigh what grew")
    walker.fill({"Number of the shell": "S-1", "Mass of everything deposited": "20.05", "Mass after trimming": "15.10"})
    walker.press("Keep the weighing")
    walker.go(f"/runs/{run.number}/judge/")
    walker.fill({"good": True})
    walker.press("Keep")
    assert Cathode.objects.get().shell.gross_mass_g == 20.05
    walker.go("/things/S-1/")


def make_up(walker):
    walker.go("/")
    walker.follow("Copies")
    walker.follow("Make up a copy")
    walker.page.get_by_label("S-1").check()
    walker.fill(
        {"Number of the copy": "R.2026.1", "Technique": "one face", "Lead inside": "no lead", "Commission": "RQ-1"}
    )
    walker.press("Make it up")
    return Item.objects.get(number="R.2026.1")


def mark(walker, copy):
    assert "UNMARKED" in walker.text()
    walker.go(f"/things/{copy.number}/marks/new/")
    walker.fill(
        {
            "Text exactly as it reads": "OVM 2026 COPY",
            "Purpose": "says that it is a copy",
            "Face": "reverse",
            "Method": "punched",
            "Incuse or raised": "incuse",
            "Legible without a lens": "yes",
            "Or a new photograph of the mark": picture("mark.jpg", colour="#6d5a44"),
            "Letter height": "2",
            "Width of the word COPY": "6.5",
            "Depth": "0.3",
        }
    )
    walker.press("Keep the mark")


def accept(walker, copy):
    walker.go(f"/things/{copy.number}/")
    walker.follow("Inspect it")
    walker.fill(
        {
            "Inspector": "Conservator",
            "Mass": "15.2",
            "Or not measured, because": "closed before it could be measured",
            "Decision": "accept",
        }
    )
    walker.press("Keep, then sign")
    walker.fill({"Held as": "accessioned"})
    walker.press("Accept and sign")
