"""The compliance of a work or a mandrel: from memory, from a file, else built."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable
from typing import Final

from borewright.mechanics.compliance import Compliance
from borewright.mechanics.num import Floats
from borewright.mechanics.revolved import Revolved
from borewright.quantities.si import Ratio
from borewright.shapes.key import ends, mandrel_key, work_key
from borewright.shapes.store import keep, kept

MOST_IN_MEMORY: Final = 32

ENDLESS_BAR: Final = 2.0
"""How far (over d) a bar that counts as endless is built to stand out."""

_memory: OrderedDict[str, Compliance] = OrderedDict()


def work_shape(body: Revolved, poisson: Ratio) -> Compliance:
    """The work's compliance. OutsideModel where it is too large to build."""

    def build() -> Compliance:
        from borewright.mechanics.elastic_body import work_compliance  # heavy

        return work_compliance(body, poisson)

    return _found(work_key(body, poisson), build)


def mandrel_shape(
    strips: Floats, poisson: Ratio, stands_out: tuple[Ratio, Ratio], hole: Ratio = 0.0
) -> Compliance:
    """The mandrel's under these strips; `stands_out`: of either face (over d), before rounding."""
    out = ends(stands_out, ENDLESS_BAR)

    def build() -> Compliance:
        from borewright.mechanics.elastic_body import mandrel_compliance  # heavy

        return mandrel_compliance(strips, poisson, hole, out)

    return _found(mandrel_key(strips, poisson, hole, out), build)


def forget() -> None:
    """Empty the memory, so that the next answer comes from a file or is built."""
    _memory.clear()


def _found(key: str, build: Callable[[], Compliance]) -> Compliance:
    shape = _memory.get(key) or kept(key)
    if shape is None:
        shape = build()
        keep(key, shape)
    _memory[key] = shape
    _memory.move_to_end(key)
    while len(_memory) > MOST_IN_MEMORY:
        _memory.popitem(last=False)
    return shape
