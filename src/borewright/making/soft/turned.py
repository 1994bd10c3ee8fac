"""The bar turned to the bore: a hair over it at the leading face, smaller to the tailstock.

The hair is what holds: pushed on by hand the work stops short, where bar and bore are of one size.

Its tapered part reaches a little past the work at both ends, and for a batch further towards the
headstock, where the larger bores come to sit: (largest - smallest) / taper.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from borewright.errors import OutsideModel
from borewright.making.cannot import Cannot
from borewright.making.facts import best_of
from borewright.making.shop_sizes import down_to_shop, to_tenth, up_to_rule, up_to_shop
from borewright.making.soft.asked import SoftAsked
from borewright.making.soft.ends import Ends, ends_of
from borewright.mechanics.fine_angle import angle_of_taper, indicator_over, step_table
from borewright.mechanics.parallel import set_over
from borewright.quantities.show import Show
from borewright.quantities.si import Metre, MetrePerMetre, Newton, Radian
from borewright.reference.library import Tables


@dataclass(frozen=True, slots=True)
class TurnedBar:
    """Lengths in m. `room`: tapered part past each face; `spread`: where a batch comes to sit.

    `seat` is the size at the leading face, `grip` (low, likely, high) what it is over the bore there,
    `window` the narrowest that its limits are said; `set_over` that of the tailstock for the whole length.
    `stops` and `depths`: the taper as a staircase of cuts from the free end.
    """

    taper: MetrePerMetre
    room: Metre
    spread: Metre
    grip: tuple[Metre, Metre, Metre]
    seat: Metre
    large: Metre
    small: Metre
    stock: Metre
    ends: Ends
    length: Metre
    body: Metre
    slide_angle: Radian
    set_over: Metre
    indicator: Metre
    travel: Metre
    stops: tuple[Metre, ...]
    depths: tuple[Metre, ...]
    push: Newton
    out_of_jaws: Metre
    tail: Metre
    window: Metre

    @property
    def head(self) -> Metre:
        """From the left end to where the tapered part begins."""
        return self.length - self.body - self.tail

    @property
    def leading_face(self) -> Metre:
        """From the left end to the leading face of the smallest bore."""
        return self.head + self.room + self.spread

    def seat_limits(self, units: Literal["inch", "mm"]) -> tuple[Metre, Metre]:
        """Smallest and largest size at the leading face (m), to what a shop reads."""
        bore = self.seat - self.grip[1]
        low, high = (to_tenth(bore + over, units) for over in (self.grip[0], self.grip[2]))
        return low, max(high, low + self.window)


def turned_bar(asked: SoftAsked, tables: Tables) -> TurnedBar | Cannot:
    """The mandrel for a bore or a batch; `Cannot` where it is too large, or the batch too wide."""
    fact, made, show = tables.holding_fact, best_of(tables, "mandrel_making"), Show(asked.units)
    no = too_large(asked, tables)
    if no is not None:
        return no
    taper = fact("soft_taper").best
    units = asked.units
    room = up_to_rule(best_of(tables, "stub_facts")("seat_room") * asked.bore, units)
    apart = (asked.bore_high - asked.bore) / taper
    spread = up_to_rule(apart, units) if apart else 0.0
    grip = _grip(asked, taper, tables)
    seat = asked.bore + grip[1]
    large, small = seat + taper * (spread + room), seat - taper * (asked.length + room)
    reduced = down_to_shop(small - made("end_over"), units)
    if reduced <= 0:
        return Cannot(
            f"A bore of {show.bore(asked.bore)} leaves no ends to turn down.",
            "Drill rod of the size, bonded in, carries it.",
        )
    try:
        stock = tables.bar_for(large + made("bar_over"), asked.units).diameter
    except OutsideModel as outside:
        return Cannot(f"There is no bar for it: {outside.allowed}.", "Hold it in another way.")
    ends = ends_of(asked, stock, reduced, tables)
    body = 2 * room + spread + asked.length
    chuck = asked.held == "chuck"
    out = up_to_shop(tables.ranged("stub_facts", "out_over").best, units)
    before = out if chuck else ends.past - room
    after = 0.0 if chuck else ends.past - room
    length = ends.grip + before + body + after
    if chuck:
        length = up_to_shop(length, units)
    longest = made("long_and_thin") * asked.bore
    if length > longest:
        why = (
            f"the bores of the batch come to sit up to {show.length(spread)} apart on it"
            if spread > asked.length
            else f"the bore is {show.length(asked.length)} long"
        )
        return Cannot(
            f"It would be {show.length(length)} long, over {made('long_and_thin'):g} times the bore, because "
            f"{why}; it bends under the tool.",
            "Sort the batch by size, or hold the work in another way.",
        )
    step = fact(f"stub_step_{asked.units}").best
    travel = 0.0254 if asked.units == "inch" else 0.025
    stairs = step_table(body, taper, step) if taper * body > step else ((), ())
    return TurnedBar(
        taper=taper,
        room=room,
        spread=spread,
        grip=grip,
        seat=seat,
        large=large,
        small=small,
        stock=stock,
        ends=ends,
        length=length,
        body=body,
        slide_angle=float(angle_of_taper(taper)),
        set_over=float(set_over(taper, length)),
        indicator=float(indicator_over(taper, travel)),
        travel=travel,
        stops=tuple(float(x) for x in stairs[0]),
        depths=tuple(float(x) for x in stairs[1]),
        push=fact("push_per_bore").best * asked.bore,
        out_of_jaws=length - ends.grip,
        tail=after,
        window=_window(asked, tables),
    )


def _grip(asked: SoftAsked, taper: MetrePerMetre, tables: Tables) -> tuple[Metre, Metre, Metre]:
    """What the bar stands over the bore at the leading face (m); short work must still start.

    On short work the low end gives way first, to half of what it may be, then the high end: the
    window stays one that a hand hits.
    """
    usual, window = tables.ranged("stub_facts", "soft_grip"), _window(asked, tables)
    most = starting_grip(taper, asked.length)
    low = min(usual.low, max(most - window, most / 2))
    high = max(min(usual.high, most), low + window)
    return low, min(max(min(usual.best, most), low), high), high


def starting_grip(taper: MetrePerMetre, length: Metre) -> Metre:
    """Most that a bar is over the bore (m) so that the work starts by hand by half its length.

    >>> round(starting_grip(1 / 2000, 0.008) * 1e6, 6)
    2.0
    """
    return taper * length / 2


def _window(asked: SoftAsked, tables: Tables) -> Metre:
    return tables.ranged("stub_facts", f"seat_window_{asked.units}").best


def too_large(asked: SoftAsked, tables: Tables) -> Cannot | None:
    """Why a bar of this size is not turned between centers; None where it is."""
    largest, show = tables.holding_fact("soft_largest").best, Show(asked.units)
    if asked.bore <= largest:
        return None
    return Cannot(
        f"A bar over {show.length(largest)} is heavy to turn between centers.",
        "A plate with a low spigot does the same.",
    )
