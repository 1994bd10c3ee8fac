"""A stub's numbers as figures with their rules, and as flat keys for JSON."""

from __future__ import annotations

from borewright.answer.figure import Figure, Input
from borewright.making.facts import best_of
from borewright.making.fine_feed import feed_figure, fine_feeds, usual_feed
from borewright.making.stub.asked import StubAsked
from borewright.making.stub.sizes import BAR, StubSizes
from borewright.making.stub.slit import Slit
from borewright.mechanics.sleeve_fingers import Fingers, finger_section
from borewright.reference.library import Tables

Numbers = dict[str, float | int | str]


def stub_figures(
    asked: StubAsked, stub: StubSizes, slit: Slit | None, tables: Tables
) -> tuple[Figure, ...]:
    """Those that a pencil can work again."""
    clearance = tables.holding_fact("stub_clearance")
    division = tables.holding_fact(f"slide_division_{asked.units}").best
    size = Figure(
        "stub_size",
        stub.spigot,
        "m",
        stub.spigot_low - (0.0 if asked.batch else asked.half_band),
        stub.spigot_high + (0.0 if asked.batch else asked.half_band),
        "stub_size",
        (
            Input("bore", asked.bore, "m", "bore"),
            Input("clearance", clearance.best, "m", "small"),
        ),
        (clearance.source,),
        "bore",
    )
    return (
        size,
        feed_figure(usual_feed(tables), division),
        *(_slit_figures(asked, stub, slit, tables) if slit else ()),
    )


def _slit_figures(
    asked: StubAsked, stub: StubSizes, slit: Slit, tables: Tables
) -> tuple[Figure, ...]:
    nip = tables.ranged("stub_facts", "nip")
    modulus = tables.material_range(BAR, "modulus")
    _, fiber = finger_section(Fingers(stub.spigot, slit.hole, slit.number, slit.width, slit.free))
    opening = Figure(
        "opening",
        slit.opens,
        "m",
        formula="plug_opening",
        inputs=(
            Input("nipped when turned", slit.nipped, "m", "small"),
            Input("largest bore", asked.bore_high, "m", "bore"),
            Input("smallest stub", stub.spigot_low, "m", "bore"),
            Input("nip", nip.best, "m", "small"),
        ),
        sources=(nip.source,),
        kind="small",
    )
    travel = Figure(
        "plug_travel",
        slit.travel,
        "m",
        formula="plug_travel",
        inputs=(Input("opening", slit.opens, "m", "small"), Input("taper", slit.taper, "")),
        sources=(slit.taper_source,),
        kind="depth",
    )
    most = Figure(
        "largest_opening",
        slit.opens_most,
        "m",
        formula="finger_opening",
        inputs=(
            Input("stress", slit.bears, "Pa", "pressure"),
            Input("L", slit.free, "m"),
            Input("E", modulus.best, "Pa", "pressure"),
            Input("c", fiber, "m"),
        ),
        sources=("ours-derived", modulus.source),
        kind="small",
    )
    return (opening, travel, most)


def stub_numbers(asked: StubAsked, stub: StubSizes, slit: Slit | None, tables: Tables) -> Numbers:
    """Flat keys, lengths in m."""
    said: Numbers = {
        "spigot_diameter_m": stub.spigot,
        "spigot_smallest_m": stub.spigot_low,
        "spigot_largest_m": stub.spigot_high,
        "spigot_length_m": stub.spigot_length,
        "rough_diameter_m": stub.rough,
        "shoulder_diameter_m": stub.shoulder,
        "shoulder_thickness_m": stub.before_work,
        "groove_width_m": stub.groove_width,
        "groove_depth_m": stub.groove_depth,
        "end_chamfer_m": stub.chamfer,
        "stock_diameter_m": stub.stock,
        "stick_out_m": stub.stick_out,
        "bar_length_m": stub.bar_length,
        "grip_in_jaws_m": stub.grip,
        "overhang_m": stub.overhang,
        "overhang_over_diameter": stub.overhang_ratio,
        "stiffness_N_per_m": stub.stiffness,
        "largest_shake_m": stub.shake,
    }
    if stub.clamp is not None:
        clamp = stub.clamp
        said |= {
            "screw": clamp.screw.id,
            "screw_diameter_m": clamp.screw.diameter,
            "screw_pitch_m": clamp.screw.pitch,
            "tap_drill": clamp.screw.tap_drill,
            "tap_drill_m": clamp.screw.tap_drill_size,
            "thread_depth_m": clamp.thread_depth,
            "drill_depth_m": clamp.drill_depth,
            "screw_length_m": clamp.length,
            "screw_under_head_least_m": clamp.shank_least,
            "screw_under_head_most_m": clamp.shank_most,
            "washer_outside_m": clamp.washer_outside,
            "washer_hole_m": clamp.screw.clearance,
            "washer_thickness_m": clamp.washer_thick,
        }
    if slit is not None:
        said |= _slit_numbers(slit)
    return said | feed_numbers(tables)


def _slit_numbers(slit: Slit) -> Numbers:
    return {
        "plug": slit.plug,
        "plug_taper_m_per_m": slit.taper,
        "plug_slide_angle_rad": slit.slide_angle,
        "plug_small_end_m": slit.plug_small,
        "plug_large_end_m": slit.plug_large,
        "plug_length_m": slit.plug_length,
        "plug_hole_m": slit.plug_hole,
        "plug_stands_out_m": slit.stands_out,
        "slits": slit.number,
        "slit_width_m": slit.width,
        "slit_length_m": slit.length,
        "slit_end_hole_m": slit.end_hole,
        "wall_m": slit.wall,
        "hole_diameter_m": slit.hole,
        "mouth_diameter_m": slit.mouth,
        "mouth_depth_m": slit.cone_length,
        "screw": slit.screw.id,
        "screw_diameter_m": slit.screw.diameter,
        "tap_drill": slit.screw.tap_drill,
        "tap_drill_m": slit.screw.tap_drill_size,
        "screw_length_m": slit.screw_length,
        "washer_outside_m": slit.washer_outside,
        "washer_hole_m": slit.screw.clearance,
        "washer_thickness_m": slit.washer_thick,
        "plug_relief_m": slit.relief,
        "thread_depth_m": slit.thread_depth,
        "drill_depth_behind_slits_m": slit.drill_depth,
        "opening_needed_m": slit.opens,
        "opening_when_turned_m": slit.nipped,
        "opening_largest_m": slit.opens_most,
        "plug_travel_needed_m": slit.travel,
        "plug_travel_largest_m": slit.travel_most,
        "opening_per_turn_m": slit.per_turn,
        "root_stress_Pa": slit.stress,
    }


def feed_numbers(tables: Tables) -> Numbers:
    """The fine feeds: angle, change of diameter per travel, slide for the last of it."""
    last = best_of(tables, "stub_facts")("last_sizes")
    said: Numbers = {"last_m": last}
    for feed in fine_feeds(tables):
        name = f"feed_{feed.id.replace(' ', '_')}"
        said[f"{name}_angle_rad"] = feed.angle
        said[f"{name}_diameter_per_slide"] = feed.diameter_per_slide
        said[f"{name}_along_per_slide"] = feed.along_per_slide
        said[f"{name}_slide_for_last_m"] = feed.slide_for(last)
    return said
