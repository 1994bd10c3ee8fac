"""Where the planned cut would let go: radius, line kind and words, likely and in the low case."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.picture import Layout
from borewright.drawing.outline import outside
from borewright.drawing.scene import LineKind


@dataclass(frozen=True, slots=True)
class Slip:
    """One slip circle; `on_work` is False when it is larger than the rim and cannot be drawn."""

    radius: float
    kind: LineKind
    case: str
    name: str
    on_work: bool


def slips(layout: Layout) -> tuple[Slip, ...]:
    """The slip circles that the layout knows, the likely one first."""
    return slips_within(layout.slip_radius, layout.slip_radius_low, outside(layout) / 2)


def slips_within(likely: float | None, low: float | None, rim: float) -> tuple[Slip, ...]:
    """The slip circles of these radii (m; None or 0: not known) on work of this rim radius.

    Where even the low case is beyond the rim, the likely one has nothing to add and is left out.
    """
    cases = (
        (likely, LineKind.LIMIT, "likely", "slip"),
        (low, LineKind.HIDDEN, "low case", "slip-low"),
    )
    found = tuple(Slip(r, kind, case, name, r < rim) for r, kind, case, name in cases if r)
    return found if any(slip.on_work for slip in found) else found[-1:]


def slip_words(slip: Slip, diameter: str) -> str:
    """What a slip circle means, said with its diameter."""
    return _WORDS[slip.case, slip.on_work].format(diameter)


_WORDS = {
    ("likely", True): "likely slips outside {} diameter",
    ("likely", False): "likely holds this cut out to {} diameter, beyond this rim",
    ("low case", True): "if the grip is poor, this cut slips anywhere outside the dashed circle, "
    "{} diameter",
    ("low case", False): "even a poor grip holds this cut out to {} diameter, beyond this rim",
}
