"""A gauge's numbers as figures with their rules, and as flat keys for JSON."""

from __future__ import annotations

from borewright.answer.figure import Figure, Input
from borewright.making.gauge.asked import GaugeAsked
from borewright.making.gauge.form import GaugeForm, goes_deep
from borewright.making.gauge.steps import PlugStep, read_off
from borewright.making.gauge.worth import Worth
from borewright.quantities.si import Metre
from borewright.reference.library import Tables

Numbers = dict[str, float | int | str]


def gauge_figures(
    asked: GaugeAsked, worth: Worth, steps: tuple[PlugStep, ...], tables: Tables
) -> tuple[Figure, ...]:
    """Tolerance, both ends, what they take of the window, the steps."""
    share = tables.ranged("plug_facts", "gauge_share")
    ends = (
        _end("go_size", "go_smallest", 0.0, asked, worth),
        _end("go_size", "go_largest", 1.0, asked, worth),
        _end("not_go_size", "not_go_smallest", 1.0, asked, worth),
        _end("not_go_size", "not_go_largest", 0.0, asked, worth),
    )
    tolerance = Figure(
        "gauge_tolerance",
        worth.width,
        "m",
        formula="gauge_tolerance",
        inputs=(
            Input("share", share.best, ""),
            *_window(asked),
            Input("known", worth.known, "m", "small"),
            Input("hit", worth.hit, "m", "small"),
        ),
        sources=tuple(dict.fromkeys((share.source, "ours"))),
        kind="small",
    )
    lost = Figure(
        "window_lost",
        worth.zones.lost_worst,
        "",
        formula="window_lost",
        inputs=(
            Input("wear", worth.wear, "m", "small"),
            Input("tolerance", worth.width, "m", "small"),
            *_window(asked),
        ),
        sources=("ours-derived",),
    )
    return (tolerance, *ends, lost, *(_step(step, asked) for step in steps))


def _window(asked: GaugeAsked) -> tuple[Input, Input]:
    return (
        Input("largest", asked.high, "m", "bore"),
        Input("smallest", asked.low, "m", "bore"),
    )


def _end(formula: str, name: str, share: float, asked: GaugeAsked, worth: Worth) -> Figure:
    zone = worth.zones.go if formula == "go_size" else worth.zones.not_go
    upper = name.endswith("largest")
    return Figure(
        name,
        zone[1] if upper else zone[0],
        "m",
        formula=formula,
        inputs=(
            *_window(asked),
            Input("wear", worth.wear, "m", "small"),
            Input("share of zone", share, ""),
            Input("tolerance", worth.width, "m", "small"),
        ),
        sources=("ours-derived",),
        kind="bore",
    )


def _step(step: PlugStep, asked: GaugeAsked) -> Figure:
    share = (step.nominal - asked.low) / asked.band
    return Figure(
        f"plug_step_{step.name}",
        step.nominal,
        "m",
        formula="plug_step",
        inputs=(*_window(asked), Input("share", share, "")),
        sources=("ours-derived",),
        kind="bore",
    )


def gauge_numbers(
    asked: GaugeAsked, worth: Worth, form: GaugeForm, steps: tuple[PlugStep, ...]
) -> Numbers:
    """Flat keys, lengths in m."""
    zones = worth.zones
    said: Numbers = {
        "smallest_bore_m": asked.low,
        "largest_bore_m": asked.high,
        "finish": worth.finish,
        "tolerance_m": worth.width,
        "tenth_of_window_m": worth.tenth,
        "wear_m": worth.wear,
        "known_m": worth.known,
        "window_lost_worst": zones.lost_worst,
        "window_lost_middle": zones.lost_middle,
        "always_passed_from_m": zones.left[0],
        "always_passed_below_m": zones.left[1],
        "go_smallest_m": zones.go[0],
        "go_largest_m": zones.go[1],
        "not_go_smallest_m": zones.not_go[0],
        "not_go_largest_m": zones.not_go[1],
        "worn_out_m": worth.worn_out,
        "go_reads_from_m": worth.go_reads[0],
        "go_reads_to_m": worth.go_reads[1],
        "not_go_reads_from_m": worth.not_go_reads[0],
        "not_go_reads_to_m": worth.not_go_reads[1],
        "neck_diameter_m": form.neck,
        "handle_diameter_m": form.handle,
        "handle_length_m": form.handle_long,
        "stock_diameter_m": form.stock,
        "gauging_length_m": form.gauging,
        "whole_length_m": form.length,
        "mass_kg": form.mass,
        "vent_depth_m": form.vent,
    }
    deep = goes_deep(asked, form)
    if deep is not None:
        said["goes_deep_m"] = deep
    if not steps:
        return said | {"go_length_m": form.go_long, "not_go_length_m": form.not_go_long}
    said |= {"steps": len(steps), "step_length_m": form.step_long}
    for step in steps:
        said |= {
            f"step_{step.name}_m": step.nominal,
            f"step_{step.name}_smallest_m": step.zone[0],
            f"step_{step.name}_largest_m": step.zone[1],
        }
    for row in read_off(steps):
        said |= _known(f"entered_{row.entered}", row.least, row.below)
        said[f"entered_{row.entered}"] = row.word
    return said


def _known(name: str, least: Metre | None, below: Metre | None) -> Numbers:
    known: Numbers = {}
    if least is not None:
        known[f"{name}_bore_at_least_m"] = least
    if below is not None:
        known[f"{name}_bore_below_m"] = below
    return known
