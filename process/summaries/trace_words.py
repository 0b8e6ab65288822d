"""A trace in words: what was found in its file, how it is read, and where it stands."""

from datetime import datetime
from typing import Any

from django.utils import timezone

from process.models import Trace
from process.tracing import Proposal
from process.tracing.dialect import DELIMITERS
from process.tracing.words import span
from records.units import show

ENCODINGS = {"utf-8": "UTF-8", "utf-8-sig": "UTF-8 with a mark", "latin-1": "Latin-1", "cp1252": "Windows Latin"}


def found_words(proposal: Proposal) -> list[tuple[str, str]]:
    """(what, as found) of the file's hand."""
    mapping = proposal.mapping
    encoding = ENCODINGS.get(mapping.encoding, mapping.encoding.upper())
    lines = f"{mapping.skip} line{'s' if mapping.skip != 1 else ''}"
    return [
        ("Characters", encoding),
        ("Columns", f"{mapping.column_count}, parted by {DELIMITERS[mapping.delimiter]}"),
        ("Decimals", "comma" if mapping.decimal == "," else "point"),
        ("Above the samples", lines if mapping.skip else "nothing"),
        ("Known shape", "read as an earlier file like it" if proposal.remembered else "the first file of this shape"),
    ]


def sentence_of(trace: Trace) -> str:
    if not trace.is_mapped or trace.starts_at is None:
        return "It came in, and nobody has said yet how it is to be read."
    if not trace.sample_count:
        return (
            f"None of its {trace.left_out_count:,} samples falls in the run as decided so far. Check that it is the "
            "file of this run and this tank, that day and month are not exchanged, and which zone the logger’s clock "
            "showed; if the file is another’s, withdraw it."
        )
    first, last = (f"{timezone.localtime(at):%-d %b %H:%M}" for at in (trace.starts_at, trace.ends_at))
    return f"{trace.sample_count:,} samples from {first} to {last}, one every {span(trace.interval_s)}."


def facts_of(trace: Trace, again: tuple[datetime, list[str]] | None = None) -> list[tuple[str, Any]]:
    """What stands beside the findings; empty ones are left out."""
    known = [
        ("Charge as decided", trace.charge_ah is not None and show(trace.charge_ah, "_ah")),
        ("Of it bridged", trace.bridged_ah and show(trace.bridged_ah, "_ah")),
        ("Gaps may add up to", trace.open_ah and show(trace.open_ah, "_ah")),
        ("Without regard to sign", _absolute(trace)),
        ("Switching moments between samples", trace.switching_ah and f"± {show(trace.switching_ah, '_ah')}"),
        ("With current", trace.energised_s and show(trace.energised_s / 3600, "_h")),
        ("Samples left out", trace.left_out_count or ""),
        ("Voltage", _between(trace.voltage_least_v, trace.voltage_most_v, "_v")),
        ("Bath", _between(trace.temperature_least_degc, trace.temperature_most_degc, "_degc")),
        ("Counted elsewhere", _cuts(trace)),
        ("Reckoned again", again and f"{timezone.localtime(again[0]):%-d %b %Y, %H:%M}: {_came_out(again[1])}"),
        ("Brought by", trace.brought_by),
        ("Accepted by", trace.accepted_by),
        ("Because", trace.reason),
        ("Withdrawn because", trace.withdrawn_reason),
        ("Size", _size(trace.size_bytes_count)),
        ("SHA-256", trace.sha256),
    ]
    return [(name, value) for name, value in known if value]


def _cuts(trace: Trace) -> str:
    """The times for which another trace is counted, in words."""
    count = len(trace.cuts)
    return f"the charge of {count} {'period' if count == 1 else 'periods'} comes from another trace" if count else ""


def _absolute(trace: Trace) -> str:
    if trace.absolute_ah is None or abs(trace.absolute_ah - (trace.known_ah or 0.0)) < 1e-9:
        return ""
    return show(trace.absolute_ah, "_ah")


def _between(least: float | None, most: float | None, suffix: str) -> str:
    return "" if least is None or most is None else f"{show(least, suffix)} to {show(most, suffix)}"


def _size(bytes_count: int) -> str:
    """In the unit that leaves a number of at most three digits before its point."""
    return f"{bytes_count / 1e6:,.1f} MB" if bytes_count >= 1e6 else f"{bytes_count / 1e3:,.1f} kB"


def _came_out(found: list[str]) -> str:
    return "; ".join(found) if found else "the same figures"
