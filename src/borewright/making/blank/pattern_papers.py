"""The sheet of the pattern: its sizes by every source's shrinkage, and what the first casting tells."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.made_casting import MadeCasting
from borewright.answer.papers import Grid, Said, Sheet
from borewright.job.records import Piece
from borewright.making.blank.casting_words import named_rings, shrink_words
from borewright.making.blank.mould_words import mould_words
from borewright.making.blank.wheel import tidy
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


def pattern_sheet(made: MadeCasting, show: Show, tables: Tables) -> Sheet:
    said = tables.shrinkages(made.material)
    columns = {row.as_published: row.shrinkage for row in said}
    names = [tables.source(row.source).citation for row in said]
    sizes = sizes_of(made)
    rows = [
        (
            name,
            show.depth(size),
            show.depth(made.pattern(size)),
            *(show.depth(size * (1 + s)) for s in columns.values()),
        )
        for name, size in sizes
    ]
    heads = ("size", "casting", "pattern as taken", *(f"by {published}" for published in columns))
    sources = "; ".join(f"{s.as_published}: {name}" for s, name in zip(said, names, strict=True))
    return Sheet(
        "Pattern",
        (
            Said("Shrinkage", (*_shrink_lines(made, show, tables), f"What the sources say: {sources}.")),
            Grid("Sizes of the pattern", heads, tuple(rows), (
                "Pattern = casting x (1 + shrinkage), sizes at the thin ends of the draft.",
                "A rim that spokes or a core hold back shrinks less than its hub.",
            )),
            Said("Draft, corners, parting", mould_words(made, show)),
            Said("First casting", (
                "Measure one size, the longest that can be measured well, on pattern and casting, both cold. "
                "`--pattern-measured` and `--casting-measured` then give the shop's own shrinkage, and the next pattern by it.",
            )),
            Grid("Shrinkage found", ("casting", "pattern measured", "casting measured", "shrinkage"), (("1", "", "", ""), ("2", "", "", ""))),
        ),
    )  # fmt: skip


def _shrink_lines(made: MadeCasting, show: Show, tables: Tables) -> tuple[str, ...]:
    said = f"The pattern is made {shrink_words(made)}."
    spread = made.outside * (made.shrink.high - made.shrink.low)
    if made.shrink.by != "middle of the books":
        return (said,)
    enough = spread / 4 + tables.allowance("skin_depth").high <= made.stock("outside")
    taken_up = (
        "takes that up with the skin"
        if enough
        else "does not take that up with the skin: cast one first"
    )
    return (
        said,
        f"The sources part by {show.depth(spread)} on the outside: the middle misses either by half of that. The stock on a side, "
        f"{show.depth(made.stock('outside'))}, {taken_up}. A shop's own first casting decides.",
    )


def sizes_of(made: MadeCasting) -> list[tuple[str, Metre]]:
    """Every size of the casting as rings, each once, in words."""
    found = [("outside", made.outside), ("length", made.length)]
    for name, piece in named_rings(made):
        found += _ring_sizes(made, name, piece)
    if made.boss:
        found += [("boss, diameter", made.boss.diameter), ("boss, length", made.boss.length)]
    if made.core:
        found.append(("core box, diameter", made.core.diameter))
    if made.sand_hole:
        found.append(("hole left open, widest", made.sand_hole))
    return list(dict.fromkeys(found))


def _ring_sizes(made: MadeCasting, name: str, piece: Piece) -> Iterator[tuple[str, Metre]]:
    if name == "body":
        return
    if name == "hub" and piece.outside < made.outside:
        yield "outside of the hub", piece.outside
    if name == "rim" and piece.inside and piece.outside >= made.outside:
        hubs = [p.outside for p in made.pieces if p.inside is None]
        if piece.inside not in hubs:
            yield "inside of the rim", piece.inside
    if piece.start > 0.0:
        yield f"face A to the {name}", piece.start
    if piece.end - piece.start < made.length:
        along = {"hub": "length", "rim": "width"}.get(name, "thickness")
        yield f"{along} of the {name}", tidy(piece.end - piece.start)
