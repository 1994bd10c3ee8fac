"""Constants and signs of what the shop makes itself, each broken once."""

from __future__ import annotations

from tests.mutant import Mutant

MAKING = (
    Mutant(
        "a set-over by the length of the taper",
        "making/mandrel/design.py",
        "set_over=float(set_over(form.taper, form.overall_length)),",
        "set_over=float(set_over(form.taper, form.ground_length)),",
    ),
    Mutant(
        "a set-over by the whole taper",
        "mechanics/parallel.py",
        "return taper * between_centers / 2",
        "return taper * between_centers",
    ),
    Mutant(
        "a table read by the whole taper",
        "making/mandrel/design.py",
        "rise=base * form.taper / 2,",
        "rise=base * form.taper,",
    ),
    Mutant(
        "a stock that forgets the length",
        "making/mandrel/design.py",
        '+ fact("grinding_stock_per_length").best * form.overall_length',
        "",
    ),
    Mutant(
        "a bend as large as the stock",
        "making/mandrel/design.py",
        'fact("bend_share").best * taken',
        "taken",
    ),
    Mutant(
        "a zone by the middle of its limits",
        "mechanics/mandrel_zone.py",
        "low, high = self.ends(held.low_at)[1], self.ends(held.high_at(ground))[0]",
        "low, high = self.ends(held.low_at)[0], self.ends(held.high_at(ground))[1]",
    ),
    Mutant(
        "a smallest bore that runs off the small end",
        "mechanics/mandrel_zone.py",
        "return max(0.0, self.length + self.free_small - self.travel)",
        "return max(0.0, self.free_small - self.travel)",
    ),
    Mutant(
        "a largest bore without room for its travel",
        "mechanics/mandrel_zone.py",
        "return ground - self.free_large - self.travel",
        "return ground - self.free_large",
    ),
    Mutant(
        "a correction of the tailstock by the planes' distance alone",
        "making/mandrel/route_finish.py",
        "moved = step / 2 * lever",
        "moved = step / 2",
    ),
    Mutant(
        "a DXF at its size on paper",
        "drawing/dxf.py",
        "page = _Page(drawing.modelspace(), scene.height, 1.0 / scale / millimetres)",
        "page = _Page(drawing.modelspace(), scene.height, 1.0 / millimetres)",
    ),
)
