"""One limit that a setting is held against."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from borewright.planning.passes.setting import Setting
from borewright.quantities.si import Ratio


@dataclass(frozen=True, slots=True)
class Limit:
    """`share` of a setting is at least 1 within the limit. `by_load`: a deeper first pass or a
    coarser feed never raises it, and the speed does not count."""

    id: str
    share: Callable[[Setting], Ratio]
    by_load: bool = False
