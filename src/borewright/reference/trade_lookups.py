"""Lookups of what the trade sells and allows: drills, limits, crowns, screws, centers, patterns."""

from __future__ import annotations

from borewright.errors import UnknownName
from borewright.quantities.si import Metre
from borewright.reference.centers import Center, center_of
from borewright.reference.crowns import Crown, crown_of, crowns_of, recommended
from borewright.reference.drills import (
    DrillSet,
    RoundTool,
    by_size,
    drill_set_of,
    round_tool_of,
)
from borewright.reference.drives import (
    Dog,
    Expanding,
    SetScrew,
    dog_of,
    dogs_for,
    expanding_of,
    set_screw_of,
)
from borewright.reference.holding import (
    HoldingTool,
    SetupMinutes,
    holding_tool_of,
    setup_minutes_of,
)
from borewright.reference.limits import (
    Limits,
    hole_classes_of,
    limits_of,
    reamer_limits,
    tolerance_of,
)
from borewright.reference.mandrels import PlainMandrel, mandrel_of
from borewright.reference.mends import MendMinutes, ToolEdge, mend_minutes_of, tool_edges_of
from borewright.reference.names import find
from borewright.reference.processes import Process, process_of
from borewright.reference.ranges import Range, range_of
from borewright.reference.rescue import Trouble, trouble_of
from borewright.reference.screw_lookups import ScrewLookups
from borewright.reference.shrinkage import Shrinkage, shrinkages_of
from borewright.reference.symptoms import Cause, causes_of

DRILL_SERIES = ("fraction", "number", "letter", "metric")
REAMER_SERIES = ("inch", "metric")


class TradeLookups(ScrewLookups):
    """The part of `Tables` that planning a bore, a blank or a mandrel asks."""

    def holding_tool(self, name: str) -> HoldingTool:
        """What holds work, by id or by any name the trade has for it.

        >>> from borewright.reference import tables
        >>> tables().holding_tool("independent chuck").id
        'four-jaw-chuck'
        """
        return holding_tool_of(find(self.table("holding_tools"), name, "holding"))

    def set_screw_near(self, diameter: Metre) -> SetScrew:
        """The largest set screw of at most this diameter (m); the smallest of all below that.

        >>> from borewright.reference import tables
        >>> tables().set_screw_near(0.0070).id
        '1/4 in'
        """
        screws = self.set_screws()
        within = [s for s in screws if s.diameter <= diameter * (1 + 1e-9)]
        return max(within, key=lambda s: s.diameter) if within else screws[0]

    def holding_fact(self, name: str) -> Range:
        """A figure that a way of holding is worked out with: stub_runout, nut_factor, …"""
        return self.ranged("holding_facts", name)

    def setup_minutes(self, way: str) -> SetupMinutes:
        """How long a way of holding takes to set up."""
        return self._once(
            ("minutes", way), lambda: setup_minutes_of(self.table("setup_minutes").row(way))
        )

    def mend_minutes(self, mend: str) -> MendMinutes:
        """How long a usual change to a blocked cut takes to set up, and in what it never serves."""
        return mend_minutes_of(self.table("mend_minutes").row(mend))

    def tool_edges(self, kind: str, shop: str) -> tuple[ToolEdge, ...]:
        """Edges of a kind (nose, edge-angle, more-rake, groove-tool) that a shop (inch, mm) has.

        >>> from borewright.reference import tables
        >>> [edge.as_said for edge in tables().tool_edges("edge-angle", "inch")]
        ['75 deg', '60 deg', '45 deg']
        """
        return tuple(tool_edges_of(self.table("tool_edges"), kind, shop))

    def rescue_minutes(self, way_out: str) -> Range:
        """How long a way of saving a piece takes, beside the ways of holding."""
        return range_of(self.table("rescue_minutes").row(way_out), unit="min")

    def rescue_fact(self, name: str) -> Range:
        """A figure that a rescue is worked out with: clean_up, bush_least_wall, …"""
        return self.ranged("rescue_facts", name)

    def trouble(self, name: str) -> Trouble:
        """What can be wrong with a bore or a mandrel, by any word the trade has for it.

        >>> from borewright.reference import tables
        >>> tables().trouble("bored over").id
        'too-big'
        """
        return trouble_of(find(self.table("troubles"), name, "trouble"))

    def truth_fact(self, name: str) -> Range:
        """A figure of setting true: parallel_share, iron_rim_speed, knife_edge_arm, …"""
        return self.ranged("truth_facts", name)

    def causes(
        self, where: str | None = None, shows: str | None = None, when: str | None = None
    ) -> tuple[Cause, ...]:
        """What may be behind work that is out of true, likeliest first; None leaves it open.

        >>> from borewright.reference import tables
        >>> [c.id for c in tables().causes("rim", "3", "after-release")][:2]
        ['three-jaws', 'spokes']
        """
        return causes_of(self.table("symptoms"), where, shows, when)

    def drill(self, name: str) -> RoundTool:
        """A drill by name: 1/4 in, #7, F, 6.8 mm. A bare number is a number drill.

        >>> from borewright.reference import tables
        >>> tables().drill("letter f").as_named
        '0.257 in'
        """
        return round_tool_of(find(self.table("drills"), name, "drill"))

    def drills(self, *series: str) -> tuple[RoundTool, ...]:
        """Drills from small to large: all, or those of fraction, number, letter, metric."""
        return by_size(self.table("drills").rows, _known("drill series", series, DRILL_SERIES))

    def drill_set(self, name: str) -> DrillSet:
        """A usual set of drills by its step or its series.

        >>> from borewright.reference import tables
        >>> tables().drill_set("by sixty-fourths").id
        'by 64ths'
        """
        return drill_set_of(find(self.table("drill_sets"), name, "set of drills"))

    def reamer(self, name: str) -> RoundTool:
        """A reamer by the size stamped on it."""
        return round_tool_of(find(self.table("reamers"), name, "reamer"))

    def reamers(self, *series: str) -> tuple[RoundTool, ...]:
        """Reamers usually sold, from small to large: all, or those of inch or metric."""
        return by_size(self.table("reamers").rows, _known("reamer series", series, REAMER_SERIES))

    def reaming(self, name: str) -> Range:
        """hand_reamer_over, machine_reamer_over, drill_over_small, stock_to_leave, …"""
        return self.ranged("reaming", name)

    def boring(self, name: str) -> Range:
        """dial_setting, bar_spring, last_pass, true_up, pilot_above, gauge_rule, tell_tale, …"""
        return self.ranged("boring", name)

    def limits(self, code: str, size: Metre) -> Limits:
        """Lower and upper deviation of a standard tolerance such as H7 at a size.

        >>> from borewright.reference import tables
        >>> lower, upper = tables().limits("H7", 0.050)
        >>> f"{lower * 1e6:.0f} {upper * 1e6:.0f}"
        '0 25'
        """
        deviations = self.table("iso_286_deviations")
        return limits_of(self.table("iso_286_grades"), deviations, code, size)

    def hole_classes(self) -> tuple[str, ...]:
        """The classes of holes that the tables hold: a capital letter and a grade.

        >>> from borewright.reference import tables
        >>> [code for code in tables().hole_classes() if code.startswith("H")][:3]
        ['H5', 'H6', 'H7']
        """
        return hole_classes_of(self.table("iso_286_grades"), self.table("iso_286_deviations"))

    def tolerance(self, grade: int, size: Metre) -> Metre:
        """The width of IT`grade` at a size."""
        return tolerance_of(self.table("iso_286_grades"), grade, size)

    def reamer_for(self, largest_hole: Metre, tolerance: Metre) -> Limits:
        """Smallest and largest reamer for a hole of this tolerance, by the usual rule.

        >>> from borewright.reference import tables
        >>> reamer = tables().reamer_for(0.055035, 35e-6)
        >>> f"{reamer.smallest * 1e3:.3f} {reamer.largest * 1e3:.3f}"
        '55.017 55.030'
        """
        below, band = self.reaming("reamer_below_hole_max"), self.reaming("reamer_tolerance")
        return reamer_limits(largest_hole, tolerance, below, band)

    def process(self, name: str) -> Process:
        """Tolerance grade and finish that a process usually gives."""
        return process_of(find(self.table("process_grades"), name, "process"))

    def crown(self, rule: str, diameter: Metre, face: Metre) -> Crown:
        """The crown of a flat-belt pulley by one rule, as height on radius."""
        return crown_of(self.table("crowns"), rule, diameter, face)

    def crowns(self, diameter: Metre, face: Metre) -> tuple[Crown, ...]:
        """The crown by every rule that says something of this pulley, lowest first.

        >>> from borewright.reference import tables
        >>> [f"{c.rule} {c.height * 1e3:.2f}" for c in tables().crowns(0.127, 0.0508)][:2]
        ['eighth-on-diameter 0.13', 'eighth-on-radius 0.26']
        """
        return crowns_of(self.table("crowns"), diameter, face)

    def recommended_crown(self, diameter: Metre, face: Metre) -> Crown:
        """The crown to take where nothing else is asked for; `reference.crowns` says why.

        >>> from borewright.reference import tables
        >>> tables().recommended_crown(0.127, 0.0508).rule
        'iso-22'
        """
        return recommended(self.crowns(diameter, face), face)

    def set_screw(self, name: str) -> SetScrew:
        """A cup-point set screw by nominal size: #10, 1/4 in."""
        return set_screw_of(self.table("set_screws").row(name))

    def dog(self, name: str) -> Dog:
        """A lathe dog by the size it is named for."""
        return dog_of(find(self.table("dogs"), name, "dog"))

    def dogs_for(self, diameter: Metre) -> tuple[Dog, ...]:
        """The dogs that take a round of this diameter, smallest first."""
        return dogs_for(self.table("dogs"), diameter)

    def center(self, name: str) -> Center:
        """A center hole or center drill by name: A 2.5, B 4, #3, #14."""
        return center_of(self.table("centers").row(name))

    def centers(self, series: str) -> tuple[Center, ...]:
        """The centers of iso-a, iso-b, inch-plain or inch-bell, small to large."""
        found = [c for c in map(center_of, self.table("centers").rows) if c.series == series]
        if not found:
            known = tuple(dict.fromkeys(self.table("centers").column("series")))
            raise UnknownName("center series", series, known)
        return tuple(sorted(found, key=lambda center: center.pilot))

    def expanding(self, bore: Metre) -> Expanding:
        """How much of a range one expanding mandrel for this bore covers."""
        return expanding_of(self.table("expanding_ranges"), bore)

    def shrinkages(self, material: str) -> tuple[Shrinkage, ...]:
        """Pattern shrinkage by every source, by material or by family, least first.

        >>> from borewright.reference import tables
        >>> [(s.as_published, s.source) for s in tables().shrinkages("al-scrap-cast")]
        [('5/32 in/ft', 'practice'), ('7/32 in/ft', 'dooley')]
        """
        table = self.table("shrinkage")
        family = material if material in table.column("family") else self.material(material).family
        return shrinkages_of(table, family)

    def metric_mandrel_row(self, nominal: Metre) -> PlainMandrel:
        """What an unmeasured metric plain mandrel might be; sets vary, no standard is known."""
        return mandrel_of(self.table("plain_mandrels_metric"), nominal)


def _known(where: str, asked: tuple[str, ...], known: tuple[str, ...]) -> tuple[str, ...]:
    for name in asked:
        if name not in known:
            raise UnknownName(where, name, known)
    return asked
