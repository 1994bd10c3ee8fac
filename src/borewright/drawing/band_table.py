"""The table of the bands: number and tint, from, to, and the share of the metal's strength."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.pressed import PressedPicture, TensionBand
from borewright.drawing.pressed_section import tint
from borewright.drawing.scene import Item, Line, LineKind, Path, Text
from borewright.quantities import rounding

SIZE = 3.3
ROW = 5.0
SWATCH = 9.0
COLUMNS = (22.0, 38.0, 60.0)
"""Right ends of the columns from, to and share, mm from the table's left."""


def table_items(
    picture: PressedPicture, left: float, top: float, size: float, symbol: str
) -> tuple[Item, ...]:
    """The table, highest band first, as it stands in the section from the bore outwards."""
    rows = tuple(reversed(picture.bands))
    return (
        *_head(left, top, symbol),
        *(
            item
            for k, band in enumerate(rows, 1)
            for item in _row(band, len(rows), left, top + ROW * (k + 0.5), size)
        ),
    )


def table_height(picture: PressedPicture) -> float:
    """Height of the table on paper, mm."""
    return ROW * (len(picture.bands) + 1.5)


def _percent(share: float) -> str:
    return rounding.significant(100 * share, 2 if share >= 0.1 else 1)


def band_words(band: TensionBand, size: float) -> tuple[str, str, str]:
    """From, to and share, as the table prints them.

    >>> band_words(TensionBand(1, None, 10e6, None, 0.05), 1e6)
    ('under', '10', '0 to 5 %')
    """
    low = "under" if band.low is None else _plain(band.low / size)
    shares = [0.0 if band.share_low is None else band.share_low, band.share_high]
    said = " to ".join(_percent(share) for share in shares)
    return low, _plain(band.high / size), f"{said} %"


def _plain(value: float) -> str:
    return f"{float(rounding.significant(value, 3)):,.10g}"


def _head(left: float, top: float, symbol: str) -> Iterator[Item]:
    y = top + 0.9 * ROW
    yield Text(left, y, "Band", SIZE, bold=True, mask=False)
    for words, right in zip(("from", f"to, {symbol}", "of strength"), COLUMNS, strict=True):
        yield Text(left + right, y, words, SIZE, "end", bold=True, mask=False)
    yield Line(left, y + 1.2, left + COLUMNS[-1], y + 1.2, LineKind.THIN)


def _row(band: TensionBand, count: int, left: float, top: float, size: float) -> Iterator[Item]:
    foot, y = top + ROW - 0.7, top + 0.72 * ROW
    box = ((left, top), (left + SWATCH, top), (left + SWATCH, foot), (left, foot))
    yield Path(box, LineKind.THIN, True, tint(band.number, count), f"swatch-{band.number}")
    yield Text(left + SWATCH / 2, y, str(band.number), SIZE, "middle", True, False)
    for words, right in zip(band_words(band, size), COLUMNS, strict=True):
        yield Text(left + right, y, words, SIZE, "end", mask=False, name=f"row-{band.number}")
