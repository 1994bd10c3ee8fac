"""Constants and signs of stubs, soft mandrels and plug gauges, each broken once."""

from __future__ import annotations

from tests.mutant import Mutant

STUBS_AND_GAUGES = (
    Mutant(
        "a going end that may be under the smallest bore",
        "mechanics/plug_gauge.py",
        "(low + wear, low + wear + width)",
        "(low - wear, low - wear + width)",
    ),
    Mutant(
        "an end that does not go set round the largest bore",
        "mechanics/plug_gauge.py",
        "(high - width, high))",
        "(high - width / 2, high + width / 2))",
    ),
    Mutant(
        "a plug known one way only",
        "mechanics/plug_gauge.py",
        "max(share * band, 2 * known + hit)",
        "max(share * band, known + hit)",
    ),
    Mutant(
        "readings that reach to the ends of the zone",
        "mechanics/plug_gauge.py",
        "return zone[0] + known, zone[1] - known",
        "return zone[0], zone[1]",
    ),
    Mutant(
        "steps of a plug that may stand a tolerance apart",
        "making/gauge/worth.py",
        "APART = 1.5",
        "APART = 0.5",
    ),
    Mutant(
        "a stub as large as the bore and over",
        "making/stub/sizes.py",
        "spigot_high=asked.bore - clearance.low",
        "spigot_high=asked.bore + clearance.high",
    ),
    Mutant(
        "a stub as long as the work",
        "making/stub/sizes.py",
        'length = (1 - fact("stub_shorter").best) * asked.length',
        "length = asked.length",
    ),
    Mutant(
        "a screw that reaches the half cut threads",
        "making/stub/sizes.py",
        "length - thick - past + screw.pitch, asked.units",
        "length - thick - past - screw.pitch, asked.units",
    ),
    Mutant(
        "a plug whose travel opens by its taper on radius",
        "making/stub/slit.py",
        "return self.opens / self.taper",
        "return 2 * self.opens / self.taper",
    ),
    Mutant(
        "fingers that bend over the whole length of their slits",
        "making/stub/slit.py",
        "length - cone_length / 2, tables",
        "length, tables",
    ),
    Mutant(
        "an indicator that reads the change of diameter",
        "making/fine_feed.py",
        "return self.diameter_per_slide / 2 * travel",
        "return self.diameter_per_slide * travel",
    ),
    Mutant(
        "a soft mandrel larger to the tailstock",
        "making/soft/turned.py",
        "seat - taper * (asked.length + room)",
        "seat + taper * (asked.length + room)",
    ),
    Mutant(
        "a batch that sits twice as far apart",
        "making/soft/turned.py",
        "apart = (asked.bore_high - asked.bore) / taper",
        "apart = 2 * (asked.bore_high - asked.bore) / taper",
    ),
    Mutant(
        "a drawn bar over its name",
        "making/soft/as_drawn.py",
        "float(thrown_runout(bore, nominal - less))",
        "float(thrown_runout(bore, nominal - less) / 2)",
    ),
    Mutant(
        "a soft mandrel of the bore's own size, that grips nothing",
        "making/soft/turned.py",
        "seat = asked.bore + grip[1]",
        "seat = asked.bore - grip[1]",
    ),
    Mutant(
        "a hub too thick to tap that has no screw",
        "making/soft/screwed.py",
        "    if fits:",
        "    if fits and wall < 0:",
    ),
    Mutant(
        "a plug larger than the bore that the work must pass",
        "making/stub/plug.py",
        'largest = asked.bore - own("plug_under_bore")',
        'largest = 2 * asked.bore - own("plug_under_bore")',
    ),
    Mutant(
        "a plug with no room to be drawn in",
        "making/stub/plug.py",
        'travel + best_of(tables, "stub_facts")("plug_relief")',
        '0.0 * best_of(tables, "stub_facts")("plug_relief")',
    ),
    Mutant(
        "a thread that ends where the plug is still to be drawn in",
        "making/stub/slit.py",
        "screw_length - before + form.opens_most / taper + screw.pitch, units",
        "screw_length - before - form.opens_most / taper, units",
    ),
    Mutant(
        "a shoulder that bears on a hair",
        "making/stub/sizes.py",
        'return asked.face_inside + 2 * tables.holding_fact("stub_face_least").best',
        "return asked.face_inside",
    ),
    Mutant(
        "steps longer than a blind bore is deep",
        "making/gauge/form.py",
        "room = (asked.depth - clear - pilot - (steps - 1) * gap) / steps",
        "room = asked.depth / steps",
    ),
    Mutant(
        "a handle of the bore's own size",
        "making/gauge/form.py",
        'size + own("handle_over"), own("handle_least")',
        'size, own("handle_least")',
    ),
    Mutant(
        "a micrometer taken for a comparator",
        "making/gauge/worth.py",
        'return own("comparator_known") if asked.comparator else own(f"{finish}_known")',
        'return own("comparator_known")',
    ),
    Mutant(
        "a plug worn out only when it reads the smallest bore",
        "making/gauge/worth.py",
        "return self.smallest + self.known",
        "return self.smallest",
    ),
    Mutant(
        "a plug that goes deeper than the bottom",
        "making/gauge/form.py",
        "return min((x for x in (form.reach, bottom)",
        "return max((x for x in (form.reach, bottom)",
    ),
    Mutant(
        "a going end that fills a blind bore",
        "making/gauge/form.py",
        'asked.depth - pilot - own("blind_clear")',
        "asked.depth - pilot",
    ),
    Mutant(
        "a window at the seat that is said narrower than a hand hits",
        "making/soft/turned.py",
        "return low, max(high, low + self.window)",
        "return low, low",
    ),
    Mutant(
        "a window on short work that no hand hits",
        "making/soft/turned.py",
        "high = max(min(usual.high, most), low + window)",
        "high = min(usual.high, most)",
    ),
    Mutant(
        "a steep plug that is said to be set by its screw",
        "making/stub/slit.py",
        'slit.turns_needed < own("least_needed") or slit.turns_most',
        "slit.turns_most",
    ),
    Mutant(
        "a plug that may bear on next to nothing",
        "making/stub/slit.py",
        'if form.length - mouth.stands < own("plug_bears_least") - TOUCH',
        "if form.length < mouth.stands",
    ),
    Mutant(
        "a thin ring judged by twice its wall",
        "service/making/stub.py",
        '(min(part.ring_at(face).outside for face in "AB") - low) / 2',
        'min(part.ring_at(face).outside for face in "AB") - low',
    ),
)
