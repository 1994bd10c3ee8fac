"""The whole drawing of a plan: side view at the left, end view and inset at the right."""

from __future__ import annotations

from borewright.answer.picture import Layout
from borewright.answer.plan import Plan
from borewright.answer.records import ProofLoad, Verdict
from borewright.drawing.dimension import SIZE, without_other_unit
from borewright.drawing.end_view import end_view, proof_words
from borewright.drawing.frame import Scale, centers_length, largest_scale
from borewright.drawing.held_sheet import held_sheet
from borewright.drawing.inset import inset
from borewright.drawing.measure import wrapped
from borewright.drawing.outline import outside
from borewright.drawing.scene import Scene, Text
from borewright.drawing.side_labels import LINE
from borewright.drawing.side_view import side_view
from borewright.quantities.show import Show

WIDTH = 186.0
"""Width of the drawing, mm: what Letter and A4 both leave between margins."""
_TALLEST = 40.0
"""Room for the largest diameter on paper, mm, so that the sheet keeps room for words."""
_SIDE_LEAST, _SIDE_MOST = 106.0, 122.0
_GAP = 3.0


def draw_plan(plan: Plan) -> Scene:
    """The drawing of a plan, 186 mm wide, in the plan's units; words only when nothing is laid out
    or the work may not be pressed on. The squeeze is drawn only where it may be pressed.

    Both views stand at one scale, which is written beside them and is in the scene's data.
    """
    if plan.goes_on and plan.layout is None and plan.held is not None:
        return held_sheet(plan, plan.held, WIDTH)
    if plan.layout is None or not plan.goes_on:
        return _words_only(plan)
    show, layout = Show("mm" if plan.units == "mm" else "inch"), plan.layout
    scale = _scale(layout)
    right_width = _right_width(layout, scale)
    side = side_view(layout, show, scale, WIDTH - right_width - _GAP)
    end = end_view(layout, plan.proof, show, scale, right_width)
    detail = _detail(plan, layout, show, right_width)
    x = WIDTH - right_width
    notes = _notes(layout, plan.proof, show, side.height + LINE, side.width)
    items = (*side.items, *notes, *end.moved(x, 0.0), *detail.moved(x, end.height + _GAP))
    left_height = side.height + LINE * len(notes) + 1.5
    height = max(left_height, end.height + _GAP + detail.height)
    return Scene(WIDTH, height, items, _title(plan), _description(plan, show), side.data)


def _detail(plan: Plan, layout: Layout, show: Show, width: float) -> Scene:
    return Scene(width, 0.0, ()) if plan.verdict is Verdict.NO else inset(layout, show, width)


def _notes(
    layout: Layout, proof: ProofLoad | None, show: Show, top: float, width: float
) -> tuple[Text, ...]:
    """The sentences under the side view: the taper that cannot be seen, and the proof load."""
    taper = (layout.large_end - layout.small_end) / layout.ground_length
    slope = without_other_unit(show.taper(taper))
    large, small = show.bore(layout.large_end), show.bore(layout.small_end)
    notes = [
        "Positions are read by rule from the mandrel's large-end face.",
        f"Large end, at the left, {large}; small end {small}.",
        f"Bore {show.bore(layout.bore)}. The taper, {slope}, is too small to see.",
    ]
    notes += [proof_words(proof, show)] if proof else []
    lines = [line for note in notes for line in wrapped(note, SIZE, width)]
    return tuple(Text(0.0, top + LINE * k, line, SIZE) for k, line in enumerate(lines))


def _scale(layout: Layout) -> Scale:
    """The largest scale at which both views find room side by side."""

    def fits(scale: Scale) -> bool:
        side_room = WIDTH - _right_width(layout, scale) - _GAP - 2.0
        side = 1000 * centers_length(layout) * scale.ratio
        return side <= side_room and 1000 * outside(layout) * scale.ratio <= _TALLEST

    return largest_scale(fits)


def _right_width(layout: Layout, scale: Scale) -> float:
    wanted = 1000 * outside(layout) * scale.ratio + 20.0
    return min(max(wanted, WIDTH - _GAP - _SIDE_MOST), WIDTH - _GAP - _SIDE_LEAST)


def _title(plan: Plan) -> str:
    return f"Workshop drawing: {plan.title}"


def _description(plan: Plan, show: Show) -> str:
    layout = plan.layout
    if layout is None:
        return plan.headline
    held = "between centers"
    if layout.driven_by != "dog":
        held = f"between {layout.driven_by} and tailstock center"
    return (
        f"{plan.headline} The work, {show.length(outside(layout))} outside and "
        f"{show.length(layout.work_length)} long, sits on {layout.mandrel_name} {held}, "
        f"headstock at the left."
    )


def _words_only(plan: Plan) -> Scene:
    way = plan.chosen.way if plan.chosen else "nothing chosen"
    nothing = plan.layout is None and plan.held is None
    what = "No mandrel to draw" if nothing else "Not drawn pressed on"
    if plan.layout is None and plan.held is not None:
        what = "Not drawn held"
    words = f"{what} ({way}). {plan.headline}"
    lines = wrapped(words, SIZE, WIDTH)
    texts = tuple(Text(0.0, 4.0 + 4.6 * k, line, SIZE) for k, line in enumerate(lines))
    return Scene(WIDTH, 6.0 + 4.6 * len(lines), texts, _title(plan), plan.headline)
