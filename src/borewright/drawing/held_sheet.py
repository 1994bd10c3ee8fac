"""The whole drawing of work held in any way but the plain taper: side view left, end view right."""

from __future__ import annotations

from math import isfinite

from borewright.answer.held_picture import HeldPicture
from borewright.answer.plan import Plan
from borewright.drawing.dimension import SIZE
from borewright.drawing.end_view import proof_words
from borewright.drawing.frame import Scale, largest_scale
from borewright.drawing.held_end import held_end
from borewright.drawing.held_frame import largest_radius, work_ends, work_outside
from borewright.drawing.held_labels import LINE
from borewright.drawing.held_shape import finished, settled
from borewright.drawing.held_view import held_view, side_room
from borewright.drawing.measure import wrapped
from borewright.drawing.scene import Scene, Text
from borewright.quantities.show import Show

_TALLEST = 42.0
"""Room for the largest diameter on paper, mm, so that the sheet keeps room for words."""
_SIDE_LEAST, _SIDE_MOST = 106.0, 122.0
_GAP = 3.0


def held_sheet(plan: Plan, picture: HeldPicture, width: float) -> Scene:
    """Both views at one scale, which is written beside them and is in the scene's data."""
    show, picture = Show("mm" if plan.units == "mm" else "inch"), settled(picture)
    scale = _scale(picture, width)
    right = _right_width(picture, scale, width)
    leading = plan.chosen.leading_face if plan.chosen else ""
    side = held_view(picture, leading, show, scale, width - right - _GAP)
    end = held_end(picture, _slip_radii(plan), plan.proof, show, scale, right)
    notes = _notes(plan, picture, show, side.height + LINE, side.width)
    left_height = side.height + LINE * len(notes) + 1.5
    return Scene(
        width,
        max(left_height, end.height),
        (*side.items, *notes, *end.moved(width - right, 0.0)),
        f"Workshop drawing: {plan.title}",
        _description(plan, picture, show),
        side.data,
    )


def _scale(picture: HeldPicture, width: float) -> Scale:
    """The largest scale at which both views find room side by side."""
    across = 2000 * largest_radius(picture)

    def fits(scale: Scale) -> bool:
        side = width - _right_width(picture, scale, width) - _GAP
        return side_room(picture, scale) <= side and across * scale.ratio <= _TALLEST

    return largest_scale(fits)


def _right_width(picture: HeldPicture, scale: Scale, width: float) -> float:
    wanted = 2000 * largest_radius(picture) * scale.ratio + 18.0
    return min(max(wanted, width - _GAP - _SIDE_MOST), width - _GAP - _SIDE_LEAST)


def _slip_radii(plan: Plan) -> tuple[float | None, float | None]:
    """Radius at which the hardest cut lets go: likely and poor, None where it does not."""
    figures = (f for q in plan.questions if q.id == "slip" for f in q.figures)
    found = next((f for f in figures if f.name == "slip_radius"), None)
    if found is None:
        return None, None
    likely, poor = (r if r is not None and isfinite(r) else None for r in (found.best, found.low))
    return likely, poor


def _notes(
    plan: Plan, picture: HeldPicture, show: Show, top: float, width: float
) -> tuple[Text, ...]:
    """The sentences under the side view."""
    bore = 2 * min(g.inner for g in finished(picture))
    notes = [f"Bore {show.bore(bore)}."] if bore else []
    drawn = {ring.role for ring in picture.rings} | {mark.role for mark in picture.marks}
    notes += [f"{_sentence(n.words)}." for n in picture.notes if n.role not in drawn]
    notes += [proof_words(plan.proof, show)] if plan.proof else []
    lines = [line for note in notes for line in wrapped(note, SIZE, width)]
    return tuple(Text(0.0, top + LINE * k, line, SIZE) for k, line in enumerate(lines))


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:].rstrip(".")


def _description(plan: Plan, picture: HeldPicture, show: Show) -> str:
    first, last = work_ends(picture)
    tool = plan.chosen.tool if plan.chosen else "the hold"
    far = ", its far end on the tailstock's center" if picture.tailstock else ""
    return (
        f"{plan.headline} The work, {show.length(2 * work_outside(picture))} outside and "
        f"{show.length(last - first)} long, held by: {tool}{far}; headstock at the left."
    )
