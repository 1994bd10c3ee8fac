"""The whole picture of the pressed joint: words, section, chart, table, notes and cautions."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from borewright.answer.pressed import PressedPicture, PressedShape
from borewright.answer.records import Verdict
from borewright.drawing.band_numbers import STEP, Ground, number_items
from borewright.drawing.band_table import table_height, table_items
from borewright.drawing.dimension import without_other_unit
from borewright.drawing.measure import text_box, wrapped
from borewright.drawing.pressed_chart import HEIGHT, ChartFrame, chart_items
from borewright.drawing.pressed_frame import STUB, WIDTH, PressedFrame, frame_for
from borewright.drawing.pressed_section import DOT, face_items, section_items
from borewright.drawing.scene import Area, Circle, Item, LineKind, Scene, Text
from borewright.quantities.show import Show
from borewright.quantities.units import unit

SIZE, LINE = 3.3, 4.3
SMALL, SMALL_LINE = 3.1, 4.0
TITLE = 4.4
MARGIN = 3.5
"""White round the whole, mm."""

APART = 1.0
"""Between two paragraphs, mm."""


def draw_pressed(picture: PressedPicture, shape: PressedShape) -> Scene:
    """The picture, WIDTH mm wide; the scene's data carry its scales so that it can be measured."""
    show = Show("mm" if picture.units == "mm" else "inch")
    symbol = "MPa" if picture.units == "mm" else "psi"
    size = float(unit("pressure", symbol).factor)
    words = _head(picture, show)
    top = words[-1].y + 6.0
    frame = frame_for(picture, shape, top)
    section = section_items(frame, picture, shape)
    letters = face_items(frame, picture, shape)
    base = frame.bore_line + frame.depth + 9.0 + HEIGHT
    chart = ChartFrame(frame, picture, base)
    table = base + 9.5
    foot = table + table_height(picture) + 4.5
    notes = _foot(picture, frame, show, foot)
    items: tuple[Item, ...] = (
        *words,
        *section,
        *_numbers(frame, section, letters, picture, top),
        *letters,
        *chart_items(chart, picture, show, size, symbol),
        *table_items(picture, 0.5, table, size, symbol),
        *_largest(picture, show, table),
        *notes,
    )
    inner = Scene(WIDTH, notes[-1].y + 1.5, items)
    return Scene(
        WIDTH + 2 * MARGIN,
        inner.height + 2 * MARGIN,
        inner.moved(MARGIN, MARGIN),
        f"Pressed joint: {picture.title}",
        said_of(picture),
        _data(frame, chart),
    )


def said_of(picture: PressedPicture) -> str:
    """One sentence: what is shown, and where the highest tension is."""
    show = Show("mm" if picture.units == "mm" else "inch")
    share = f"{100 * picture.largest.share:.2g} % of the metal's {picture.strength_kind} strength"
    return (
        "Pressure along the bore and tension in the section of the work pressed on "
        f"{picture.mandrel}, {show.rule(picture.travel)} past touch: the highest tension, "
        f"{show.pressure(picture.largest.tension)}, {share}, is {_where(picture, show)}."
    )


def _where(
    picture: PressedPicture, show: Show, brief: Callable[[str], str] = lambda words: words
) -> str:
    """The place of the largest tension in words."""
    place, leading = picture.largest, picture.leading_face
    off = place.r - picture.bore / 2
    at = (
        "at the bore"
        if off < 1e-3 * picture.bore
        else f"{brief(show.length(off))} outside the bore"
    )
    if place.z <= picture.work_length / 2:
        return f"{at}, {brief(show.length(place.z))} from face {leading}"
    other = "B" if leading == "A" else "A"
    return f"{at}, {brief(show.length(picture.work_length - place.z))} from face {other}"


def _head(picture: PressedPicture, show: Show) -> tuple[Text, ...]:
    bore, length = show.bore(picture.bore), show.length(picture.work_length)
    material = picture.material[:1].upper() + picture.material[1:]
    facts = f"{material}; bore {bore}, work {length} long, taper {show.taper(picture.taper)}."
    lines = [(f"Pressed joint: {picture.title}", TITLE, True)]
    no = picture.verdict is Verdict.NO
    lines += [(picture.headline, SIZE, True)] if no else []
    lines += [(_answer(picture, show), SIZE, False), (facts, SIZE, False)]
    return _set(lines, TITLE)


def _answer(picture: PressedPicture, show: Show) -> str:
    """How it is held, after what the plan says of it."""
    if picture.verdict is Verdict.YES:
        return picture.headline
    said = {
        Verdict.CARE: "With care, read the plan first: pressed on",
        Verdict.NO: "Drawn as if pressed on",
    }
    return (
        f"{said[picture.verdict]} {picture.mandrel}, face {picture.leading_face} towards the "
        f"large end, {show.rule(picture.travel)} past touch."
    )


def _set(lines: list[tuple[str, float, bool]], top: float) -> tuple[Text, ...]:
    """Paragraphs of one width, one under the other; `top` is the first base line."""
    found: list[Text] = []
    y = top
    for words, size, bold in lines:
        # Bold letters are a little wider than the plain ones that `wrapped` measures.
        for line in wrapped(words, size * (1.06 if bold else 1.0), WIDTH - 0.5):
            found.append(Text(0.0, y, line, size, bold=bold, mask=False))
            y += size * 1.28
        y += APART
    return tuple(found)


def _numbers(
    frame: PressedFrame,
    section: tuple[Item, ...],
    letters: tuple[Text, ...],
    picture: PressedPicture,
    top: float,
) -> tuple[Item, ...]:
    tints = [item for item in section if isinstance(item, Area)]
    foot = frame.bore_line + frame.depth
    ground = Ground(0.0, top - 5.5, int((foot - top + 5.5) / STEP), int(WIDTH / STEP))
    spot = frame.at((picture.largest.z, picture.largest.r))
    taken = ground.near(spot, DOT + 0.6)
    under = ground.top + STEP * np.arange(ground.rows) > frame.bore_line - 3.0
    x = STEP * np.arange(ground.columns)
    right = max(px for area in tints for ring in area.contours for px, _ in ring)
    taken |= (
        under[:, None]
        & ((x > frame.left - STUB - 2) & (x < right + STUB + 2))[None, :]
        & (~ground.mask(tints[0].contours))
    )
    lettered = np.zeros_like(taken)
    for letter in letters:
        box = text_box(letter)
        lettered |= ground.near(((box.left + box.right) / 2, (box.top + box.bottom) / 2), 1.9)
    middle = (frame.left + right) / 2
    return number_items(tints, ground, taken | lettered, lettered, middle)


def _largest(picture: PressedPicture, show: Show, top: float) -> tuple[Item, ...]:
    """What stands beside the table: the spot, its value and its place."""
    left, width = 66.0, WIDTH - 66.0
    words = (
        f"Largest: {show.pressure(picture.largest.tension)}, "
        f"{100 * picture.largest.share:.2g} % of the {picture.strength_kind} strength of "
        f"{show.pressure(picture.strength)}, {_where(picture, show, without_other_unit)}."
    )
    lines = wrapped(words, SIZE, width - 4.0)
    y = top + 4.5
    texts = (Text(left + 4, y + LINE * k, line, SIZE, mask=False) for k, line in enumerate(lines))
    return (Circle(left + 1.2, y - 1.1, DOT, LineKind.THIN, "black"), *texts)


def _foot(picture: PressedPicture, frame: PressedFrame, show: Show, top: float) -> tuple[Text, ...]:
    shown = (
        f"Section at {frame.scale.words.removeprefix('scale ')}, the mandrel's large end at the "
        f"left, its taper and gap drawn {frame.times:,.0f} times too large. "
        + _push_words(picture, show)
    )
    lines = [(words, SMALL, False) for words in (shown, *picture.notes)]
    lines += [(caution.text, SMALL, True) for caution in picture.cautions]
    return _set(lines, top)


def _push_words(picture: PressedPicture, show: Show) -> str:
    """The push to stop at, which the caution for brittle work speaks of."""
    if picture.verdict is Verdict.NO:
        return "The plan says no: do not press it like this."
    return f"Stop the press at {without_other_unit(show.force(picture.stop_push))}."


def _data(frame: PressedFrame, chart: ChartFrame) -> tuple[tuple[str, str], ...]:
    numbers = {
        "scale": frame.scale.ratio,
        "left": frame.left + MARGIN,
        "start-mm": 1000 * frame.start,
        "bore-line": frame.bore_line + MARGIN,
        "chart-base": chart.base + MARGIN,
        "chart-mm-per-mpa": 1e6 * chart.per_pascal,
    }
    return tuple((name, f"{value:.9g}") for name, value in numbers.items())
