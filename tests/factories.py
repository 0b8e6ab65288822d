"""Rows for tests: plain functions that make one real thing with believable defaults."""

from datetime import UTC, date, datetime
from itertools import count

from django.contrib.auth.models import Group, User

from process.models import (
    Bath,
    BathAnalysis,
    BathLimit,
    Cathode,
    Constituent,
    Inspection,
    MakingUp,
    Mould,
    Run,
    Shell,
)  # fmt: skip
from process.services.copies import make_up
from records import models

_serial = count(1)
NINE = datetime(2026, 2, 16, 8, 0, tzinfo=UTC)  # 09:00 by the museum's clock


def make_user(role: str = "", name: str = "", *, superuser: bool = False) -> User:
    """A person who can sign in (password "a long password"), in one role, linked to a party."""
    name = name or f"{role or 'person'}{next(_serial)}"
    user = User.objects.create_user(name, password="a long password", is_superuser=superuser)
    if role:
        user.groups.add(Group.objects.get_or_create(name=role)[0])
    make_party(name=name.title(), user=user)
    return user


def make_party(name: str = "", **fields) -> models.Party:
    return models.Party.objects.create(name=name or f"Person {next(_serial)}", **fields)


def make_place(name: str = "", **fields) -> models.Place:
    return models.Place.objects.create(name=name or f"Place {next(_serial)}", **fields)


def make_item(number: str = "", **fields) -> models.Item:
    """An original medal unless told otherwise."""
    number = number or f"OVM.1900.{next(_serial):04d}"
    return models.Item.objects.create(
        **{"number": number, "kind": "original", "title": "Portrait medal", "date_words": "1624"} | fields
    )


def make_term(scheme: str, label: str = "", **fields) -> models.Term:
    return models.Term.objects.get_or_create(
        scheme=scheme, label=label or f"{scheme} {next(_serial)}", defaults=fields
    )[0]


def make_photo(item: models.Item | None = None, **fields) -> models.Photo:
    """A photograph's row; the file itself is only made by records.services.photographs."""
    serial = next(_serial)
    defaults = {
        "item": item,
        "original_name": f"photo{serial}.jpg",
        "path": f"originals/{serial}.jpg",
        "sha256": f"{serial:064d}",
        "media_type": "image/jpeg",
        "size_bytes_count": 1000,
        "width_px_count": 100,
        "height_px_count": 100,
    }
    return models.Photo.objects.create(**defaults | fields)


def make_commission(number: str = "", *, originals=(), **fields) -> models.Commission:
    commission = models.Commission.objects.create(
        **{"number": number or f"RQ-2026-{next(_serial):03d}", "requested_on": date(2026, 1, 19)}
        | {"requester": fields.pop("requester", None) or make_party(), "purpose": make_term("purpose", "handling")}
        | fields
    )
    commission.originals.set(originals)
    return commission


def make_consent(*items: models.Item, commission: models.Commission | None = None, **fields) -> models.Consent:
    owner = fields.pop("owner", None) or make_party()
    consent = models.Consent.objects.create(
        **{"owner": owner, "given_by": owner, "given_on": date(2026, 1, 22), "valid_from": date(2026, 1, 22)} | fields
    )
    consent.items.set(items)
    if commission:
        consent.commissions.add(commission)
    return consent


def make_report(
    item: models.Item, occasion: str = "before", *, signed: bool = True, **fields
) -> models.ConditionReport:
    examiner = fields.pop("examiner", None) or make_party()
    signature = {"signed_by": examiner, "signed_role": "conservator", "signed_at": NINE} if signed else {}
    return models.ConditionReport.objects.create(
        **{"number": f"CR-2026-{next(_serial):02d}", "item": item, "occasion": occasion, "examiner": examiner}
        | {"examined_on": date(2026, 2, 3), "light": "raking, left"} | signature | fields
    )  # fmt: skip


def make_mould(model: models.Item | None = None, number: str = "", **fields) -> Mould:
    item = make_item(number or f"M-2026-{next(_serial):02d}", kind="mould", title="Mould")
    return Mould.objects.create(
        **{"item": item, "model": model or make_item(), "side": "obverse", "made_on": date(2026, 2, 4)}
        | {"material": make_term("mould_material", "silicone, addition cure"), "pulls_allowed_count": 8} | fields
    )  # fmt: skip


def make_bath(number: str = "", **fields) -> Bath:
    """An acid copper bath of 60 L with its limits."""
    bath = Bath.objects.create(
        **{
            "number": number or f"B-{next(_serial):02d}",
            "name": "acid copper",
            "volume_l": 60.0,
            "opening_charge_ah": 640.0,
        }
        | fields
    )
    for constituent, target, warn, stop in (
        (Constituent.COPPER_SULPHATE, 210.0, (190.0, 230.0), (170.0, 260.0)),
        (Constituent.SULPHURIC_ACID, 60.0, (50.0, 75.0), (35.0, 100.0)),
    ):
        BathLimit.objects.create(
            bath=bath, constituent=constituent, target_g_l=target, warn_low_g_l=warn[0], warn_high_g_l=warn[1],
            stop_low_g_l=stop[0], stop_high_g_l=stop[1],
        )  # fmt: skip
    return bath


def make_analysis(bath: Bath, number: str = "", **fields) -> BathAnalysis:
    """Within limits: 209.8 g/L of copper sulphate, 60.2 g/L of acid."""
    return BathAnalysis.objects.create(
        **{
            "number": number or f"BA-{next(_serial):02d}",
            "bath": bath,
            "sampled_at": datetime(2026, 2, 10, 9, 0, tzinfo=UTC),
        }
        | {"copper_titrant_ml": 8.403, "acid_titrant_ml": 12.28}
        | fields
    )


def make_run(number: str = "", *, bath: Bath | None = None, moulds=(), **fields) -> Run:
    """A run of the medal's two faces as planned in the scenario; pass the moulds that hang in it."""
    run = Run.objects.create(
        **{"number": number or f"D-2026-{next(_serial):03d}", "bath": bath or make_bath()}
        | {"planned_current_density_a_dm2": 1.5, "planned_thickness_mm": 0.6}
        | fields
    )
    for mould in moulds:
        make_cathode(run, mould=mould)
    return run


def make_cathode(run: Run, **fields) -> Cathode:
    return Cathode.objects.create(
        **{"run": run, "label": f"cathode {next(_serial)}", "side": "obverse"}
        | {"face_area_dm2": 0.289, "total_area_dm2": 0.402}
        | fields
    )


def make_shell(
    model: models.Item | None = None,
    number: str = "",
    *,
    cathode: Cathode | None = None,
    side: str = "obverse",
    **fields,
) -> Shell:
    """A kept shell that grew on a mould of the model, with its steps of descent."""
    Transfer = models.DescentLink.Transfer
    if cathode is None:
        mould = make_mould(model, side=side, shrinkage_pct=-0.08)
        models.DescentLink.objects.create(source=mould.model, target=mould.item, transfer=Transfer.MOULDING, side=side)
        cathode = make_cathode(make_run(), mould=mould, side=side)
    item = make_item(number or f"S-{next(_serial):02d}", kind="shell", status="workshop", title="Shell", date_words="")
    source, how = (cathode.mould, Transfer.DEPOSIT) if cathode.mould else (cathode.core, Transfer.SKIN)
    models.DescentLink.objects.create(source=source.item, target=item, transfer=how, side=side)
    return Shell.objects.create(
        **{"item": item, "cathode": cathode, "gross_mass_g": 22.05, "trimmed_mass_g": 15.10}
        | {"separated_on": date(2026, 2, 17)} | fields
    )  # fmt: skip


def make_copy(number: str = "", *, shells=(), model: models.Item | None = None, about=None, **fields) -> models.Item:
    """A copy of two joined shells, unmarked and not inspected."""
    model = model or (None if shells else make_item(object_type="medal, portrait medal"))
    shells = shells or [make_shell(model), make_shell(model, side="reverse")]
    copy = models.Item(
        **{
            "number": number or f"R.2026.{next(_serial)}",
            "title": "Electrotype copy: Portrait medal",
            "date_words": "2026",
        }
        | {"object_type": "medal", "materials": "electrodeposited copper"}
        | (about or {})
    )
    afterwards = fields.pop("afterwards", False)
    making = MakingUp(**{"technique": "joined", "lead_inside": "no", "made_up_on": date(2026, 2, 20)} | fields)
    return make_up(copy=copy, making_up=making, shells=list(shells), afterwards=afterwards)


def make_mark(item: models.Item, **fields) -> models.Mark:
    """Permanent and photographed unless told otherwise."""
    photo = fields.pop("photo", "own")
    return models.Mark.objects.create(
        **{"item": item, "text": "OVM 2026 COPY", "face": "reverse", "position": "rim", "method": "mould_borne"}
        | {"is_legible": True, "is_sans_serif": True}
        | {"photo": make_photo(item, view="mark") if photo == "own" else photo} | fields
    )  # fmt: skip


def make_handover(copy: models.Item, **fields) -> models.Handover:
    """A loan that is agreed and not yet handed over."""
    return models.Handover.objects.create(
        **{"number": f"H-2026-{next(_serial):03d}", "item": copy, "party": fields.pop("party", None) or make_party()}
        | {"kind": "loan", "purpose": "an exhibition", "described_as": "Electrotype copy, 2026"}
        | {"agreed_on": date(2026, 2, 10), "due_on": date(2026, 3, 30)} | fields
    )  # fmt: skip


def make_inspection(copy: models.Item, **fields) -> Inspection:
    return Inspection.objects.create(
        **{"copy": copy, "inspected_on": date(2026, 2, 24), "inspector": fields.pop("inspector", None) or make_party()}
        | {"mass_g": 64.71, "diameter_mm": 58.34, "not_measured_reason": "closed before it could be measured"}
        | {"decision": "accept"} | fields
    )  # fmt: skip
