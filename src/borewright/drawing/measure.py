"""How wide words are on paper, read from the font itself, so that labels can be kept apart.

Widths are advance widths without kerning: never narrower than what is printed by more than a
hair. The font is Source Sans Pro (SIL Open Font License), from the package font-source-sans-pro.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from font_source_sans_pro import font_files_ttf
from fontTools.ttLib import TTFont

from borewright.drawing.scene import Text

ASCENT = 0.73
"""Height of the tallest letters (b, d, l) over the base line, in ems, read off the font."""
DESCENT = 0.21
"""Depth of g, p, y and brackets under the base line, in ems."""
_PAD = 0.15
_HARD = "\N{NO-BREAK SPACE}"


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle on paper."""

    left: float
    top: float
    right: float
    bottom: float

    def overlaps(self, other: Box) -> bool:
        """True when the two share an area.

        >>> Box(0, 0, 2, 2).overlaps(Box(1, 1, 3, 3)), Box(0, 0, 2, 2).overlaps(Box(2, 0, 3, 1))
        (True, False)
        """
        across = self.left < other.right and other.left < self.right
        return across and self.top < other.bottom and other.top < self.bottom


@lru_cache(maxsize=4096)
def text_width(text: str, size: float, bold: bool = False) -> float:
    """Width in mm of a line of words set at `size` mm.

    >>> 0 < text_width("ill", 3.5) < text_width("mmm", 3.5)
    True
    """
    widths, em = _advances("SourceSansProBold" if bold else "SourceSansPro")
    return sum(widths.get(ord(c), em) for c in text) * size / em


def text_box(label: Text) -> Box:
    """The rectangle that a level label covers, with a hair of air around it."""
    width = text_width(label.text, label.size, label.bold)
    left = label.x - {"start": 0.0, "middle": 0.5, "end": 1.0}[label.anchor] * width
    top, bottom = label.y - ASCENT * label.size, label.y + DESCENT * label.size
    return Box(left - _PAD, top - _PAD, left + width + _PAD, bottom + _PAD)


def wrapped(text: str, size: float, width: float) -> tuple[str, ...]:
    """Words broken into lines no wider than `width` mm (a single longer word stays whole).

    >>> wrapped("one two three", 3.5, 12.0)
    ('one two', 'three')
    """
    lines: list[str] = []
    for word in _bound(text).split(" "):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, size) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(line.replace(_HARD, " ") for line in lines)


def _bound(text: str) -> str:
    """The text with a number, its fraction and its unit held together."""
    return re.sub(
        r"(?<=\d) (?=[a-zµ°(%]|\d+/\d)|(?<=[a-z]) (?=\()|(?<=face) (?=[AB]\b)",
        _HARD,
        " ".join(text.split()),
    )


@lru_cache(maxsize=2)
def _advances(face: str) -> tuple[dict[int, float], float]:
    font = TTFont(font_files_ttf[face], lazy=True)
    try:
        metrics, letters = font["hmtx"], font.getBestCmap()
        return {c: metrics[g][0] for c, g in letters.items()}, float(font["head"].unitsPerEm)
    finally:
        font.close()
