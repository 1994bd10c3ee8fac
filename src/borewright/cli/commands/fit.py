"""borewright fit: one bore on one plain taper mandrel."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from borewright.cli.out import record_json, say, say_json, warn
from borewright.cli.stations_text import NEAR, Places, read_places, read_stations
from borewright.cli.typed import (
    FORCE,
    LENGTH,
    NUMBER,
    PRESSURE,
    TAPER,
    given,
    json_option,
    needed,
    taken_words,
    units_option,
)
from borewright.errors import RefusedInput
from borewright.quantities.read import (
    length_system,
    read_force,
    read_length,
    read_number,
    read_pressure,
    read_roughness,
    read_taper,
)

if TYPE_CHECKING:
    from borewright.job.records import BoreReading
    from borewright.service.fit_records import FitInput, FitResult, Piece


@click.command("fit")
@click.option("--bore", type=LENGTH, help="Diameter of the hole.")
@click.option(
    "--bore-at", "bore_at", nargs=2, type=LENGTH, multiple=True, metavar="DEPTH DIAMETER",
    help="A depth from the leading face, the bore there; may repeat.",
)  # fmt: skip
@click.option("--outside", type=LENGTH, help="Outside diameter of plain work.")
@click.option("--length", type=LENGTH, help="Length of plain work.")
@click.option(
    "--outline", help="Pieces 'from,to,outside[,inside]; ...' along z from the leading face."
)
@click.option("--chamfer", type=LENGTH, help="Leg of the chamfer at either edge of the bore.")
@click.option("--material", help="Material of the work.")
@click.option("--mandrel", type=LENGTH, help="Nominal size of the mandrel.")
@click.option(
    "--at", "at", nargs=2, type=LENGTH, multiple=True, metavar="X DIAMETER",
    help="A place from one end of the ground length, the diameter there; two or more.",
)  # fmt: skip
@click.option("--mandrel-bore", type=LENGTH, help="Diameter of the mandrel's own bore.")
@click.option("--travel", type=LENGTH, help="How far past first touch it is pressed.")
@click.option("--position", type=LENGTH, help="Small end to leading face once pressed.")
@click.option("--push", type=FORCE, help="Force it is pressed with.")
@click.option("--taper", type=TAPER, help="Taper on diameter per length.")
@click.option("--small-end", type=LENGTH, help="Diameter at the small end of the ground length.")
@click.option("--ground-length", type=LENGTH, help="Ground length of the mandrel.")
@click.option("--friction", type=NUMBER, help="Friction, for pressing and slipping alike.")
@click.option("--roughness", type=LENGTH, help="Rz of work + mandrel; 0.8 of it is lost.")
@click.option(
    "--model", default="contact", help="contact: two elastic bodies; rings: the pencil check."
)
@click.option("--work-modulus", type=PRESSURE, help="Young's modulus of the work.")
@click.option("--work-poisson", type=NUMBER, help="Poisson's ratio of the work.")
@click.option("--mandrel-modulus", type=PRESSURE, help="Young's modulus of the mandrel.")
@click.option("--mandrel-poisson", type=NUMBER, help="Poisson's ratio of the mandrel.")
@units_option
@json_option
def command(as_json: bool, **typed: Any) -> int:
    """Where a bore sits on a plain taper mandrel, and what the fit does."""
    asked = _read(typed)
    from borewright.reference.library import tables
    from borewright.service.fitted import fit

    result = fit(asked, tables())
    say_json(record_json(result)) if as_json else say(_words(result, _units(typed)))
    if result.trouble:
        warn(f"borewright: no: {result.trouble}")
    return 3 if result.trouble else 0


def _units(typed: dict[str, Any]) -> Any:
    typed_first = typed["bore"] or next((size for _, size in typed["bore_at"]), "")
    return typed["units"] or length_system(typed_first) or "mm"


def _read(typed: dict[str, Any]) -> FitInput:
    """The typed text as numbers. Everything is refused here, before anything heavy is loaded."""
    bare = typed["units"]
    if typed["model"] not in ("rings", "contact"):
        raise RefusedInput("--model", repr(typed["model"]), "rings or contact")
    readings = read_places(typed["bore_at"], "--bore-at", bare)
    bore = _bore(typed, readings)
    length = given(read_length, typed["ground_length"], "--ground-length", bare=bare)
    stations = _stations(typed, length)
    mandrel = _mandrel(typed, stations)
    pieces = _pieces(typed, bore)
    from borewright.job.records import BoreReading

    bore_readings = tuple(BoreReading(z, d) for z, d in readings)
    _check_readings(pieces, bore, bore_readings)
    settings = ("travel", "position", "push")
    if sum(typed[name] is not None for name in settings) != 1:
        found = " and ".join(f"--{n}" for n in settings if typed[n] is not None) or "none of them"
        raise RefusedInput("--travel, --position, --push", found, "exactly one of them")
    from borewright.service.fit_records import FitInput

    return FitInput(
        model=typed["model"],
        bore=bore,
        mandrel_bore=_none_or(typed, "mandrel_bore"),
        chamfer=_none_or(typed, "chamfer"),
        pieces=pieces,
        mandrel=mandrel,
        stations=stations,
        bore_readings=bore_readings,
        material=typed["material"],
        travel=given(read_length, typed["travel"], "--travel", bare=bare, zero=True),
        position=given(read_length, typed["position"], "--position", bare=bare),
        push=given(read_force, typed["push"], "--push", bare=bare),
        taper=given(read_taper, typed["taper"], "--taper"),
        small_end=given(read_length, typed["small_end"], "--small-end", bare=bare),
        ground_length=length,
        friction=_ratio(typed["friction"], "--friction", 2.0),
        roughness=given(read_roughness, typed["roughness"], "--roughness", bare=bare, zero=True),
        work_modulus=given(read_pressure, typed["work_modulus"], "--work-modulus", bare=bare),
        work_poisson=_ratio(typed["work_poisson"], "--work-poisson", 0.5),
        mandrel_modulus=given(
            read_pressure, typed["mandrel_modulus"], "--mandrel-modulus", bare=bare
        ),
        mandrel_poisson=_ratio(typed["mandrel_poisson"], "--mandrel-poisson", 0.5),
    )


def _bore(typed: dict[str, Any], readings: Places) -> float:
    """The bore as stated, else the smallest of its readings."""
    if typed["bore"] is None and readings:
        return min(size for _, size in readings)
    example = "a diameter, such as 18.01mm, or --bore-at"
    text = needed(typed["bore"], "--bore", example)
    bore: float = read_length(text, "--bore", bare=typed["units"])
    if any(abs(size - bore) > NEAR * bore for _, size in readings):
        found = f"a bore of {text} beside it"
        raise RefusedInput("--bore-at", found, "diameters within a tenth of --bore")
    return bore


def _stations(typed: dict[str, Any], length: float | None) -> Places:
    """The mandrel's readings; they say what its small end and taper are."""
    if not typed["at"]:
        return ()
    beside = [f"--{n}" for n in ("small-end", "taper") if typed[n.replace("-", "_")] is not None]
    if beside:
        allowed = "one of them; an end can be one of the places"
        raise RefusedInput("--at", f"{' and '.join(beside)} beside it", allowed)
    return read_stations(typed["at"], length, typed["units"])


def _mandrel(typed: dict[str, Any], stations: Places) -> float:
    """The nominal size; where it was measured the mean of its readings will do."""
    if typed["mandrel"] is None and stations:
        return sum(size for _, size in stations) / len(stations)
    example = "a nominal size, such as 18mm, or --at"
    text = needed(typed["mandrel"], "--mandrel", example)
    size: float = read_length(text, "--mandrel", bare=typed["units"])
    far = next((d for _, d in stations if abs(d - size) > NEAR * size), None)
    if far is not None:
        found = f"{1e3 * far:.4g} mm on a mandrel of {text}"
        raise RefusedInput("--at", found, "diameters within a tenth of --mandrel")
    return size


def _check_readings(
    pieces: tuple[Piece, ...], bore: float, readings: tuple[BoreReading, ...]
) -> None:
    if readings:
        from borewright.job.outline import check_pieces
        from borewright.job.records import Bore
        from borewright.job.records import Piece as Ring

        largest = max(r.size for r in readings)
        check_pieces([Ring(*p) for p in pieces], Bore(largest, readings=readings), "--bore-at")


def _none_or(typed: dict[str, Any], name: str) -> float:
    """A length that is 0 where it was not typed."""
    where = f"--{name.replace('_', '-')}"
    size: float | None = given(read_length, typed[name], where, bare=typed["units"], zero=True)
    return size or 0.0


def _hoop(r: Any, show: Any) -> str:
    if r.largest_bore_tension <= 0:
        return "Away from its ends the bore sees no hoop tension"
    return f"The bore sees {show.pressure(r.largest_bore_tension)} of hoop tension"


def _ratio(text: str | None, where: str, most: float) -> float | None:
    return None if text is None else read_number(text, where, zero=True, most=most)


def _pieces(typed: dict[str, Any], bore: float) -> tuple[Piece, ...]:
    bare, outline = typed["units"], typed["outline"]
    if outline is not None:
        if typed["outside"] is not None or typed["length"] is not None:
            raise RefusedInput(
                "--outline", "--outside or --length beside it", "either the outline or those two"
            )
        from borewright.cli.outline_text import read_outline

        return read_outline(outline, bore, bare)
    outside = read_length(
        needed(typed["outside"], "--outside", "a diameter, or --outline"), "--outside", bare=bare
    )
    length = read_length(
        needed(typed["length"], "--length", "a length, or --outline"), "--length", bare=bare
    )
    if outside <= bore:
        size = typed["bore"] or f"{1e3 * bore:.6g} mm"
        raise RefusedInput("--outside", typed["outside"], f"more than the bore, {size}")
    return ((0.0, length, outside, None),)


def _words(r: FitResult, units: Any) -> str:
    from borewright.quantities.show import Show
    from borewright.service.fit_words import measured_lines

    s = Show(units)
    window = f"With this travel the mandrel takes bores of {s.band(*r.bore_window, 'bore')}."
    if r.contact_length == 0:
        return window if r.bore_window[0] < r.bore_window[1] else "No bore fits with this travel."
    lines = [
        f"It first touches {s.length(r.touch_position)} from the small end; "
        f"pressed {s.length(r.travel)} further the leading face is at {s.length(r.seat_position)}, "
        f"{s.length(r.large_end_to_face)} short of the large end of the ground length.",
        f"It bears on {s.length(r.contact_length)} with {s.force(r.normal_force)} in all, "
        f"{s.pressure(r.mean_pressure)} on average.",
        f"Push on {s.force(r.push_on_force)}, push off {s.force(r.push_off_force)}, "
        f"slips at {s.torque(r.slip_torque)} with no load along the mandrel.",
        f"{_hoop(r, s)} ({s.pressure(r.largest_tension)} near the face); "
        f"the outside grows {s.small(r.outside_growth)}.",
        window,
    ]
    return "\n".join([*lines, *measured_lines(r, s), taken_words(r.assumed, s)])
