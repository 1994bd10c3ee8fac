"""crown in plain text: what to turn, every rule in a table, setting, stairs, which pulley."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from borewright.answer.crown import PulleyCrown
from borewright.making import crown_words as words
from borewright.quantities.show import Show
from borewright.service.crowned import CrownResult


def crown_lines(made: CrownResult, show: Show) -> Iterator[str]:
    """The answer line by line; the recommended rule stands first in the table."""
    crown = made.crown
    yield words.taken(crown, show)
    yield ""
    yield words.disagreement(crown, show)
    yield from _rules(crown, show)
    yield words.reason(crown)
    yield words.SCOPE
    yield ""
    yield from words.setting(crown, show)
    yield from words.stepping(crown, show)
    yield from _stairs(crown, show)
    yield words.checked(crown, show)
    yield ""
    yield words.WHY
    yield words.NO_CURE
    yield from words.WHICH


def _rules(crown: PulleyCrown, show: Show) -> Iterator[str]:
    best = crown.recommended
    others = (r for r in crown.rules if r.rule != best.rule)
    rows = [("rule", "height on radius", "its words", "from", "for")]
    for rule in (best, *others):
        name = f"{rule.rule} (recommended)" if rule is best or rule == best else rule.rule
        height = show.turned(rule.height)
        rows.append((name, height, rule.as_published, rule.source, rule.belt))
    yield from aligned(rows)


def _stairs(crown: PulleyCrown, show: Show) -> Iterator[str]:
    stepped, made = crown.stepped, crown.stepped.stairs
    if made is None:
        return
    counts = "depth on radius" if stepped.dial == "unknown" else f"dial, on {stepped.dial}"
    rows = [("cut", "stop from the edge", counts, "ridge left outside it")]
    for k in range(len(made.stops)):
        reading = float(made.divisions[k]) * stepped.division
        rows.append(
            (
                str(k + 1),
                show.length(float(made.stops[k])),
                show.turned(reading),
                show.small(float(made.ridges[k])),
            )
        )
    yield from aligned(rows)


def aligned(rows: Sequence[tuple[str, ...]]) -> Iterator[str]:
    """Rows of cells in columns.

    >>> list(aligned([("a", "bb"), ("ccc", "d")]))
    ['  a    bb', '  ccc  d']
    """
    widths = [max(len(row[k]) for row in rows) for k in range(len(rows[0]))]
    for row in rows:
        cells = (cell.ljust(width) for cell, width in zip(row, widths, strict=True))
        yield f"  {'  '.join(cells)}".rstrip()
