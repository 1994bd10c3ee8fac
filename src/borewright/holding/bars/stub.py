"""A stub turned to the bore where it stands: its sizes, how to turn it, how stiff it is, its clamp.

What a stub in a chuck and a stub in a collet have in common. The work sits on the stub against its
shoulder; a washer and screw clamp it there.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from borewright.answer.held import Check, line
from borewright.answer.records import Draws, Figure, Input, Step
from borewright.answer.streams import Stream, around
from borewright.holding.close_fit import fit_tilt
from borewright.holding.faces.clamped import Clamped, clamped, how_hard, thread_within
from borewright.holding.figured import drawn_figure
from borewright.holding.part import Part
from borewright.mechanics.beam import Bar, round_step
from borewright.mechanics.fine_angle import angle_for_feed, step_table
from borewright.mechanics.overhang import Root, propped_stiffness, stub_stiffness
from borewright.mechanics.spread import high_end, likely, low_end
from borewright.quantities.si import Metre, NewtonPerMetre, Radian

PLACES = (0.25, 0.5, 0.75, 1.0)
"""Shares of the work's length where a propped stub is tried: the weakest counts (ours)."""


@dataclass(frozen=True)
class Stub:
    """A stub for one part, the face `leading` (A or B) against its shoulder. Lengths in m."""

    part: Part
    leading: str

    @property
    def trailing(self) -> str:
        return "A" if self.leading == "B" else "B"

    @cached_property
    def thread(self) -> Metre:
        """The screw in its end; 0 where none is small enough."""
        most = self._share(f"thread_most_{self.part.job.units}")
        share = self._share("thread_share") * self.part.bore
        return thread_within(self.part, min(share, most)) or 0.0

    def _share(self, name: str) -> float:
        """A proportion by which stubs are made, from the table that `make` reads too."""
        return self.part.tables.holding_fact(f"stub_{name}").best

    @property
    def length(self) -> Metre:
        """Of the stub from its shoulder: shorter than the work, so that the washer bears on it."""
        return (1 - self._share("shorter")) * self.part.length

    @property
    def before_work(self) -> Metre:
        """What stands between jaws and work."""
        return self._share(f"before_{self.part.job.units}")

    @property
    def overhang(self) -> Metre:
        return self.before_work + self.part.length

    @property
    def shoulder(self) -> Metre:
        """Outside of the shoulder: no wider than the hub at that face, clear of the tool."""
        return min(self._share("wider") * self.part.bore, self.part.clear_of_tool(self.leading))

    @property
    def washer(self) -> Metre:
        """Outside of the washer: no wider than the hub at the other face, clear of the tool."""
        return min(self._share("wider") * self.part.bore, self.part.clear_of_tool(self.trailing))

    @property
    def inside(self) -> Metre:
        """Where the faces begin: the bore, or the wider of its chamfers."""
        return self.part.bore + 2 * max(self.part.work.chamfers.legs)

    @property
    def has_faces(self) -> bool:
        """Whether both bear on more than a burr is wide."""
        return min(self.shoulder, self.washer) >= self.inside + 2 * self._share("face_least")

    @cached_property
    def clamp(self) -> Clamped:
        """The clamp on the narrower of shoulder and washer."""
        return clamped(self.part, self.thread, self.inside, min(self.shoulder, self.washer))

    @cached_property
    def clearance(self) -> Draws:
        return self.part.fact_with_zero("stub_clearance", Stream.SETTING)

    @cached_property
    def size(self) -> Draws:
        """The size to turn: the bore as far as it is known, less the clearance of a sliding fit."""
        return np.asarray(around(self.part.bore, self.part.bore_band, Stream.BORE) - self.clearance)

    @property
    def tilt(self) -> Draws:
        """Moment (N·m) that clamp or fit takes, whichever is more: neither needs the other."""
        return np.maximum(self.clamp.tilt, fit_tilt(self.part))

    def size_words(self) -> str:
        """The band of sizes to turn, low to high."""
        low, high = low_end(self.size), high_end(self.size)
        return self.part.show.band(low, high, "bore")

    @cached_property
    def steel(self) -> tuple[float, float]:
        """Modulus (Pa) and Poisson's ratio of bar stock."""
        of = self.part.tables.material_range
        return of("steel-1018", "modulus").best, of("steel-1018", "poisson").best

    def stiffness(self, *, tailstock: bool = False) -> NewtonPerMetre:
        """At the tool, of the bare stub in its chuck; the work's own stiffness is left out.

        At the far face, or with the tailstock at the weakest of some places along the work.
        """
        fact, reach = self.part.tables.holding_fact, self.overhang
        bend, slide = round_step(self.part.bore, *self.steel)
        bar = Bar(np.array([0.0, reach]), np.array([bend]), np.array([slide]))
        root = Root(fact("stub_root_turn").best, fact("stub_root_give").best)
        if not tailstock:
            return stub_stiffness(bar, reach, root)
        center = self.part.tables.allowance("center_stiffness").best
        places = (self.before_work + share * self.part.length for share in PLACES)
        return min(propped_stiffness(bar, at, root, center) for at in places)

    def overhang_check(self, *, tailstock: bool = False) -> Check:
        """How far it stands out over its diameter, against the usual most."""
        name = "stub_center_share" if tailstock else "chuck_overhang_share"
        most, show = self.part.tables.holding_fact(name), self.part.show
        margin = most.best * self.part.bore / self.overhang
        helped = "with the center" if tailstock else "without a center"
        return Check(
            margin,
            margin,
            f"The shoulder, {show.length(self.shoulder)} across, stops it lengthwise and squares it. It stands out "
            f"{show.length(self.overhang)}, {self.overhang / self.part.bore:.1f} of its diameter; {most.best:g} is the usual "
            f"most {helped}.",
            "Nothing needs to."
            if margin >= 1
            else "A center hole in the screw's head and the tailstock brought up, lighter cuts."
            if not tailstock
            else "A mandrel between centers.",
            (most.source,),
        )

    def fit_check(self) -> Check:
        return Check(
            2.0,
            2.0,
            f"The stub is turned to the bore as it is, expected from {self.size_words()}: whatever the reading says, the "
            "work itself is the gauge.",
            "Trying the work on: it should just slide on with no shake.",
            figures=(self.size_figure(),),
        )

    def effort_check(self) -> Check:
        show, clamp = self.part.show, self.clamp
        return Check(
            2.0,
            1.4,
            f"{how_hard(self.part, clamp)}: about {show.torque(clamp.wrench)} on the screw clamps with about "
            f"{show.force(likely(clamp.force))}, {show.force(low_end(clamp.force))} in the poor case (1 in 20).",
            "A cleaner, oiled thread clamps harder at the same torque.",
            clamp.sources,
        )

    def size_figure(self) -> Figure:
        inputs = (
            Input("bore", self.part.bore, "m", "bore"),
            Input("clearance", likely(self.clearance), "m", "small"),
        )
        return drawn_figure("stub_size", self.size, "m", "bore", "stub_size", inputs, "practice")

    # How to turn it

    @property
    def step(self) -> Metre:
        """What one division of the top slide should take off, on diameter."""
        return self.part.tables.holding_fact(f"stub_step_{self.part.job.units}").best

    @property
    def division(self) -> Metre:
        """Travel of the top slide for one division of its dial."""
        return self.part.tables.holding_fact(f"slide_division_{self.part.job.units}").best

    @property
    def angle(self) -> Radian:
        """How far the top slide is set over from the lathe's axis, to be a fine feed."""
        return float(angle_for_feed(self.step, self.division))

    def stops(self) -> tuple[Metre, ...]:
        """How far from the shoulder each pass stops that is one division deeper than the last."""
        steps = self.part.tables.holding_fact("stub_taper_steps").best
        taper = steps * self.step / self.part.length
        return tuple(float(x) for x in step_table(self.part.length, taper, self.step)[0])

    def turning_steps(self, roughing: str) -> tuple[Step, ...]:
        """From bar to a stub that the work slides on; `roughing` says how the bar is held."""
        fact, show = self.part.tables.holding_fact, self.part.show
        depth = fact("screw_engagement").best * self.thread
        width, deep = fact("undercut_width").best, fact("undercut_depth").best
        thick = max(
            fact("washer_thick_share").best * self.thread,
            self._share("washer_share") * self.part.bore,
        )
        return (
            line(
                "Make the washer first",
                f"{show.length(self.washer)} across and {show.length(thick)} thick, faced both sides: once the stub is in, "
                "nothing else is turned there.",
            ),
            line(
                "Rough the stub",
                f"{roughing} Face it, turn the shoulder to {show.length(self.shoulder)}, rough the stub to within "
                f"{show.small(self._share('rough_over'))} of the bore and {show.length(self.length)} long, shorter than the work "
                f"so that the washer bears on the work. In the corner, a groove {show.length(width)} wide and "
                f"{show.small(deep)} deep, so that the work seats on the shoulder.",
            ),
            line(
                "Tap the end",
                f"Center, drill and tap {show.length(self.thread)}; the screw must hold {show.length(depth)} of thread, the hole "
                "a little more.",
            ),
            line(
                "Turn it to the bore",
                f"Top slide set over {show.angle(self.angle)} from the lathe's axis: each division of "
                f"{show.small(self.division)} then takes {show.small(self.step)} off the diameter. Oil, and try the work every "
                f"time: done when it just slides on with no shake, expected from {self.size_words()}.",
                (self.size_figure(), self.angle_figure()),
                ("stub",),
            ),
            line("A slight taper, if it is to start easily", self._taper_words()),
            line(
                "Face the shoulder",
                "In the same setting, so that it runs true with the stub.",
            ),
        )

    def _taper_words(self) -> str:
        show = self.part.show
        stops = ", ".join(show.rule(x) for x in self.stops())
        return (
            f"From the free end, one division deeper each pass, and stop short of the shoulder by {stops} in turn; then blend "
            "with a fine file or emery, free end only. The work must still be tight to slide at the shoulder."
        )

    def angle_figure(self) -> Figure:
        inputs = (
            Input("step on diameter", self.step, "m", "small"),
            Input("division of the slide", self.division, "m", "small"),
        )
        return Figure(
            "top_slide_angle",
            self.angle,
            "rad",
            formula="fine_feed_angle",
            inputs=inputs,
            sources=("ours",),
            kind="angle",
        )

    def clamp_step(self) -> Step:
        show, clamp = self.part.show, self.clamp
        return line(
            "Clamp the work",
            f"Wipe every face. Work on, washer, screw, about {show.torque(clamp.wrench)}. Pencil line across work and "
            "shoulder: if it breaks, it slipped: stop.",
            clamp.figures,
            ("rim runs out",),
        )
