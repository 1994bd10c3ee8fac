"""From the checked `crown` of `[work.finished]` to its record."""

from __future__ import annotations

from typing import TYPE_CHECKING

from borewright.errors.tree import RefusedInput
from borewright.job.crown_wish import CrownPlaces, CrownWish, check_crown, crowned_face
from borewright.job.typed import Reader, maybe

if TYPE_CHECKING:
    from borewright.job.records import Work
    from borewright.job.schema_crown import CrownTable

PLACE = "work.finished.crown"


def build_crown(stated: CrownTable | bool | str | None, reader: Reader) -> CrownWish | None:
    """The crown wanted; None where none is. RefusedInput where it is stated twice."""
    if stated is None or stated is False:
        return None
    if stated is True:
        return CrownWish()
    if isinstance(stated, str):
        return CrownWish(rule=stated.strip())
    if stated.height is not None and stated.rule.strip():
        raise RefusedInput(reader.at(PLACE), "both `height` and `rule`", "one of them")
    flat = maybe(lambda v, p: reader.length(v, p, zero=True), stated.flat, f"{PLACE}.flat")
    height = maybe(reader.length, stated.height, f"{PLACE}.height")
    return CrownWish(height, stated.rule.strip(), stated.shape, flat or 0.0)


def check_crown_of(work: Work, reader: Reader) -> None:
    """RefusedInput for a crown that the finished part has no room for."""
    wish = work.finished.form.crown
    if wish is None:
        return
    face = crowned_face(work)
    if face <= 0.0:
        found = "a crown on a part whose largest outside is all turned down"
        raise RefusedInput(reader.at(PLACE), found, "a face left at the finished outside")
    places = CrownPlaces(reader.at(f"{PLACE}.height"), reader.at(f"{PLACE}.flat"))
    outside = work.finished.outside or work.outside
    check_crown(wish, outside, face, reader.bare or "mm", places)
