"""How a typed quantity splits into a number and a unit word; decides nothing about either.

Numbers are ASCII digits only: `16`, `0.6255`, `.5`, `1e-3`, `5/8`, `1-1/4`, `1 1/4`, and the vulgar
fraction characters. They become exact fractions.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

LONGEST: Final = 60
"""Characters: no honest quantity is longer, and it keeps the exact arithmetic small."""

_VULGAR = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8",
    "⅝": "5/8", "⅞": "7/8", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6",
}  # fmt: skip
_SAME = str.maketrans("″“”µμ−–⁄º℃℉", '"""uu--/°CF')
_VULGAR_AT = re.compile(rf"(?:(?P<before>[0-9])[ -]?)?(?P<char>[{''.join(_VULGAR)}])(?![0-9])")
_NUMBER = re.compile(
    r"(?P<sign>[+-]?)"
    r"(?:(?P<whole>[0-9]+)[ -](?P<part>[0-9]+/[0-9]+)"
    r"|(?P<ratio>[0-9]+/[0-9]+)"
    r"|(?P<decimal>(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?(?P<exponent>[0-9]+))?))"
    r"\s*(?P<rest>.*)"
)


@dataclass(frozen=True, slots=True)
class Split:
    """A number, the text it was written as, and the word after it."""

    number: Fraction
    written: str
    unit: str


def tidy(text: str) -> str:
    """One spelling for characters that mean the same, single spaces, no ends.

    >>> tidy("  1½″ "), tidy("12 µm")
    ('1 1/2"', '12 um')
    """
    spaced = " ".join(text.split()).translate(_SAME)
    return _VULGAR_AT.sub(_spell_vulgar, spaced).strip()


def split(text: str) -> Split | None:
    """Number and unit word of a tidied text, or None when no number stands at its beginning.

    >>> split("1-1/4in")
    Split(number=Fraction(5, 4), written='1-1/4', unit='in')
    >>> split("about 3") is None
    True
    """
    match = _NUMBER.fullmatch(text)
    number = _value(match) if match else None
    if match is None or number is None:
        return None
    return Split(number, text[: match.start("rest")].strip(), match["rest"])


def _spell_vulgar(match: re.Match[str]) -> str:
    before = match["before"]
    return f"{before} {_VULGAR[match['char']]}" if before else _VULGAR[match["char"]]


def _value(match: re.Match[str]) -> Fraction | None:
    sign = -1 if match["sign"] == "-" else 1
    if len(match["exponent"] or "") > 2:
        return None  # 10**999 would be exact, large and meant by nobody
    if match["decimal"]:
        return sign * Fraction(match["decimal"])
    top, _, bottom = (match["part"] or match["ratio"]).partition("/")
    if int(bottom) == 0 or (match["part"] and int(top) >= int(bottom)):
        return None
    return sign * (int(match["whole"] or 0) + Fraction(int(top), int(bottom)))
