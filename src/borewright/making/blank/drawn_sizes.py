"""What the drawings of casting and pattern dimension: rings at their thin ends, lengths, drafts, spokes."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.answer.drawn_part import (
    Across,
    Along,
    Limits,
    Place,
    Pointed,
    SpokeRing,
    Stretch,
)
from borewright.answer.made_casting import MadeCasting
from borewright.job.records import Piece
from borewright.job.web import MEETS, between
from borewright.making.blank.wheel import tidy
from borewright.quantities.show import Show
from borewright.quantities.si import Metre


@dataclass(frozen=True, slots=True)
class Scaled:
    """A casting drawn `times` its size: 1 for itself, 1 + shrinkage for its pattern."""

    made: MadeCasting
    times: float

    @property
    def decimal(self) -> bool:
        """Sizes of a pattern are said in decimals all through."""
        return self.times != 1.0

    def size(self, size: Metre, after: str = "") -> Limits:
        """A size of the casting as this drawing has it."""
        return Limits(tidy(self.times * size), after=after, decimal=self.decimal)

    def at(self, z: Metre) -> Metre:
        """A place along it."""
        return tidy(self.times * z)


def spoked(made: MadeCasting) -> tuple[Piece, ...]:
    """The rings of the casting that are spokes and not metal all round."""
    if made.spokes is None:
        return ()
    return between(made.pieces, made.wheel.bore.size)


def whole_stretches(made: MadeCasting) -> tuple[Stretch, ...]:
    """What is drawn as rings: all, or all but the ring of the spokes."""
    open_rings = spoked(made)
    return tuple(s for s in made.stretches if not any(_of(s, p) for p in open_rings))


def _of(stretch: Stretch, piece: Piece) -> bool:
    """Whether a stretch is part of a ring."""
    middle = (stretch.start + stretch.end) / 2
    inside = stretch.inside - (piece.inside or 0.0)
    return (
        piece.start < middle < piece.end
        and abs(inside) < MEETS
        and stretch.outside <= piece.outside + MEETS
    )


def spoke_ring(drawn: Scaled) -> SpokeRing | None:
    """The spokes as a drawing has them."""
    made = drawn.made
    rings = spoked(made)
    if made.spokes is None or not rings:
        return None
    ring = rings[0]
    return SpokeRing(
        made.spokes.number,
        drawn.at(ring.start),
        drawn.at(ring.end),
        drawn.at(ring.inside or 0.0),
        drawn.at(ring.outside),
        drawn.at(made.spokes.width),
    )


def across_sizes(drawn: Scaled) -> tuple[Across, ...]:
    """Every diameter at its thin end, on the side where that end is."""
    made = drawn.made
    rim = max(made.pieces, key=lambda p: p.outside)
    found = [_at_thin_end(drawn, rim, made.outside, "outside")]
    sizes = {p.outside: p for p in made.pieces if p is not rim and p.inside is None}
    found += [_at_thin_end(drawn, p, size, "hub") for size, p in sizes.items()]
    if rim.inside is not None and rim.inside not in sizes:
        found.append(_at_thin_end(drawn, rim, rim.inside, "rim-inside"))
    if made.sand_hole:
        hole = drawn.size(made.sand_hole, "hole, at the ends")
        found.append(Across(drawn.at(made.length), hole, "right", "sand-hole"))
    if made.boss:
        at = -made.boss.length if made.boss.face == "A" else made.length + made.boss.length
        size = drawn.size(made.boss.diameter, "boss")
        found.append(
            Across(drawn.at(at), size, "left" if made.boss.face == "A" else "right", "boss")
        )
    return tuple(found)


def _at_thin_end(drawn: Scaled, piece: Piece, size: Metre, name: str) -> Across:
    """Draft thickens towards the parting: the end farther from it is as large as asked."""
    parting = drawn.made.mould.parting
    low, high = piece.start, piece.end
    at_start = abs(low - parting) >= abs(high - parting)
    if name == "outside" and low <= parting <= high:
        at_start = False  # both ends are thin: the rim's outside goes to the right, out of the way
    place: Place = "left" if at_start else "right"
    return Across(drawn.at(low if at_start else high), drawn.size(size), place, name)


def along_sizes(drawn: Scaled) -> tuple[Along, ...]:
    """Every length: the whole, and each ring that is shorter, with where it begins."""
    made = drawn.made
    found: dict[tuple[Metre, Metre], Along] = {}

    def add(start: Metre, end: Metre, name: str) -> None:
        low, high = drawn.at(start), drawn.at(end)
        if high - low > MEETS:
            limits = Limits(tidy(high - low), decimal=drawn.decimal)
            found.setdefault((round(low, 7), round(high, 7)), Along(low, high, limits, name))

    for piece in made.pieces:
        if piece.start > 0.0 or piece.end < made.length:
            add(piece.start, piece.end, "ring")
            add(0.0, piece.start, "to-ring")
    if made.boss:
        ends = (-made.boss.length, 0.0)
        if made.boss.face == "B":
            ends = (made.length, made.length + made.boss.length)
        add(*ends, "boss-length")
    add(0.0, made.length, "length")
    return tuple(found.values())


def draft_marks(drawn: Scaled, show: Show) -> tuple[Pointed, ...]:
    """Which draft stands on which surface, and the corners."""
    made, mould = drawn.made, drawn.made.mould
    rim = max(made.pieces, key=lambda p: p.outside)
    outside, inside = show.angle(mould.outside_draft), show.angle(mould.inside_draft)

    def at(piece: Piece, share: float) -> Metre:
        return drawn.at(piece.start + share * (piece.end - piece.start))

    marks = [Pointed(at(rim, 0.85), drawn.at(rim.outside / 2), f"draft {outside}", "draft-outside")]
    hubs = [p for p in made.pieces if p is not rim and p.inside is None]
    if hubs:
        hub = max(hubs, key=lambda p: p.end - p.start)
        marks.append(
            Pointed(at(hub, 0.95), drawn.at(hub.outside / 2), f"hub: draft {outside}", "draft-hub")
        )
    if rim.inside is not None:
        marks.append(
            Pointed(
                at(rim, 0.08),
                drawn.at(rim.inside / 2),
                f"inside of the rim: draft {inside}",
                "draft-inside",
            )
        )
    webs = [p for p in made.pieces if p is not rim and p.inside is not None]
    if webs and mould.fillet:
        words = f"fillets R {show.length(mould.fillet * drawn.times).partition(' (')[0]}"
        marks.append(
            Pointed(drawn.at(webs[0].end), drawn.at((webs[0].inside or 0.0) / 2), words, "fillet")
        )
    return tuple(marks)
