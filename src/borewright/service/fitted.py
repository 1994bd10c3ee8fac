"""fit: one bore on one plain taper mandrel, by rings or as elastic bodies; both as measured."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from borewright.errors import OutsideModel, RefusedInput
from borewright.holding.bores.bore_shape import bore_shape
from borewright.holding.taper.elastic_joint import Joint, joint
from borewright.holding.taper.measured_mandrel import (
    USUAL_UNCERTAINTY,
    diameter_of,
    profile_of,
    straight_through,
    window_of,
)
from borewright.holding.taper.measured_words import beyond_use
from borewright.job.build_chamfers import check_chamfers
from borewright.job.hollow import check_hole
from borewright.job.records import Bore, Mandrel, Piece
from borewright.mechanics.chamfer import chamfered
from borewright.mechanics.inverse import where_it_first_reaches, where_it_reaches
from borewright.mechanics.measured import Profile
from borewright.mechanics.measured_rings import ring_contact_on
from borewright.mechanics.measured_touch import touch_on
from borewright.mechanics.num import Floats
from borewright.mechanics.outline import BoreLine, bore_line
from borewright.mechanics.press import push_off_force, push_on_force
from borewright.mechanics.rings import Elastic, RingContact, ring_contact
from borewright.mechanics.roughness import interference_lost
from borewright.mechanics.slip import slip_torque
from borewright.mechanics.taper import touch_position
from borewright.quantities.si import Metre, Newton, Pascal
from borewright.reference.library import Tables
from borewright.service.fit_records import FitInput, FitResult, Taken, material_taken

MOST_POISSON = 0.499
"""A body that keeps its volume altogether is beyond these elements; rings take up to 0.5."""

HOOP_WINDOW = (0.05, 0.95)
TENSION_WINDOW = (0.01, 0.99)
"""Shares of the bore's length between which its hoop tension, and any tension, is read."""


RINGS, CONTACT = "rings", "contact"
"""The models: thick rings side by side, or two elastic bodies."""


@dataclass(frozen=True, slots=True)
class Told:
    """What a model says of the joint at one seat."""

    normal_force: Newton
    contact_length: Metre
    bore_tension: Pascal
    tension: Pascal
    growth: Metre


def fit(asked: FitInput, tables: Tables) -> FitResult:
    """Position, force and stress of one bore on one mandrel.

    Roughness takes its share off the interference for force, pressure and growth; the two tensions
    are without it, because peaks that do not flatten load the bore. Friction, where one value is
    given, serves pressing on, pressing off and slipping alike. Raises RefusedInput for input that
    cannot be used, UnknownName for a material that is not in the tables.
    """
    known = _Known(asked, tables)
    if sum(v is not None for v in (asked.travel, asked.position, asked.push)) != 1:
        raise RefusedInput(
            "fit", "none or several of travel, position and push", "exactly one of them"
        )
    touch = _touch(asked, known)
    travel, stalled = _travel(asked, known, touch)
    return _result(asked, known, touch, travel, stalled)


class _Known:
    """The input with its gaps filled; remembers what was taken."""

    def __init__(self, asked: FitInput, tables: Tables) -> None:
        self.asked, self.tables = asked, tables
        self.taken: list[Taken] = [*material_taken(asked.material, tables)]
        self.shape = bore_shape(Bore(asked.bore, readings=asked.bore_readings), 0.0, "A")
        self.pieces = _less_chamfers(asked)
        whole = bore_line(self.pieces, asked.bore)
        self.line: BoreLine = whole.cut_at(self.shape.depths.tolist())
        self.sizes = self.shape.at(self.line.edges)
        self.bore_start, self.bore_end = _bore_ends(self.line)
        row = tables.mandrel_row(asked.mandrel)
        named = ", ".join(row.sources)
        through = None
        if not asked.stations:
            self.taper = self._or("taper", asked.taper, "m/m", lambda: (row.taper, named))
            self.small_end = self._or(
                "small_end", asked.small_end, "m", lambda: (row.small_end, named)
            )
        reach = max((row.ground_length, *(x for x, _ in asked.stations)))
        self.ground = self._or("ground_length", asked.ground_length, "m", lambda: (reach, named))
        if asked.stations:
            through = straight_through(asked.stations, self.ground, "stations of the mandrel")
            self.taper, self.small_end = through.taper, through.small_end
            self._or("uncertainty", None, "m", lambda: (USUAL_UNCERTAINTY, "ours"))
        self.body = Mandrel(
            name="the mandrel",
            nominal=asked.mandrel,
            small_end=self.small_end,
            taper=self.taper,
            ground_length=self.ground,
            overall_length=self.ground + 2 * row.end_length,
            end_diameter=row.end_diameter,
            end_length=row.end_length,
            stations=through.stations if through else (),
            station_uncertainty=USUAL_UNCERTAINTY if through else 0.0,
            hole=asked.mandrel_bore,
        )
        smallest = min([self.small_end, *(d for _, d in asked.stations)])
        check_hole(asked.mandrel_bore, smallest, "--mandrel-bore")
        self.profile = _profile(self.body, asked)
        self.work = Elastic(
            self._or("work_modulus", asked.work_modulus, "Pa", self._material("modulus")),
            self._or("work_poisson", asked.work_poisson, "", self._material("poisson")),
        )
        self.mandrel = Elastic(
            self._or("mandrel_modulus", asked.mandrel_modulus, "Pa", self._steel("modulus")),
            self._or("mandrel_poisson", asked.mandrel_poisson, "", self._steel("poisson")),
        )
        self.friction_on, self.friction_off, self.friction_slip = self._friction()
        rough = self._or("roughness", asked.roughness, "m", self._usual_roughness)
        self.lost = float(interference_lost(rough, tables.allowance("roughness_loss").best))

    def _or(
        self, what: str, given: float | None, unit: str, usual: Callable[[], tuple[float, str]]
    ) -> float:
        if given is not None:
            return given
        value, source = usual()
        self.taken.append(Taken(what, value, unit, source))
        return value

    def _material(self, quantity: str) -> Callable[[], tuple[float, str]]:
        def usual() -> tuple[float, str]:
            r = self.tables.material_range(self._named(quantity), quantity)
            return r.best, r.source

        return usual

    def _named(self, wanted_for: str) -> str:
        if self.asked.material is None:
            raise RefusedInput(
                "--material", f"nothing, and {wanted_for} not given", "a material, or that value"
            )
        return self.asked.material

    def _steel(self, quantity: str) -> Callable[[], tuple[float, str]]:
        r = self.tables.material_range("mandrel-steel-hard", quantity)
        return lambda: (r.best, r.source)

    def _friction(self) -> tuple[float, float, float]:
        if self.asked.friction is not None:
            return (self.asked.friction,) * 3
        f = self.tables.friction(self._named("friction"), "oiled")
        on, slip, off = f.mu_on.best, f.slip_ratio.best, f.off_ratio.best
        self.taken.append(Taken("friction", on, "", f.mu_on.source))
        self.taken.append(Taken("friction_slip", on * slip, "", f.slip_ratio.source))
        self.taken.append(Taken("friction_off", on * off, "", f.off_ratio.source))
        return on, on * off, on * slip

    def _usual_roughness(self) -> tuple[float, str]:
        work, mandrel = self.tables.roughness("unknown"), self.tables.roughness("ground-mandrel")
        return work.best + mandrel.best, work.source

    def rings(self, seat: Metre, lost: Metre) -> RingContact:
        if self.profile is not None:
            ground = 0.0, self.ground
            on = self.line, self.sizes, np.array([seat]), lost, self.work, self.mandrel
            return ring_contact_on(self.profile, *on, ground, self.body.hole)
        sizes = np.full(len(self.line.edges), self.asked.bore)
        return ring_contact(
            self.line,
            sizes,
            np.array([seat]),
            self.small_end,
            self.taper,
            self.ground,
            lost,
            self.work,
            self.mandrel,
            self.body.hole,
        )

    def push_at(self, seat: Metre) -> Newton:
        return float(push_on_force(self.normal_at(seat), self.friction_on, self.taper))

    def normal_at(self, seat: Metre) -> Newton:
        if self.asked.model == RINGS:
            return float(self.rings(seat, self.lost).normal_force[0])
        joined = self.joint(seat)
        return joined.normal_force(joined.pressure(self.overlap(joined, seat, self.lost)))

    def joint(self, seat: Metre) -> Joint:
        """Work and mandrel as two elastic bodies; the mandrel goes on to both its own ends."""
        end = self.body.end_length
        out = self.ground + end - (seat - self.bore_start), seat - self.bore_end + end
        bodies = self.work, self.mandrel
        for name, body in zip(("--work-poisson", "--mandrel-poisson"), bodies, strict=True):
            if float(body.poisson) > MOST_POISSON:
                raise RefusedInput(name, f"{float(body.poisson):g}", f"up to {MOST_POISSON:g}")
        try:
            return joint(self.pieces, self.asked.bore, *bodies, out, self.body.hole)
        except OutsideModel as trouble:
            found = f"{trouble.quantity}: {trouble.value}"
            raise RefusedInput("the outline", found, trouble.allowed) from None

    def overlap(self, joined: Joint, seat: Metre, lost: Metre) -> Floats:
        """Overlap on diameter (m) on every strip; none beyond the ground length."""
        x = seat - joined.places
        sizes = np.interp(joined.places, self.line.edges, self.sizes)
        over = np.asarray(diameter_of(self.body, x) - sizes - lost)
        return np.where((x >= 0) & (x <= self.ground), over, -joined.bore)

    def told(self, seat: Metre) -> Told:
        """What the chosen model says at this seat; the tensions with no peak flattened."""
        if self.asked.model == RINGS:
            return self._by_rings(seat)
        joined = self.joint(seat)
        if joined.healed:
            self.taken.append(Taken("outline", "edges a hair apart as one", "", "ours"))
        rough, tight = (joined.pressure(self.overlap(joined, seat, v)) for v in (self.lost, 0.0))
        return Told(
            joined.normal_force(rough),
            joined.contact_length(self.overlap(joined, seat, self.lost)),
            joined.bore_tension(tight, *HOOP_WINDOW),
            joined.largest_tension(tight),
            joined.growth(rough),
        )

    def _by_rings(self, seat: Metre) -> Told:
        rough, tight = self.rings(seat, self.lost), self.rings(seat, 0.0)
        start, length = self.bore_start, self.bore_end - self.bore_start
        hoop, any_ = (
            float(tight.largest_hoop(*(start + s * length for s in window))[0])
            for window in (HOOP_WINDOW, TENSION_WINDOW)
        )
        return Told(
            float(rough.normal_force[0]),
            float(rough.contact_length[0]),
            hoop,
            any_,
            float(rough.largest_growth()[0]),
        )


def _less_chamfers(asked: FitInput) -> tuple[tuple[Metre, Metre, Metre, Metre | None], ...]:
    """The pieces less a chamfer at either edge of the bore; RefusedInput where they have no room."""
    if asked.chamfer == 0:
        return asked.pieces
    _bore_ends(bore_line(asked.pieces, asked.bore))
    legs = asked.chamfer, asked.chamfer
    check_chamfers([Piece(*piece) for piece in asked.pieces], asked.bore, legs, "--chamfer")
    return chamfered(asked.pieces, asked.bore, legs)


def _profile(body: Mandrel, asked: FitInput) -> Profile | None:
    """The mandrel's diameters where they or the bore's bend; None for straight in straight."""
    if not asked.bore_readings:
        return profile_of(body)
    ends = np.array([0.0, body.ground_length])
    straight = Profile(ends, np.array([body.small_end, body.large_end]), body.taper)
    return profile_of(body) or straight


def _touch(asked: FitInput, known: _Known) -> Metre:
    if known.profile is None:
        straight = float(touch_position(asked.bore, known.small_end, known.taper))
        return straight + known.bore_start
    metal = known.line.outside > 0
    return float(touch_on(known.profile, known.sizes, known.line.edges, metal)[0])


def _travel(asked: FitInput, known: _Known, touch: Metre) -> tuple[Metre, str]:
    """Travel past touch (m), and a sentence where the push asked for is never reached."""
    if asked.travel is not None:
        return asked.travel, ""
    if asked.position is not None:
        return asked.position - touch, ""
    room = max(0.0, known.ground + known.bore_start - touch)
    reaches = where_it_reaches if known.profile is None else where_it_first_reaches
    found = reaches(lambda s: known.push_at(touch + s), asked.push or 0.0, 0.0, room)
    if found is None:
        return room, "that push is not reached before the leading face is at the large end"
    return found, ""


def _result(asked: FitInput, known: _Known, touch: Metre, travel: Metre, stalled: str) -> FitResult:
    seat = touch + travel
    told = known.told(seat)
    normal, contact = told.normal_force, told.contact_length
    length = known.bore_end - known.bore_start
    return FitResult(
        touch_position=touch,
        seat_position=seat,
        large_end_to_face=known.ground - seat,
        travel=travel,
        contact_length=contact,
        normal_force=normal,
        mean_pressure=normal / (np.pi * asked.bore * contact) if contact > 0 else 0.0,
        largest_bore_tension=told.bore_tension,
        largest_tension=told.tension,
        push_on_force=float(push_on_force(normal, known.friction_on, known.taper)),
        push_off_force=float(push_off_force(normal, known.friction_off, known.taper)),
        slip_torque=float(slip_torque(normal, known.friction_slip, asked.bore)),
        outside_growth=told.growth,
        bore_window=window_of(known.body, length, travel),
        assumed=tuple(known.taken),
        trouble=stalled or _trouble(known, touch, seat, normal),
        body=known.body,
    )


def _trouble(known: _Known, touch: Metre, seat: Metre, normal: Newton) -> str:
    """Why the answer is no, in words; empty where it is not. A rim may overhang the bore's ends."""
    if known.body.stations and (worn := beyond_use(known.body)):
        return f"it is {worn}"
    if touch <= known.bore_start:
        return "the bore is smaller than the small end: it does not go on"
    if seat - known.bore_start > known.ground + 1e-12:
        return "the leading face is past the large end: the work falls through or hangs over"
    if seat < known.bore_end - 1e-12:
        return "the far end of the bore hangs over the small end"
    if normal <= 0:
        return "it is loose there: nothing grips"
    if known.friction_off <= known.taper / 2:
        return "friction is below half the taper: it lets go by itself"
    return ""


def _bore_ends(line: BoreLine) -> tuple[Metre, Metre]:
    """Where the bore's metal begins and ends along z; RefusedInput where there is none."""
    metal = line.outside > 0
    if not metal.any():
        raise RefusedInput(
            "outline", "no piece that reaches the bore", "at least one without an inside"
        )
    return float(line.edges[:-1][metal][0]), float(line.edges[1:][metal][-1])
