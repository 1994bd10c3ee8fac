"""The papers of a casting: pattern, casting and mould, melt and spares."""

from __future__ import annotations

from borewright.answer.made_casting import MadeCasting
from borewright.answer.papers import Grid, Papers, Route, RouteStep, Said, Sheet
from borewright.making.blank.care import below_standard, care_of, casting_cautions
from borewright.making.blank.casting_figures import casting_figures, cope_lift
from borewright.making.blank.casting_words import named_rings, shrink_words
from borewright.making.blank.feed_words import feeding_words
from borewright.making.blank.holds import hold_words
from borewright.making.blank.melt_papers import melt_sheet
from borewright.making.blank.pattern_papers import pattern_sheet
from borewright.making.blank.wheel import tidy
from borewright.making.shop_sizes import heat_words
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


def casting_papers(made: MadeCasting, lower: Metre, tables: Tables) -> Papers:
    """All sheets. `lower`: what the face that lies down would do with (m)."""
    show = Show(made.units)
    return Papers(
        f"Casting: {made.title or 'wheel'}",
        _headline(made, show, tables),
        made.units,
        (
            pattern_sheet(made, show, tables),
            _casting(made, lower, show, tables),
            melt_sheet(made, show, tables),
        ),
        casting_figures(made, tables),
    )


def _headline(made: MadeCasting, show: Show, tables: Tables) -> str:
    melt = made.melt
    bore = f"cored {show.length(made.core.diameter)}" if made.core else "solid"
    if made.sand_hole:
        bore = f"a hole of {show.length(made.sand_hole)} left open"
    care = care_of(made, tables)
    said = f"With care: {'; '.join(care)}. " if care else ""
    said += (
        f"A casting {show.length(made.outside)} outside, {show.length(made.length)} long, {bore}, from a pattern "
        f"{show.depth(made.pattern(made.outside))} outside and {show.depth(made.pattern(made.length))} long: "
        f"{shrink_words(made)}. It weighs about {show.weight(melt.casting)}; "
    )
    return said + (
        f"for {melt.wanted} good pour {melt.tries}, and melt {show.weight(melt.charge)}."
    )


def _casting(made: MadeCasting, lower: Metre, show: Show, tables: Tables) -> Sheet:
    rows = tuple(
        (
            s.face,
            "" if s.said is None else f"{s.said.habit_said} ({s.where})",
            "" if s.said is None else s.said.standard_said,
            show.depth(s.taken),
        )
        for s in made.stocks
    )
    skin = tables.allowance("skin_depth")
    used = dict.fromkeys(source for s in made.stocks if s.said for source in s.said.sources)
    notes = (
        *_stock_notes(made, lower, show),
        f"Under the skin all of it: the first cut goes {show.depth(skin.best)} deep or more, up to {show.depth(skin.high)} where the skin is thick.",
        f"From {'; '.join(tables.source(source).citation for source in used)}.",
    )
    return Sheet(
        "Casting and mould",
        (
            casting_cautions(made, tables),
            Grid("Stock to machine", ("face", "by habit", "by the standard", "taken"), rows, notes),
            *_as_cast(made, show),
            Said("Bore", (*_bore_lines(made, show, tables), *_left_lines(made, show, tables))),
            Said("To hold by", hold_words(made, tables)),
            Said("Where metal goes in", feeding_words(made, show)),
            Route("Mould and pour", _steps(made, show, tables)),
        ),
    )


def _stock_notes(made: MadeCasting, lower: Metre, show: Show) -> tuple[str, ...]:
    """Which is taken, and what the face that lies down would do with."""
    if made.stock_stated:
        short = [f"{s.face} {s.said.standard_said}" for s in below_standard(made) if s.said]
        warned = (
            f" That is below the standard ({', '.join(short)}): what swells or warps may not clean up."
            if short
            else ""
        )
        return (
            f"The stock stated is taken on every face, whatever habit and standard say.{warned}",
        )
    said = "The larger of the two is taken, rounded up: a casting with too little is scrap, one with too much is chips."
    faces = "Both faces get what the one that is up needs, because dross and slag rise to it and a plan takes the same off each"
    less = lower < made.stock("face A") - 1e-9
    return (
        said,
        f"{faces}; the one that lies down would do with {show.depth(lower)}."
        if less
        else f"{faces}.",
    )


def _as_cast(made: MadeCasting, show: Show) -> tuple[Said, ...]:
    """The faces that no stock is put on, a line each."""
    lines = []
    for name, ring in named_rings(made):
        if ring.start > 0.0:
            lines.append(
                f"The face of the {name} {show.depth(ring.start)} in from face A stays as cast."
            )
        if ring.end < made.length:
            lines.append(
                f"The face of the {name} {show.depth(tidy(made.length - ring.end))} in from face B stays as cast."
            )
    if not lines:
        return ()
    ask = "To have one of them faced, give its ring the stock in the job's outline: draw it longer, as it is to be cast."
    return (Said("Stays as cast", (*lines, ask)),)


def _bore_lines(made: MadeCasting, show: Show, tables: Tables) -> tuple[str, ...]:
    if made.sand_hole:
        angle = show.angle(made.mould.inside_draft)
        return (
            f"A hole of {show.length(made.sand_hole)} is left open in the pattern: {made.core_why}. That is its size at the ends; "
            f"with {angle} of draft it is narrower towards the parting.",
        )
    if made.core is None:
        return (
            f"Cast solid: {made.core_why}.",
            "Its middle is the heaviest metal and the last to freeze: a shrink hole there is bored away.",
        )
    core, k, clear = made.core, 1 + made.shrink.taken, tables.casting_fact("print_clear").best
    return (
        f"Cored {show.length(core.diameter)}: {made.core_why}. The core box is {show.depth(k * core.diameter)} in diameter; "
        f"the core {show.length(k * core.between + 2 * core.print_length - clear)} long with both prints, {show.length(core.print_length)} each. As "
        f"core boxes come, it leaves {show.depth((made.wheel.bore.size - core.diameter) / 2)} on a side of the bore.",
        "A vent through its middle from end to end, led out through the print and past the metal; it is baked or cured through, and dry. "
        "It stands upright with the wheel lying flat.",
    )


def _left_lines(made: MadeCasting, show: Show, tables: Tables) -> tuple[str, ...]:
    """What was taken of the bore, and what of the finished part is cut from the solid."""
    said = []
    limits, half = made.wheel.bore.limits, tables.casting_fact("mandrel_bore")
    if made.wheel.bore_taken and limits:
        said.append(
            f"No limits of the bore are stated: {show.band(limits.low, limits.high, 'bore')} is taken, {show.small(half.best)} either "
            f"way ({tables.source(half.source).citation})."
        )
    if made.wheel.not_cast:
        said.append(f"Not in the casting, because it is cut: {', '.join(made.wheel.not_cast)}.")
    return tuple(said)


def _steps(made: MadeCasting, show: Show, tables: Tables) -> tuple[RouteStep, ...]:
    mould, metal = made.mould, tables.foundry_metal(made.material)
    lift, head = cope_lift(made, tables).best, tables.casting_fact("cope_head").best
    hot = heat_words(*metal.pour, made.units)
    texts = tables.source(metal.yield_share.sources[0]).citation
    damp = () if metal.family == "magnesium" else ("sand, how damp",)
    other = "B" if mould.up == "A" else "A"
    core = (
        RouteStep("Set the core", ("Dry, vent open, upright in its print; the cope goes on by its pins without touching it.",)),
    ) if made.core else ()  # fmt: skip
    return (
        RouteStep(
            "Ram up", (f"Face {other} down, face {mould.up} up: {mould.up_why}.", "Vent with a wire over the thick parts."), damp
        ),
        RouteStep("Draw the pattern", ("Rap it, lift it straight; mend torn edges, blow loose sand out.",)),
        *core,
        RouteStep("Close and weight", (
            f"With {show.length(head)} of metal over it the cope is lifted with {show.weight(lift)}: half as much again lies on it, or it is clamped.",
        )),
        RouteStep("Pour", (
            f"Without a stop, the sprue kept full, no hotter than the thinnest wall needs: {hot} ({texts}), heavy "
            "sections at the low end.",
        ), ("heat at the pour", "time")),
        RouteStep("Leave it", ("In the sand until it is cold enough not to crack or burn.",), ("time",)),
        RouteStep("Saw off, weigh, measure", ("Sprue, and a riser where there is one, sawn, not knocked off. Weigh it: too light says hollow.", f"Sum here: {show.weight(made.melt.casting)}."), ("weight", "outside", "length")),
    )  # fmt: skip
