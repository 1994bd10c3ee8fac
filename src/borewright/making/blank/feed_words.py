"""Sentences of what feeds the casting: where riser and sprue stand, or that no riser fits."""

from __future__ import annotations

from borewright.answer.made_casting import MadeCasting
from borewright.quantities.show import Show

STANDS = {
    "middle": "over the middle of the NAME",
    "wall": "on the face that is up, beside the print of the core",
    "beside": "beside the hub, between it and the rim",
    "rim inside": "within the rim, by a neck on its inside, so that its face stays clear",
    "rim outside": "beside the outside, at the joint of the mould",
    "web": "on the web, near the hub",
}


SWELLS = (
    "Gray iron swells as its graphite forms: in a mould rammed hard, poured no hotter than it must be, sprue and a small flow-off "
    "usually feed a wheel. A riser is for a heavy middle that must be sound."
)


def feeding_words(made: MadeCasting, show: Show) -> tuple[str, ...]:
    """Sections, riser, sprue."""
    sections = made.mould.sections
    heaviest = sections[0].name
    order = ", ".join(f"{s.name} {show.depth(s.modulus)}" for s in sections)
    core = (
        " (core or sand in the hole is soon as hot as the metal: it is taken as not cooling)"
        if made.hole
        else ""
    )
    return (
        f"Volume over cooling surface: {order}{core}. The {heaviest} freezes last and draws metal from whatever still flows.",
        *((SWELLS,) if made.mould.swells else ()),
        *_riser_words(made, heaviest, show),
        _sprue_words(made, heaviest),
    )


def _riser_words(made: MadeCasting, heaviest: str, show: Show) -> tuple[str, ...]:
    riser = made.mould.riser
    if not riser.fits:
        return _none_fits(made, heaviest, show)
    high = (
        " thick and as high"
        if riser.height == riser.diameter
        else f" thick, as wide as it finds room, and {show.length(riser.height)} high"
    )
    size = f"An upright round riser {show.length(riser.diameter)}{high} freezes later than that"
    stands = STANDS[riser.place].replace("NAME", heaviest)
    return (f"{size}. It stands {stands}.{_neck_words(made, show)}", *_after_words(made))


def _neck_words(made: MadeCasting, show: Show) -> str:
    riser = made.mould.riser
    if not riser.neck:
        return ""
    return (
        f" A neck leads it in, {show.length(riser.neck)} thick and no longer than {show.length(riser.neck_long)}: a longer one freezes "
        "first and the riser feeds nothing."
    )


def _after_words(made: MadeCasting) -> tuple[str, ...]:
    if made.mould.riser.place == "rim outside":
        return (
            "Its neck is on a face that is turned: look for pores there after the first cut. A hot top or a chill lets it be "
            "smaller.",
        )
    smaller = "A hot top or a chill under the heavy metal lets it be smaller."
    if made.mould.riser.place != "middle":
        return (smaller,)
    return _mark_words(made), smaller


def _mark_words(made: MadeCasting) -> str:
    """Whether the bore takes all of the riser's mark, or leaves a ring of it round its edge."""
    riser = made.mould.riser
    if (riser.neck or riser.diameter) <= made.wheel.bore.size:
        return "The bore takes its mark away."
    return "Bore and facing take its mark away; it reaches past the edge of the bore: look for pores there."


def _none_fits(made: MadeCasting, heaviest: str, show: Show) -> tuple[str, ...]:
    riser = made.mould.riser
    where = "beside the print of the core" if riser.place == "wall" else "between hub and rim"
    tells = (
        f"No riser that freezes later fits: it would be {show.length(riser.diameter)} thick, and {where} there is room for "
        f"{show.length(max(riser.room, 0.0))}."
    )
    solid = "; or cast it solid (`--core solid`), a riser over the middle" if made.core else ""
    return (
        tells,
        f"What does instead: chills of iron, dry and warm, against the {heaviest} below and beside, so that it freezes with the rest"
        f"{solid}. A hot top lets a riser be smaller, seldom by so much. Saw the first casting through at the {heaviest} and look.",
    )


def _sprue_words(made: MadeCasting, heaviest: str) -> str:
    if heaviest == "body":
        place = "through the riser, or on the face away from the outside"
    elif any(s.name in ("web", "spokes") for s in made.mould.sections):
        through = next(s.name for s in made.mould.sections if s.name in ("web", "spokes"))
        place = f"by the {through} or the hub, away from the rim"
    else:
        place = "by the hub, away from the outside"
    return f"The sprue comes in {place}: what tears or sponges at a gate must not be a surface that is used."
