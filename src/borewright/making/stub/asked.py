"""What is asked of a stub. The rooms are how wide shoulder and washer may be, from the work."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from borewright.quantities.si import Metre

Plug = Literal["taper", "cone"]


@dataclass(frozen=True, slots=True)
class StubAsked:
    """The bore (m) with half its band, or the band that every piece of a batch lies in.

    `bore`: the smallest size read, or the smallest of the band; `bore_high`: the largest that a
    piece may have. `batch`: these two are limits; else one bore is known to ± `half_band`.
    `face_inside`: where the faces begin, the bore or its chamfer. `plug`: slit and opened by it.
    `wall`: the thinner of the rings round the bore at the two faces (m), None where nobody said it.
    """

    bore: Metre
    bore_high: Metre
    half_band: Metre
    batch: bool
    length: Metre
    shoulder_room: Metre
    washer_room: Metre
    face_inside: Metre
    material: str
    units: Literal["inch", "mm"]
    plug: Plug | None = None
    wall: Metre | None = None
