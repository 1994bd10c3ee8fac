"""A plug gauge as a workshop drawing: the end that does not go on the left, the other on the right."""

from __future__ import annotations

from borewright.answer.drawn_part import (
    Across,
    Along,
    CenterHole,
    DrawnPart,
    Flat,
    Limits,
    Pointed,
    Stretch,
)
from borewright.making.gauge.asked import GaugeAsked
from borewright.making.gauge.form import GaugeForm
from borewright.making.gauge.steps import PlugStep
from borewright.making.gauge.worth import Worth
from borewright.making.shop_sizes import general_tolerance
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

STEEL = "drill rod, or mild steel for one batch"


def go_not_go_drawn(asked: GaugeAsked, worth: Worth, form: GaugeForm) -> DrawnPart:
    """The plug with two ends."""
    a = form.not_go_long
    b = a + form.neck_long
    c = b + form.handle_long
    d = c + form.neck_long
    e = d + form.go_long
    end = e + form.pilot_long
    go, not_go = sum(worth.zones.go) / 2, sum(worth.zones.not_go) / 2
    mark = b + 2 * form.mark_wide
    return DrawnPart(
        title=f"Go and not-go plug{_name(asked)}",
        material=STEEL,
        stretches=(
            Stretch(0.0, form.lead, not_go - 2 * form.lead, not_go),
            Stretch(form.lead, a, not_go),
            Stretch(a, b, form.neck),
            *_handle(b, c, mark, form),
            Stretch(c, d, form.neck),
            Stretch(d, e, go),
            Stretch(e, end - form.lead, form.pilot),
            Stretch(end - form.lead, end, form.pilot, form.pilot - 2 * form.lead),
        ),
        centers=_centers(form),
        flats=(Flat(d, e, form.vent),) if form.vent else (),
        across=(
            Across((d + e) / 2, _limits(asked.low, worth.zones.go, "goes"), "right", "go"),
            Across(a / 2, _limits(asked.high, worth.zones.not_go, "does not go"), "left", "not-go"),
            Across((b + c) / 2, Limits(form.handle), "inside", "handle"),
        ),
        along=(
            Along(d, e, Limits(form.go_long), "go length"),
            Along(0.0, a, Limits(form.not_go_long), "not-go length"),
            Along(a, b, Limits(form.neck_long), "neck length"),
            Along(c, d, Limits(form.neck_long), "neck length"),
            Along(e, end, Limits(form.pilot_long), "pilot length"),
            Along(b, c, Limits(form.handle_long), "handle length"),
            Along(0.0, end, Limits(end), "whole"),
        ),
        pointed=(
            Pointed(mark + form.mark_wide / 2, form.handle / 2, "red ring", "mark"),
            Pointed((mark + form.mark_wide + c) / 2, form.handle / 2, "knurled", "knurl"),
        ),
        notes=_notes(asked, worth, form),
        treatment="left soft",
        general=general_tolerance(0.010, 0.2, asked.units),
    )


def stepped_drawn(
    asked: GaugeAsked, worth: Worth, form: GaugeForm, steps: tuple[PlugStep, ...]
) -> DrawnPart:
    """The stepped plug, the handle on the left, the smallest step at the right end."""
    c = form.handle_long
    places = _places(c + form.neck_long, form, len(steps))
    end = places[0][1] + form.pilot_long
    gaps = tuple(
        Stretch(after, before, form.neck)
        for (_, after), (before, _) in zip(places[:0:-1], places[-2::-1], strict=True)
    )
    rings = tuple(
        Stretch(start, stop, sum(step.zone) / 2)
        for step, (start, stop) in zip(steps, places, strict=True)
    )
    across = tuple(
        Across(
            (start + stop) / 2,
            _limits(step.nominal, step.zone, f"step {step.name}"),
            "inside",
            f"step {step.name}",
        )
        for step, (start, stop) in zip(steps, places, strict=True)
    )
    ordered = sorted((*gaps, *rings), key=lambda stretch: stretch.start)
    return DrawnPart(
        title=f"Stepped plug{_name(asked)}",
        material=STEEL,
        stretches=(
            Stretch(0.0, c, form.handle),
            Stretch(c, c + form.neck_long, form.neck),
            *ordered,
            Stretch(places[0][1], end - form.lead, form.pilot),
            Stretch(end - form.lead, end, form.pilot, form.pilot - 2 * form.lead),
        ),
        centers=_centers(form),
        flats=(Flat(places[-1][0], places[0][1], form.vent),) if form.vent else (),
        across=(*across, Across(c / 2, Limits(form.handle), "left", "handle")),
        along=(
            *(
                Along(*place, Limits(form.step_long), f"step {step.name} length")
                for step, place in zip(steps, places, strict=True)
            ),
            Along(c, c + form.neck_long, Limits(form.neck_long), "neck length"),
            Along(places[0][1], end, Limits(form.pilot_long), "pilot length"),
            Along(0.0, c, Limits(form.handle_long), "handle length"),
            Along(0.0, end, Limits(end), "whole"),
        ),
        pointed=(Pointed(c / 2, form.handle / 2, "knurled", "knurl"),),
        notes=(
            f"Grooves of {Show(asked.units).length(form.step_gap)} between the steps: each is {worth.finish} by itself.",
            *_notes(asked, worth, form)[1:],
        ),
        treatment="left soft",
        general=general_tolerance(0.010, 0.2, asked.units),
    )


def _places(start: Metre, form: GaugeForm, number: int) -> tuple[tuple[Metre, Metre], ...]:
    """From and to of each step, the smallest first, which stands furthest right."""
    pitch = form.step_long + form.step_gap
    back = [start + pitch * k for k in range(number)]
    return tuple((x, x + form.step_long) for x in reversed(back))


def _handle(b: Metre, c: Metre, mark: Metre, form: GaugeForm) -> tuple[Stretch, ...]:
    """The handle with the ring groove that marks the end that does not go."""
    return (
        Stretch(b, mark, form.handle),
        Stretch(mark, mark + form.mark_wide, form.handle - 2 * form.mark_deep),
        Stretch(mark + form.mark_wide, c, form.handle),
    )


def _limits(nominal: Metre, zone: tuple[Metre, Metre], after: str) -> Limits:
    return Limits(nominal, zone[0] - nominal, zone[1] - nominal, after=after, finest=True)


def _centers(form: GaugeForm) -> tuple[CenterHole, ...]:
    return (form.center.at("left"), form.center.at("right")) if form.center else ()


def _name(asked: GaugeAsked) -> str:
    return f" {asked.name}" if asked.name else ""


def _notes(asked: GaugeAsked, worth: Worth, form: GaugeForm) -> tuple[str, ...]:
    show = Show(asked.units)
    return (
        f"Ring groove {show.length(form.mark_wide)} wide at the end that does not go, filled red; both sizes stamped on the handle.",
        f"Pilot {show.turned(form.pilot)}, {show.length(form.pilot_long)} long. Necks {show.length(form.neck)} across.",
        f"Chamfers {show.depth(form.lead)}, edges broken by a stone. Gauging ends {worth.finish}.",
        "Sizes at 20 °C (68 °F).",
        *(
            (f"Flat {show.depth(form.vent)} deep lets the air out of a blind bore.",)
            if form.vent
            else ()
        ),
        *((f"Center holes {form.center.name} in both ends.",) if form.center else ()),
    )
