"""What becomes of a mould: held against the owner's consent, before its witness; who decides next, and by when."""

from django.db import transaction

from process.models import Mould
from records import clock, gates
from records.consents import MOULD_FATE, Act
from records.models import Consent, Duty, Gate, Item
from records.roles import REGISTRAR

Fate = Mould.Fate
WANTED = {Fate.DESTROYED: Consent.MouldFate.DESTROY, Fate.RETURNED: Consent.MouldFate.RETURN}
ENDS = {Fate.DESTROYED: "destroyed", Fate.RETURNED: "returned", Fate.LOST: "lost"}
HELD = {Fate.DESTROYED: Item.Status.DESTROYED, Fate.RETURNED: Item.Status.LEFT, Fate.LOST: Item.Status.LOST}
DECIDE = "Decide on mould {number}: use it again, retire, return or destroy it"


def keep_mould(*, mould: Mould, anew: bool, afterwards: bool = False) -> Mould:
    """A mould as corrected; `anew` where something else is said of its fate."""
    with transaction.atomic():
        if anew:
            _pass_end(mould, afterwards=afterwards)
            _hold_as(mould)
        mould.save()
        _remind(mould)
    return mould


def _pass_end(mould: Mould, *, afterwards: bool) -> None:
    """The owner's word is asked of every end; a mould in store or lent has not come to one."""
    if mould.fate not in ENDS:
        return
    number = mould.item.number
    act = Act(
        words=f"{number} was {ENDS[Fate(mould.fate)]}", commission=mould.commission,
        mould_fate=WANTED.get(Fate(mould.fate), "lost"), witness=mould.fate_witness,
    )  # fmt: skip
    subject = gates.Subject(mould.model, number, (mould.model, mould.item), act=act)
    on = mould.fate_on or clock.today()
    gates.pass_named(Gate.PERMISSION, MOULD_FATE, subject, on, afterwards=afterwards)


def _hold_as(mould: Mould) -> None:
    """Its row among the things says the same."""
    item = mould.item
    wanted = HELD.get(Fate(mould.fate), Item.Status.WORKSHOP if item.status in HELD.values() else item.status)
    if item.status != wanted:
        item.status = wanted
        item._change_reason = f"The mould is {mould.get_fate_display()}."
        item.save()


def _remind(mould: Mould) -> None:
    """The day of the next decision stands among the duties, once, and goes with the mould."""
    duties = mould.item.duties.open().filter(sentence=DECIDE.format(number=mould.item.number))
    if mould.fate in ENDS or mould.decide_by is None:
        duties.delete()
        return
    Duty.objects.update_or_create(
        item=mould.item, sentence=DECIDE.format(number=mould.item.number), done_on=None,
        defaults={"due_on": mould.decide_by, "role": REGISTRAR},
    )  # fmt: skip
