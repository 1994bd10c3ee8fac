"""Charts made by hand for tests of drawings and sheets: invented figures, right in shape only."""

from __future__ import annotations

from math import exp

from borewright.answer.schedule import Curve, LineChart, Mark


def grip() -> LineChart:
    r = tuple(0.010 + 0.035 * k / 30 for k in range(31))
    return LineChart(
        "grip-against-radius", "Grip against radius", "radius at the tool", "length", "force there",
        "force",
        (
            Curve("the hold gives, likely", r, tuple(14 / x for x in r)),
            Curve("in the poor case", r, tuple(9 / x for x in r), dashed=True),
            Curve("rough the outside asks", (0.010, 0.0315), (320.0, 320.0), thin=True),
            Curve("face asks", (0.010, 0.0315), (180.0, 180.0), thin=True),
        ),
        (Mark("rim", 0.0315), Mark("slips here, likely", 14 / 320), Mark("poor case", 9 / 320)),
    )  # fmt: skip


def warmth() -> LineChart:
    t = tuple(25.0 * k for k in range(61))
    peak = 20 * (1 - exp(-900 / 400))
    warm = tuple(20 * (1 - exp(-x / 400)) if x < 900 else peak * exp(-(x - 900) / 300) for x in t)
    return LineChart(
        "warmth-and-grip-against-time", "Temperature and grip against time", "time from the first cut",
        "time", "work over mandrel", "temperature difference",
        (
            Curve("work over mandrel, likely", t, warm),
            Curve("work over mandrel, poor case", t, tuple(1.4 * w for w in warm), dashed=True),
        ),
        (Mark("stop and wait", 900.0, 1300.0), Mark("finishing pass", 1320.0)),
        "grip left of the cold grip", "ratio",
        (
            Curve("grip left, likely", t, tuple(1 - 0.02 * w for w in warm)),
            Curve("grip left, poor case", t, tuple(1 - 0.03 * w for w in warm), dashed=True),
        ),
    )  # fmt: skip


def push() -> LineChart:
    travel = tuple(0.05 * k / 15 for k in range(16))
    x = tuple(0.1 - s for s in travel)
    f = tuple(4000 * (s / 0.04) ** 1.3 for s in travel)
    return LineChart(
        "push-against-position", "Push against position", "rule reading, large-end face to face A",
        "rule", "push", "force",
        (
            Curve("likely", x, f),
            Curve("1 in 20 above", x, tuple(1.5 * p for p in f), dashed=True),
            Curve("1 in 20 below", x, tuple(0.6 * p for p in f), dashed=True),
            Curve("stop at this push", (x[0], x[-1]), (5800.0, 5800.0), thin=True),
        ),
        (Mark("touch", 0.1), Mark("seat", 0.06), Mark("bore strained too far", 0.054, x[-1])),
    )  # fmt: skip


def three() -> tuple[LineChart, ...]:
    return grip(), warmth(), push()
