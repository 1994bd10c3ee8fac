"""How the cuts of a plan are taken: order, time, what limits each, how warm the work gets.

A `Cut` says what is set on the lathe. A `Taken` says what that comes to, in the order of the hand.
"""

from __future__ import annotations

from dataclasses import dataclass

from borewright.quantities.si import Kelvin, Metre, Second


@dataclass(frozen=True, slots=True)
class Taken:
    """One cut as it is taken. `cut` is its id; `seconds` are of all its passes, no setting.

    `limit` is the id of what keeps it from being faster (`slip`, `rock`, `bend`, `chatter`,
    `power`, `least_chip`, `tool`: what it usually bears, `finish`, `heat`, `lathe`: what is usual,
    `kept`: the other answers), "" where it was asked for; `said` is that in a sentence. `wait`:
    seconds to stand before it. `warm_before` and `warm_after`: likely warmth of the work over the
    mandrel. `grip_left`: share of the cold grip at its end, likely and in the poor case. `stops`:
    where it ends short of what holds the work.
    """

    cut: str
    seconds: Second
    limit: str
    said: str
    wait: Second = 0.0
    warm_before: Kelvin = 0.0
    warm_after: Kelvin = 0.0
    grip_left: tuple[float, float] = (1.0, 1.0)
    stops: str = ""


@dataclass(frozen=True, slots=True)
class Blocked:
    """A cut that nothing the lathe can be set to takes within all limits.

    `limit` is the one that blocks, `way_out` the cheapest mend, in a sentence.
    """

    cut: str
    limit: str
    way_out: str


@dataclass(frozen=True, slots=True)
class Curve:
    """One line of a chart: places `x` (n,) and values `y` (n,), SI. `dashed`: the poor case.

    `thin`: what is asked, or a limit, drawn lightly beside what is given.
    """

    label: str
    x: tuple[float, ...]
    y: tuple[float, ...]
    dashed: bool = False
    thin: bool = False


@dataclass(frozen=True, slots=True)
class Mark:
    """A place on the x axis with a word: a line across the chart. `band`: its other end, if any."""

    label: str
    x: float
    band: float | None = None


@dataclass(frozen=True, slots=True)
class LineChart:
    """A chart: `x_kind`, `y_kind` and `second_kind` name kinds of quantities.show.

    `second`: lines that are read on a scale of their own, at the right.
    """

    id: str
    title: str
    x_name: str
    x_kind: str
    y_name: str
    y_kind: str
    lines: tuple[Curve, ...]
    marks: tuple[Mark, ...] = ()
    second_name: str = ""
    second_kind: str = ""
    second: tuple[Curve, ...] = ()


@dataclass(frozen=True, slots=True)
class Schedule:
    """All cuts in the order a hand takes them, the whole time, and what is read while cutting.

    `seconds`: cutting and waiting, no setting. `target`: the size to read warm on the work for the
    finished size cold, with the warmth it is for; None where nothing is measured.
    """

    taken: tuple[Taken, ...]
    seconds: Second
    blocked: tuple[Blocked, ...] = ()
    target: tuple[Metre, Kelvin] | None = None
    charts: tuple[LineChart, ...] = ()
    notes: tuple[str, ...] = ()
