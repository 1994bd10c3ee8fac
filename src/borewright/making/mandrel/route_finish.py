"""The last steps: the taper ground on a grinder, or turned with the tailstock set over and filed."""

from __future__ import annotations

from borewright.answer.made_mandrel import MadeMandrel
from borewright.answer.papers import RouteStep
from borewright.making.mandrel.words import planes_words, runout_words
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


def last_steps(made: MadeMandrel, show: Show, tables: Tables) -> tuple[RouteStep, ...]:
    """From the roughed blank to the finished mandrel."""
    steps = _ground(made, show, tables) if made.grinder else _turned(made, show, tables)
    return (*steps, _edges(), _accept(made, show))


def _ground(made: MadeMandrel, show: Show, tables: Tables) -> tuple[RouteStep, ...]:
    s = made.settings
    last = tables.making_fact("grind_last").best
    return (
        RouteStep(
            "Set the grinder's table",
            (
                f"Both centers dead: what turns in the headstock would be copied. Swing the table by "
                f"{show.angle(s.table_angle)}, half of the taper's own angle. No scale shows it: run an "
                f"indicator along the table's edge, {show.length(s.base)} must read "
                f"{show.small(s.rise)}, a longer base more.",
                "Large end at the headstock: the table swings so that the wheel takes more off at the "
                "tailstock. The sum only brings it near; the two planes decide.",
            ),
            ("indicator over its base",),
        ),
        RouteStep(
            "Grind to the last cut, measure, put right",
            (
                *(
                    (
                        "Once the skin is off, a fine file at the very end of the taper must skate there too: where it "
                        "bites the skin is soft, and more has to come off.",
                    )
                    if made.stock.steel.hard
                    else ()
                ),
                f"Clean up the whole length, leave {show.depth(last)}, spark out. Let it cool, then "
                f"measure at A and B: A must be {differ_words(made, show)}.",
                *_correction(made, show, "swing the table", 1.0),
            ),
            ("A", "B", "difference"),
        ),
        RouteStep(
            "Finish",
            (
                f"Grind to {planes_words(made)}; spark out, coolant running, measure cold. "
                "Bring B to its limits first: it is the smaller, and nothing is put back.",
            ),
            ("A", "B"),
        ),
    )


def _turned(made: MadeMandrel, show: Show, tables: Tables) -> tuple[RouteStep, ...]:
    s = made.settings
    stock = tables.making_fact("file_stock").best
    apart = show.length(made.form.apart)
    return (
        RouteStep(
            "Prove the lathe parallel",
            (
                f"Between dead centers, one light cut over both bands at one setting, {apart} apart, at "
                "A and B. Move the tailstock until they are alike: only from there does the set-over "
                "count. `borewright parallel` says how far, from the two readings.",
            ),
            ("band at A", "band at B"),
        ),
        RouteStep(
            "Set the tailstock over",
            (
                f"By {show.small(s.set_over)}: taper times the whole length between centers, "
                f"{show.length(s.between)}, over two. The whole length counts, not that of the taper; "
                "a mandrel of another length needs another set-over.",
                "Towards the tool, so that the tailstock end becomes the small one and the large end "
                "stays at the headstock.",
                "It cannot be dialled: indicator on the tailstock barrel near its end, level with the "
                "centers, plunger square to the bed. Zero it, slacken the clamp, bring the needle over "
                "from one side only, clamp, and read it again, because clamping moves it.",
                "A little grease in the tailstock's center hole and an easy center: it is cocked by "
                "the set-over and must not bind.",
            ),
            ("indicator after clamping",),
        ),
        RouteStep(
            "Two bands decide",
            (
                f"A light cut over the whole length, then measure at A and B, {apart} apart: A must be "
                f"{differ_words(made, show)}.",
                *_correction(made, show, "move the tailstock", s.between / made.form.apart),
            ),
            ("A", "B", "difference"),
        ),
        RouteStep(
            "Finish cuts, file, emery",
            (
                f"Sharp tool, fine feed, spring passes, to {show.small(stock)} over the limits; then a "
                "fine file over the whole length, as many strokes in one place as in another, and fine "
                "emery on the back of the file with oil.",
                f"Finish to {planes_words(made)}. A file that stays longer in one place makes a "
                "hollow that no reading at A and B shows: look along it with a straight edge.",
            ),
            ("A", "B"),
        ),
        RouteStep(
            "Put the tailstock back",
            ("Back to parallel, proved with two bands again, before anybody else turns on it.",),
        ),
    )


def _correction(made: MadeMandrel, show: Show, what: str, lever: float) -> tuple[str, ...]:
    """By how much the setting is put right for a difference that is out by a step."""
    step: Metre = 0.0254e-4 if made.units == "inch" else 5e-6
    said = step_words(step, made.units)
    if what == "swing the table":
        base = made.settings.base
        moved = step / 2 * base / made.form.apart
        how = f"at the indicator over {show.length(base)}"
    else:
        moved = step / 2 * lever
        how = "at the tailstock barrel"
    return (
        f"For each {said} that the difference is short, {what} {step_words(moved, made.units)} "
        f"further ({how}); for each that it is over, as much back.",
    )


def step_words(size: Metre, units: str) -> str:
    """A small step, to what an indicator is read by eye between its lines.

    >>> step_words(3.7e-6, "inch"), step_words(3.4e-6, "mm")
    ('0.00015 in (3.7 µm)', '3.4 µm (0.00013 in)')
    """
    inch, metric = f"{size / 0.0254:.5f} in", f"{1e6 * size:.1f} µm"
    return f"{inch} ({metric})" if units == "inch" else f"{metric} ({inch})"


def differ_words(made: MadeMandrel, show: Show) -> str:
    """What A must be larger than B by: the aim, and what the limits of both allow."""
    aim, most = made.settings.planes_differ, made.form.tolerance
    return f"{show.small(aim)} larger than B, {show.band(aim - most, aim + most, 'small')} by the limits"


def _edges() -> RouteStep:
    return RouteStep(
        "Edges and oil",
        (
            "Break the edges of the taper with a fine stone, no more: a burr scores the first bore, a "
            "chamfer takes length. Wipe it with oil, caps over the centers.",
        ),
    )


def _accept(made: MadeMandrel, show: Show) -> RouteStep:
    return RouteStep(
        "Measure and accept",
        (
            f"By the acceptance sheet, at room temperature: diameters at its stations, "
            f"{runout_words(made, show)} on its own centers.",
        ),
        ("accepted", "date"),
    )
