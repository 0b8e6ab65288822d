"""Filters and tags of every template (a builtin, no `load` needed): figures, instants, states, links."""

import uuid
from collections.abc import Iterable
from datetime import date, datetime

from django import template
from django.urls import reverse
from django.utils import timezone
from django.utils.html import conditional_escape, escape, format_html
from django.utils.safestring import SafeString, mark_safe
from django.utils.text import capfirst

from records import access, captions, clock, photo_doubts, units
from records.forms import sending
from records.models import Item, Photo, Tracked
from records.units.showing import MINUS
from records.wording import binding, phrases

register = template.Library()

SHAPES = {"blocked": "■", "look": "▲", "done": "●", "open": "○"}
WORDS = {"blocked": "blocked", "look": "look here", "done": "done", "open": "open"}
MESSAGE_STATES = {"success": "done", "warning": "look", "error": "blocked"}
NARROW_NO_BREAK = "\u202f"
ABSENT = mark_safe(
    '<span class="absent"><span aria-hidden="true">–</span><span class="unseen">not recorded</span></span>'
)
FIGURE = '<span class="figure-set"><span class="number">{}</span>{}{}<span class="unit">{}</span></span>'


def _set(number: str, symbol: str, spread: str = "") -> SafeString:
    within = format_html('<span class="plus-minus">\u2009±{}</span>', spread) if spread else ""
    return format_html(FIGURE, number, within, "" if symbol == "°" else units.showing.THIN_SPACE, symbol)


@register.filter
def quantity(value: float | None, suffix: str) -> SafeString:
    """`{{ shell.mass_g|quantity:"_g" }}`: the number, a thin space and the unit in lighter ink."""
    return ABSENT if value is None or value == "" else _set(*units.figure(value, suffix))


@register.simple_tag
def quantity_within(
    value: float | None, suffix: str, plus_minus: float | None = None, digits: int | None = None
) -> SafeString:
    """`{% quantity_within 402.3 "_um" 12 %}`: 402 ± 12 µm, with the digits that the ± supports.

    With as many decimals as `digits` says, if it does: those that a person wrote.
    """
    if value is None or value == "":
        return ABSENT
    text, symbol = units.figure(value, suffix, digits=digits, plus_minus=plus_minus or None)
    best, _, spread = text.partition("±")
    return _set(best.strip(), symbol, spread)


@register.filter
def entered(row: Tracked, field: str) -> SafeString:
    """`{{ shell|entered:"mass_g" }}`: a column with the digits and the ± that a person wrote, as papers print it."""
    suffix = units.suffix_of(field)
    digits = units.decimals_written(row.as_typed.get(field) or {}, suffix)
    return quantity_within(getattr(row, field), suffix, row.plus_minus(field), digits)


@register.filter
def countdown(day: date | None) -> str:
    """“30 Apr 2026, in 12 days”."""
    return clock.countdown(day) if day else ""


@register.filter
def copy_words(item: Item | None) -> str:
    """The sentence under every picture of a copy; nothing under pictures of other things."""
    return captions.copy_words(item)


@register.filter
def added_late(photo: Photo) -> str:
    """Why a picture said to be from before is marked in a list; nothing for others."""
    return photo_doubts.added_late(photo)


@register.filter
def number(value: float | None, suffix: str) -> str:
    """The number alone, for table cells whose heading carries the unit."""
    return ABSENT if value is None or value == "" else units.figure(value, suffix)[0]


@register.filter
def plain(value: float | None) -> str:
    """Every digit that was typed and no more, for tables of bounds: 0.05, 350, −2; nothing where there is no bound."""
    return "" if value is None else units.plain(value).replace("-", MINUS)


@register.filter
def in_other(value: float | None, suffix: str) -> str:
    """`{{ bath.volume_l|in_other:"_l" }}`: the same in the other unit that the trade uses, 15.9 gal (US)."""
    return "" if value is None or value == "" else units.other_unit(value, suffix)


@register.filter
def beside(value: float | None, suffix: str) -> str:
    """The other unit where the trade mixes the two, “ (13.9 A/ft²)”; nothing elsewhere."""
    other = in_other(value, suffix) if suffix in units.MIXED else ""
    return format_html(' <span class="unit beside">({})</span>', other) if other else ""


@register.filter
def other_number(value: float | None, suffix: str) -> str:
    """The number alone in the other usual unit, for a column of its own."""
    if value is None or value == "":
        return ABSENT
    return units.figure(value, suffix, units.OTHER_UNIT.get(suffix))[0]


@register.filter
def bound(text: object) -> str:
    """A sentence in which no line ends between a number and its unit."""
    said = binding.bound(conditional_escape(text))
    return mark_safe(said.replace(units.showing.THIN_SPACE, NARROW_NO_BREAK))


@register.filter
def listed(words: Iterable[object]) -> str:
    """a, b and c."""
    return phrases.listed([str(word) for word in words])


@register.filter
def in_currency(shown: SafeString, currency: str) -> SafeString:
    """`{% filter in_currency:prices.currency %}…{% endfilter %}`: workings say EUR, not the sign for any."""
    return mark_safe(units.in_currency(shown, escape(currency)))


@register.filter
def unit(suffix: str) -> str:
    """The unit of a column suffix, for headings."""
    return units.unit_choice(suffix, None).symbol


@register.filter
def offset(instant: datetime) -> str:
    """+01:00: how far the museum's clock was from UTC then."""
    written = timezone.localtime(instant).strftime("%z")
    return f"{written[:3]}:{written[3:]}"


@register.filter
def local_instant(instant: datetime | None) -> str:
    """16 Feb 2026, 09:00 +01:00: in the museum's zone, with the offset, so that no hour is meant twice."""
    if not instant:
        return ""
    local = timezone.localtime(instant)
    return f"{local.day} {local:%b %Y, %H:%M} {offset(instant)}"


@register.filter
def opening(words: str) -> str:
    """The words with a capital at their head; pH and the like keep the case that is their meaning."""
    head = str(words).split(" ", 1)[0]
    return str(words) if head.lower() != head else capfirst(words)


@register.filter
def state_mark(state: str) -> str:
    """The shape of a state: ■ ▲ ● ○."""
    return SHAPES.get(state, SHAPES["open"])


@register.filter
def state_word(state: str) -> str:
    return WORDS.get(state, state)


@register.filter
def message_state(tags: str) -> str:
    """The state that a message's level stands for."""
    return MESSAGE_STATES.get(tags.split()[-1] if tags else "", "open")


@register.filter
def has_errors(fields) -> bool:
    """True if one of these bound fields is in error, so that its group is not folded away."""
    return any(field.errors for field in fields)


@register.simple_tag(takes_context=True)
def query_with(context: template.Context, **changes: object) -> str:
    """The page's query string with some keys changed, or dropped where the value is empty."""
    query = context["request"].GET.copy()
    for key, value in changes.items():
        if value in (None, ""):
            query.pop(key, None)
        else:
            query[key] = str(value)
    return "?" + query.urlencode()


@register.simple_tag(takes_context=True)
def may(context: template.Context, verb: str, model: str | None = None) -> bool:
    """`{% may "write" "Item" as may_write %}`, `{% may "accept copy" as may_accept %}`: what roles allow."""
    return access.may(context["request"].user, verb, model)


@register.simple_tag
def sending_mark() -> SafeString:
    """`{% sending_mark %}`: the hidden mark by which a verb that is sent twice is acted on once."""
    return format_html('<input type="hidden" name="{}" value="{}">', sending.NAME, uuid.uuid4())


@register.simple_tag(takes_context=True)
def done_url(context: template.Context, pk: int, role: str) -> str:
    """Where a duty is written off, for those who may; nothing for the others."""
    return reverse("duty_done", args=[pk]) if access.may_fulfil(context["request"].user, role) else ""


@register.filter
def at(sequence, index: int):
    """The element at a place, or nothing beyond the end."""
    return sequence[index] if index < len(sequence) else None


@register.filter
def without_number(words: str, number: str) -> str:
    """Words beside a number that is shown already: “M-1: 3 pulls” without “M-1: ”, “Tag M-1, copy” without “ M-1”."""
    led = words.removeprefix(f"{number}: ").removeprefix(f"{number} ")
    return led.replace(f" {number}", "") if led == words else led


@register.filter
def within_hundred(percent: float | None) -> str:
    """A percentage for a bar's width: never under 0 nor over 100."""
    return f"{min(max(percent or 0, 0), 100):.1f}"


@register.filter
def stylesheets(names: str) -> list[str]:
    """The stylesheets of these names."""
    return [f"records/{name}.css" for name in names.split()]


@register.simple_tag(takes_context=True)
def panel_body(context: template.Context, panel) -> SafeString:
    """`{% panel_body panel %}`: a panel's own template, with the panel's own words in reach."""
    with context.push(**panel.context, panel=panel.context):
        return context.template.engine.get_template(panel.template).render(context)
