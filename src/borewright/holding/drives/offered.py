"""Which positive drives a way of holding can take, and each of them for a job."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np

from borewright.answer.held import Drive, Held, Joint
from borewright.holding.drives.flat_screw import flat_screw
from borewright.holding.drives.second_dog import second_dog
from borewright.holding.drives.stud import stud
from borewright.holding.part import Part
from borewright.job.records import Job
from borewright.reference.library import Tables

DRIVES: dict[str, Callable[[Part, str], Drive]] = {
    "second-dog": second_dog,
    "stud": stud,
    "flat-screw": flat_screw,
}
"""Every positive drive, by id."""

TAKEN_BY: dict[str, tuple[str, ...]] = {
    "plain-taper": ("second-dog", "stud"),
    "turned-stub": ("second-dog", "flat-screw"),
    "soft-mandrel": ("second-dog", "stud", "flat-screw"),
    "nut-mandrel": ("second-dog", "stud"),
    "expanding": ("second-dog", "stud"),
    "collet-stub": ("second-dog", "flat-screw"),
    "cone-centers": ("second-dog", "stud"),
}
"""Ways that find the work by its bore and leave its hub or web free for a drive."""


def drives_for(way: str, job: Job, tables: Tables, leading: str) -> tuple[Drive, ...]:
    """The drives that can be had on this way, this face towards the headstock."""
    part = Part(job, tables)
    offered = (DRIVES[name](part, leading) for name in TAKEN_BY.get(way, ()))
    return tuple(drive for drive in offered if not drive.cannot)


def driven(held: Held, drive: Drive) -> Held:
    """The same hold with a positive drive that takes the torque; thrust stays with the friction."""
    if held.grip is None or drive.torque is None:
        return held
    torque = np.maximum(held.grip.torque, drive.torque)
    grip = replace(held.grip, torque=torque, joint=Joint.APART)
    first, *rest = held.mount
    steps = (first, *rest, drive.mount) if drive.mount else held.mount
    picture = held.picture
    if picture is not None and drive.mark is not None:
        picture = replace(picture, marks=(*picture.marks, drive.mark))
    return replace(
        held,
        tool=f"{held.tool}, {drive.tool}",
        do_it=f"{held.do_it}, with {drive.tool}",
        grip=grip,
        needs=(*held.needs, *drive.needs),
        marks=f"{held.marks} {drive.marks}".strip(),
        mount=steps,
        caution_tags=(*held.caution_tags, *drive.caution_tags),
        picture=picture,
        more_grip="a lighter cut still",
        sources=tuple(sorted({*held.sources, *drive.sources})),
    )
