"""What belongs together stays on one line: a number and its unit, a figure and its ±, a day and its month."""

import re

NO_BREAK = "\u00a0"
_UNITS = r"(?:[mcdµ]?m[²³]?|k?g|mg|m?L|m?g/L|mol/L|mL/L|g/cm³|A/dm²|A/ft²|m?A|m?V|Ah|A·h|Ah/L|h|min|s|Ω|kΩ|°[CF]?|%|lx)"
_MONTHS = r"(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)[a-z]*"
_UNIT = re.compile(rf"(?<=[\d)]) (?={_UNITS}(?![\w/²³·]))")
_DAY = re.compile(rf"(?<![\d.,])(\d{{1,2}}) (?={_MONTHS}\b)")
_SPREAD = re.compile(r"(?<=\d) ?± ?(?=\d)")


def bound(text: str) -> str:
    """The text with no-break spaces where a line must not end.

    >>> bound("lifted, 5 % acid, 3 h 10 min on 1 April").split(" ")
    ['lifted,', '5\\xa0%', 'acid,', '3\\xa0h', '10\\xa0min', 'on', '1\\xa0April']
    """
    text = _UNIT.sub(NO_BREAK, text)
    text = _DAY.sub(rf"\1{NO_BREAK}", text)
    return _SPREAD.sub(lambda found: found.group().replace(" ", NO_BREAK), text)
