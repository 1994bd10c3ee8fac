"""A soft mandrel's numbers as figures with their rules, and as flat keys for JSON."""

from __future__ import annotations

from borewright.answer.figure import Figure, Input
from borewright.making.soft.as_drawn import DrawnBar
from borewright.making.soft.asked import SoftAsked
from borewright.making.soft.turned import TurnedBar
from borewright.reference.library import Tables

Numbers = dict[str, float | int | str]


def turned_figures(asked: SoftAsked, bar: TurnedBar, tables: Tables) -> tuple[Figure, ...]:
    """Size at the leading face and at the two ends of the tapered part."""
    taper, grip = tables.holding_fact("soft_taper"), tables.ranged("stub_facts", "soft_grip")
    places = (
        ("seat_size", bar.seat, 0.0),
        ("large_end", bar.large, bar.spread + bar.room),
        ("small_end", bar.small, -(asked.length + bar.room)),
    )
    return tuple(
        Figure(
            name,
            size,
            "m",
            formula="soft_seat",
            inputs=(
                Input("bore", asked.bore, "m", "bore"),
                Input("grip", bar.grip[1], "m", "small"),
                Input("taper", bar.taper, ""),
                Input("distance", distance, "m"),
            ),
            sources=tuple(dict.fromkeys((taper.source, grip.source))),
            kind="bore",
        )
        for name, size, distance in places
    )


def turned_numbers(bar: TurnedBar) -> Numbers:
    """Flat keys, lengths in m."""
    return {
        "form": "turned",
        "taper_m_per_m": bar.taper,
        "leading_face_diameter_m": bar.seat,
        "grip_low_m": bar.grip[0],
        "grip_m": bar.grip[1],
        "grip_high_m": bar.grip[2],
        "leading_face_from_large_end_m": bar.room + bar.spread,
        "large_end_m": bar.large,
        "small_end_m": bar.small,
        "taper_length_m": bar.body,
        "room_past_face_m": bar.room,
        "batch_spread_m": bar.spread,
        "stock_diameter_m": bar.stock,
        "whole_length_m": bar.length,
        "out_of_jaws_m": bar.out_of_jaws,
        "head_end_diameter_m": bar.ends.head,
        "tail_end_diameter_m": bar.ends.tail,
        "dog_flat_depth_m": bar.ends.dog_flat[0],
        "dog_flat_length_m": bar.ends.dog_flat[1],
        "center": bar.ends.tail_center.name if bar.ends.tail_center else "none",
        "set_over_m": bar.set_over,
        "slide_angle_rad": bar.slide_angle,
        "indicator_travel_m": bar.travel,
        "indicator_reading_m": bar.indicator,
        "push_N": bar.push,
    }


def drawn_figures(asked: SoftAsked, bar: DrawnBar, tables: Tables) -> tuple[Figure, ...]:
    """Clearance, what the screw throws the work over, the flat, the torque of the screw."""
    usual = tables.holding_fact("drawn_bar_under")
    clearance = Figure(
        "clearance",
        bar.clearance[1],
        "m",
        bar.clearance[0],
        bar.clearance[2],
        "bar_clearance",
        (
            Input("bore", asked.bore, "m", "bore"),
            Input("bar", bar.nominal, "m", "bore"),
            Input("under", bar.under[1], "m", "small"),
        ),
        (usual.source,),
        "small",
    )
    thrown = Figure(
        "thrown_runout",
        bar.runout[1],
        "m",
        bar.runout[0],
        bar.runout[2],
        "thrown_runout",
        (
            Input("bore", asked.bore, "m", "bore"),
            Input("bar", bar.nominal - bar.under[1], "m", "bore"),
        ),
        ("ours-derived",),
        "small",
    )
    flat = Figure(
        "flat_width",
        bar.flat_width,
        "m",
        formula="flat_wide",
        inputs=(Input("depth", bar.flat_depth, "m"), Input("bar", bar.nominal, "m", "bore")),
        sources=("ours-derived",),
    )
    torque = Figure(
        "screw_torque", bar.torque, "N·m", sources=(bar.screw.holding.source,), kind="torque"
    )
    return (clearance, thrown, flat, torque)


def drawn_numbers(bar: DrawnBar) -> Numbers:
    """Flat keys, lengths in m."""
    said: Numbers = {
        "form": "as drawn",
        "bar_diameter_m": bar.nominal,
        "clearance_low_m": bar.clearance[0],
        "clearance_m": bar.clearance[1],
        "clearance_high_m": bar.clearance[2],
        "thrown_over_m": bar.thrown,
        "runout_low_m": bar.runout[0],
        "runout_m": bar.runout[1],
        "runout_high_m": bar.runout[2],
        "bar_own_runout_m": bar.bar_runout,
        **{f"under_by_{code}_m": under for code, under in bar.by_grade},
        "set_screw": bar.thread_name,
        "set_screw_listed": bar.screw.id,
        "set_screw_diameter_m": bar.screw.diameter,
        "seating_torque_Nm": bar.seating_torque,
        "screw_torque_Nm": bar.torque,
        "screw_hole_opened_m": bar.opened,
        "flat_depth_m": bar.flat_depth,
        "flat_width_m": bar.flat_width,
        "flat_length_m": bar.flat_end - bar.flat_start,
        "flat_from_head_end_m": bar.flat_start,
        "screw_from_head_end_m": bar.screw_at,
        "whole_length_m": bar.length,
        "dog_flat_depth_m": bar.ends.dog_flat[0],
        "dog_flat_length_m": bar.ends.dog_flat[1],
        "center": bar.ends.tail_center.name if bar.ends.tail_center else "none",
    }
    if bar.thread is not None:
        said |= {"tap_drill": bar.thread.tap_drill, "tap_drill_m": bar.thread.tap_drill_size}
    if bar.face_reading is not None:
        said["face_reading_m"] = bar.face_reading
    return said
