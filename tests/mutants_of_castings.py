"""Constants and signs of castings, spares and cutting lists, each broken once."""

from __future__ import annotations

from tests.mutant import Mutant

CASTINGS = (
    Mutant(
        "a pattern that the shrinkage is taken off",
        "mechanics/cast_metal.py",
        "return casting * (1 + shrinkage)",
        "return casting * (1 - shrinkage)",
    ),
    Mutant(
        "a shrinkage over the pattern",
        "mechanics/cast_metal.py",
        "return pattern / casting - 1",
        "return 1 - casting / pattern",
    ),
    Mutant(
        "draft by the sine",
        "mechanics/cast_metal.py",
        "return length * math.tan(angle)",
        "return length * math.sin(angle)",
    ),
    Mutant(
        "a cone by its two ends alone",
        "mechanics/cast_metal.py",
        "return one**2 + one * other + other**2",
        "return 1.5 * (one**2 + other**2)",
    ),
    Mutant(
        "a section that cools where it is joined",
        "mechanics/cast_metal.py",
        "2 * (width + thickness) - covered",
        "2 * (width + thickness)",
    ),
    Mutant(
        "draft that thins an inside's wall",
        "making/blank/rings.py",
        "(draft.outside, 1) if outside else (draft.inside, -1)",
        "(draft.outside, 1) if outside else (draft.inside, 1)",
    ),
    Mutant(
        "draft on one side only",
        "making/blank/rings.py",
        "size + way * 2 * draft_adds",
        "size + way * draft_adds",
    ),
    Mutant(
        "an outside with stock on one side",
        "making/blank/rings.py",
        "tidy(p.outside + 2 * side)",
        "tidy(p.outside + side)",
    ),
    Mutant(
        "a length with stock on one face",
        "making/blank/rings.py",
        "(2 * face if p.end >= wheel.length - MEETS else face)",
        "(face if p.end >= wheel.length - MEETS else face)",
    ),
    Mutant(
        "a core without stock",
        "making/blank/core.py",
        "smallest - 2 * stock",
        "smallest",
    ),
    Mutant(
        "a hub whose faces do not cool",
        "mechanics/cast_metal.py",
        "(width - joined) + 2 * face)",
        "(width - joined))",
    ),
    Mutant(
        "a hub that its web cools too",
        "mechanics/cast_metal.py",
        "math.pi * outside * (width - joined)",
        "math.pi * outside * width",
    ),
    Mutant(
        "a riser too low for its width",
        "mechanics/cast_metal.py",
        "(diameter - 4 * modulus_needed)",
        "(diameter - 3 * modulus_needed)",
    ),
    Mutant(
        "a pour without its riser",
        "making/blank/melt.py",
        "(casting + fed) * (1 + sprue)",
        "casting * (1 + sprue)",
    ),
    Mutant(
        "a neck as long as it is thick",
        "making/blank/feed.py",
        'tables.casting_fact("neck_long").best * neck',
        "neck",
    ),
    Mutant(
        "a core that its own stepping down breaks",
        "making/blank/core.py",
        "slender.high * wish.room",
        "slender.high * wish.size",
    ),
    Mutant(
        "sand in a hole that draws without draft",
        "making/blank/rings.py",
        "hole - 2 * draft_adds(abs(z - far), draft.inside)",
        "hole",
    ),
    Mutant(
        "spares whose good ones count once",
        "mechanics/spares.py",
        "wanted * math.log1p(-scrap)",
        "math.log1p(-scrap)",
    ),
    Mutant(
        "spares that come in any order",
        "mechanics/spares.py",
        "math.lgamma(wanted + bad) - math.lgamma(wanted)",
        "math.lgamma(wanted + bad + 1) - math.lgamma(wanted + 1)",
    ),
    Mutant(
        "a cut behind the last piece of a bar that is used up",
        "making/bars/cutting_list.py",
        "(0.0 if end_loss else kerf)",
        "0.0",
    ),
    Mutant(
        "a cut that takes nothing",
        "making/bars/cutting_list.py",
        "Wanted(length, length + kerf, count",
        "Wanted(length, length, count",
    ),
    Mutant(
        "an end that is used after all",
        "making/bars/cutting_list.py",
        "return length - end_loss +",
        "return length +",
    ),
    Mutant(
        "a bound that limited bars do not lower",
        "making/bars/cutting_priced.py",
        "return float(max(0.0, share * value - extra))",
        "return float(max(0.0, share * value + extra + 1e3))",
    ),
)
