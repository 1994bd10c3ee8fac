"""shelf show: each tool on a shelf in one line, both units."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from borewright.job.records import Machine, MandrelNote
from borewright.job.tools import (
    OwnBoringBar,
    OwnDog,
    OwnDrill,
    OwnGauge,
    OwnHammer,
    OwnHolding,
    OwnPress,
    OwnReamer,
    OwnVice,
)
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

FLATS = {"both": "flats at both ends", "none": "no flats", "unknown": ""}
NOT_SAID = "nothing more stated"


def mandrel_words(note: MandrelNote, show: Show) -> str:
    """A mandrel.

    >>> mandrel_words(MandrelNote(0.0127, small_end=0.012687, hardness="hard"), Show("inch"))
    '1/2 in (12.7 mm); small end 0.4995 in (12.687 mm); hard'
    """
    said = [
        _said("small end", note.small_end, show.bore),
        _said("large end", note.large_end, show.bore),
        _said("taper", note.taper, show.taper),
        _said("ground length", note.ground_length, show.length),
        _said("overall length", note.overall_length, show.length),
        f"measured at {len(note.stations)} places" if note.stations else "",
        f"bored {show.length(note.hole)} through" if note.hole else "",
        "" if note.hardness == "unknown" else note.hardness,
        FLATS.get(note.flats, f"flat at the {note.flats} end"),
        note.marks and f"marked {note.marks!r}",
        note.condition,
        note.place and f"kept in {note.place}",
    ]
    return _joined(show.length(note.nominal), said)


def lathe_words(machine: Machine, show: Show) -> str:
    """A lathe."""
    said = [
        _many("speeds", machine.speeds, show.spindle),
        _many("feeds", machine.feeds, show.feed),
        _said("swing over cross slide", machine.swing_over_cross_slide, show.length),
        _said("between centers", machine.between_centers, show.length),
        _said("power", machine.power, show.power),
        _many("power at each speed", machine.power_by_gear, show.power),
        "" if machine.dial == "unknown" else f"cross-slide dial counts {machine.dial}",
    ]
    return _joined("", said)


def press_words(press: OwnPress, show: Show) -> str:
    """A press."""
    said = [
        _said("force", press.force, show.force),
        _said("daylight", press.daylight, show.length),
        _said("throat", press.throat, show.length),
        _said("ram travel", press.ram_travel, show.length),
        _said("table slot", press.table_slot, show.length),
    ]
    return _joined(press.kind, said)


def vice_words(vice: OwnVice, show: Show) -> str:
    """The vice."""
    said = [
        _said("opens to", vice.opening, show.length),
        _said("force", vice.force, show.force),
    ]
    return _joined("", said)


def hammer_words(hammer: OwnHammer, show: Show) -> str:
    """The hammer."""
    face = hammer.face and f"{hammer.face} face"
    return _joined("", [_said("", hammer.mass, show.weight), face])


def dog_words(dog: OwnDog, show: Show) -> str:
    """A lathe dog."""
    tail = "" if dog.tail == "unknown" else f"{dog.tail} tail"
    return _joined("", [_range(dog.smallest, dog.largest, show), tail])


def drill_words(drill: OwnDrill, show: Show) -> str:
    """A drill, or a set of them.

    >>> drill_words(OwnDrill(by="by 64ths", largest=0.0254), Show("inch"))
    'a set by 64ths; up to 1 in (25.4 mm)'
    """
    if drill.size is not None:
        return show.bore(drill.size) if drill.name else show.length(drill.size)
    return _joined(f"a set {drill.by}", [_range(drill.smallest, drill.largest, show)])


def boring_bar_words(bar: OwnBoringBar, show: Show) -> str:
    """The boring bars together."""
    said = [
        _said("goes into", bar.smallest_bore, show.length),
        _said("reaches", bar.reach, show.length),
    ]
    return _joined("", said)


def reamer_words(reamer: OwnReamer, show: Show) -> str:
    """A reamer, and how it really cuts.

    >>> reamer_words(OwnReamer(0.0127, cuts=-5.08e-6), Show("inch"))
    '1/2 in (12.7 mm); cuts 0.0002 in (5.1 µm) under'
    """
    cuts = reamer.cuts
    way = "" if not cuts else " over" if cuts > 0 else " under"
    really = "" if cuts is None else f"cuts {show.small(abs(cuts))}{way}"
    return _joined(show.length(reamer.size), [really])


def gauge_words(gauge: OwnGauge, show: Show) -> str:
    """A gauge for bores."""
    sure = "" if gauge.uncertainty is None else f"{show.small(gauge.uncertainty)} either way"
    return _joined("", [_range(gauge.smallest, gauge.largest, show), sure])


def _range(smallest: Metre | None, largest: Metre | None, show: Show) -> str:
    if smallest is None:
        return "" if largest is None else f"up to {show.length(largest)}"
    if largest is None:
        return f"from {show.length(smallest)}"
    return f"{show.length(smallest)} to {show.length(largest)}"


def _said(what: str, value: float | None, shown: Callable[[Any], str]) -> str:
    return "" if value is None else f"{what} {shown(value)}".strip()


def _many(what: str, values: tuple[float, ...], shown: Callable[[Any], str]) -> str:
    return f"{what} {', '.join(shown(value) for value in values)}" if values else ""


def _joined(first: str, said: list[str]) -> str:
    return "; ".join(part for part in (first, *said) if part) or NOT_SAID


def holding_words(tool: OwnHolding, show: Show) -> str:
    """A chuck, a set of collets …, with the sizes that it takes."""
    ends = [show.length(e) for e in (tool.smallest, tool.largest) if e is not None]
    joined = " to ".join(ends) if len(ends) == 2 else "".join(ends)
    named = f"{tool.name} ({tool.kind})" if tool.name else tool.kind
    return f"{named}, takes {joined}" if joined else named


def have_not_words(name: str, show: Show) -> str:
    """What is not there, in the owner's word."""
    return name
