"""Instants, spans and numbers of lines in the sentences of an argument; instants in UTC, pages show local time."""

from collections.abc import Sequence


def span(seconds: float) -> str:
    """3 h 10 min; 40 s."""
    whole = round(seconds)
    if whole < 120:
        return f"{whole} s"
    days, rest = divmod(whole, 86_400)
    hours, rest = divmod(rest, 3600)
    minutes = rest // 60
    parts = [f"{days} d" if days else "", f"{hours} h" if hours else "", f"{minutes} min" if minutes else ""]
    return " ".join(part for part in parts if part)


def lines(numbers: Sequence[int], count: int) -> str:
    """line 12; lines 12 and 26; lines 3, 5, 9 and 40 more."""
    if count == 1:
        return f"line {numbers[0]}"
    shown = [str(number) for number in numbers[:5]]
    if count > len(shown):
        return f"lines {', '.join(shown)} and {count - len(shown)} more"
    return f"lines {', '.join(shown[:-1])} and {shown[-1]}"


def amperes(value: float) -> str:
    return f"{value:.4g} A"
