"""The shape of a work or a mandrel: from memory, from a file, else built.

A shape and the same shape turned end for end, or standing elsewhere along z, are one: it is built
once, the way whose name comes first, and turned and moved to where it is asked for.
"""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable
from typing import Any, Final, TypeVar

from borewright.mechanics.compliance import Compliance, moved, of_the_bore_line, turned_round
from borewright.mechanics.endless_bar import endless_bar
from borewright.mechanics.num import Floats
from borewright.mechanics.revolved import Revolved, rounded, shifted, turned
from borewright.mechanics.tilt_shape import TiltShape, tilt_moved, tilt_turned_round
from borewright.quantities.si import Ratio
from borewright.shapes.key import DIGITS, ends, mandrel_key, tilt_key, work_key
from borewright.shapes.store import keep, kept

MOST_IN_MEMORY: Final = 32

ENDLESS_BAR: Final = 2.0
"""How far (over d) a bored mandrel that counts as endless is built to stand out; a solid one is
without end in truth."""

Shape = TypeVar("Shape")

_memory: OrderedDict[str, Any] = OrderedDict()


def work_shape(body: Revolved, poisson: Ratio) -> Compliance:
    """The work's compliance. OutsideModel where it is too large to build."""
    chosen, is_ahead = _one_way(body, poisson)

    def build() -> Compliance:
        from borewright.mechanics.elastic_body import work_compliance  # heavy

        return work_compliance(chosen, poisson)

    found = _found(work_key(chosen, poisson), Compliance, build)
    return moved(found, body.z[0]) if is_ahead else moved(turned_round(found), body.z[-1])


def tilt_shape(body: Revolved, poisson: Ratio) -> TiltShape:
    """What tilts the work's bore line, on the strips of `work_shape`. OutsideModel as there."""
    chosen, is_ahead = _one_way(body, poisson)

    def build() -> TiltShape:
        from borewright.mechanics.tilt_body import work_tilt  # heavy

        return work_tilt(chosen, poisson)

    found = _found(tilt_key(chosen, poisson), TiltShape, build)
    if is_ahead:
        return tilt_moved(found, body.z[0])
    return tilt_moved(tilt_turned_round(found), body.z[-1])


def mandrel_shape(
    strips: Floats, poisson: Ratio, stands_out: tuple[Ratio, Ratio], hole: Ratio = 0.0
) -> Compliance:
    """The mandrel's under these strips; `stands_out`: of either face (over d), before rounding."""
    out = ends(stands_out, ENDLESS_BAR)
    start, end = float(strips[0, 0]), float(strips[-1, 1])
    ahead, back = strips - start, end - strips[::-1, ::-1]
    names = (
        mandrel_key(ahead, poisson, hole, out),
        mandrel_key(back, poisson, hole, (out[1], out[0])),
    )
    is_ahead = names[0] <= names[1]

    seen = (ahead, out) if is_ahead else (back, (out[1], out[0]))
    is_endless = hole == 0 and min(out) >= ENDLESS_BAR

    def build() -> Compliance:
        if is_endless:
            return of_the_bore_line(seen[0], endless_bar(seen[0], poisson))
        from borewright.mechanics.elastic_body import mandrel_compliance  # heavy

        return mandrel_compliance(seen[0], poisson, hole, seen[1])

    # An endless bar is computed sooner than a file of it is read.
    found = _found(min(names), Compliance, build, in_a_file=not is_endless)
    return moved(found, start) if is_ahead else moved(turned_round(found), end)


def forget() -> None:
    """Empty the memory, so that the next answer comes from a file or is built."""
    _memory.clear()


def _one_way(body: Revolved, poisson: Ratio) -> tuple[Revolved, bool]:
    """The body that is built: from z = 0, ahead or turned end for end, without last digits."""
    ahead, back = shifted(body, -body.z[0]), shifted(turned(body), body.z[-1])
    is_ahead = work_key(ahead, poisson) <= work_key(back, poisson)
    return rounded(ahead if is_ahead else back, DIGITS), is_ahead


def _found(
    key: str, kind: type[Shape], build: Callable[[], Shape], *, in_a_file: bool = True
) -> Shape:
    shape: Shape | None = _memory.get(key) or (kept(key, kind) if in_a_file else None)
    if shape is None:
        shape = build()
        if in_a_file:
            keep(key, shape)
    _memory[key] = shape
    _memory.move_to_end(key)
    while len(_memory) > MOST_IN_MEMORY:
        _memory.popitem(last=False)
    return shape
