"""The papers of a casting: pattern, casting and mould, melt and spares."""

from __future__ import annotations

from borewright.answer.made_casting import MadeCasting
from borewright.answer.papers import Grid, Papers, Route, RouteStep, Said, Sheet, Warned
from borewright.making.blank.casting_figures import casting_figures
from borewright.making.blank.casting_words import shrink_words
from borewright.making.blank.mould_words import feeding_words, mould_words
from borewright.making.cautioned import cautioned
from borewright.mechanics.spares import chance_enough
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables


def casting_papers(made: MadeCasting, lower: Metre, tables: Tables) -> Papers:
    """All sheets. `lower`: what the face that lies down would do with (m)."""
    show = Show(made.units)
    return Papers(
        f"Casting: {made.title or 'wheel'}",
        _headline(made, show),
        made.units,
        (
            _pattern(made, show, tables),
            _casting(made, lower, show, tables),
            _melt(made, show, tables),
        ),
        casting_figures(made, tables),
    )


def _headline(made: MadeCasting, show: Show) -> str:
    melt = made.melt
    bore = f"cored {show.length(made.core.diameter)}" if made.core else "solid"
    said = (
        f"A casting {show.length(made.outside)} outside, {show.length(made.length)} long, {bore}, from a pattern "
        f"{show.depth(made.pattern(made.outside))} outside and {show.depth(made.pattern(made.length))} long: "
        f"{shrink_words(made)}. It weighs about {show.weight(melt.casting)}; "
    )
    return said + (
        f"for {melt.wanted} good pour {melt.tries}, and melt {show.weight(melt.charge)}."
    )


def _pattern(made: MadeCasting, show: Show, tables: Tables) -> Sheet:
    said = tables.shrinkages(made.material)
    columns = {row.source: row.shrinkage for row in said}
    names = [f"{tables.source(source).citation}" for source in columns]
    sizes = _sizes(made)
    rows = [
        (
            name,
            show.depth(size),
            show.depth(made.pattern(size)),
            *(show.depth(size * (1 + s)) for s in columns.values()),
        )
        for name, size in sizes
    ]
    heads = ("size", "casting", "pattern as taken", *(f"by {s.as_published}" for s in said))
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


def _sizes(made: MadeCasting) -> list[tuple[str, Metre]]:
    """Every size of the casting as rings, in words."""
    found = [("outside", made.outside), ("length", made.length)]
    hubs = [p.outside for p in made.pieces if p.inside is None]
    for piece in made.pieces:
        if piece.outside < made.outside and piece.inside is None:
            found.append(("outside of the hub", piece.outside))
        if piece.inside not in hubs and piece.inside and piece.outside >= made.outside:
            found.append(("inside of the rim", piece.inside))
        if piece.start > 0.0:
            found.append(("face A to where a ring begins", piece.start))
        if piece.end - piece.start < made.length:
            found.append(("length of that ring", piece.end - piece.start))
    if made.boss:
        found += [("boss, diameter", made.boss.diameter), ("boss, length", made.boss.length)]
    if made.core:
        found.append(("core box, diameter", made.core.diameter))
    return list(dict.fromkeys(found))


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
        "The larger of the two is taken, rounded up: a casting with too little is scrap, one with too much is chips.",
        f"Both faces get what the one that is up needs, because dross and slag rise to it and a plan takes the same off each; "
        f"the one that lies down would do with {show.depth(lower)}.",
        f"Under the skin all of it: the first cut goes {show.depth(skin.best)} deep or more, up to {show.depth(skin.high)} where the skin is thick.",
        f"From {'; '.join(tables.source(source).citation for source in used)}.",
    )
    return Sheet(
        "Casting and mould",
        (
            _cautions(made, tables),
            Grid("Stock to machine", ("face", "by habit", "by the standard", "taken"), rows, notes),
            Said("Bore", (*_bore_lines(made, show), *_left_lines(made, show, tables))),
            Said("To hold by", _boss_lines(made, show)),
            Said("Where metal goes in", feeding_words(made, show)),
            Route("Mould and pour", _steps(made, show)),
        ),
    )


def _bore_lines(made: MadeCasting, show: Show) -> tuple[str, ...]:
    if made.core is None:
        return (
            f"Cast solid: {made.core_why}.",
            "Its middle is the heaviest metal and the last to freeze: a shrink hole there is bored away.",
        )
    core, k = made.core, 1 + made.shrink.taken
    return (
        f"Cored {show.length(core.diameter)}: {made.core_why}. The core box is {show.depth(k * core.diameter)} in diameter; "
        f"the core {show.length(k * core.between + 2 * core.print_length)} long with both prints, {show.length(core.print_length)} each.",
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


def _boss_lines(made: MadeCasting, show: Show) -> tuple[str, ...]:
    if made.boss is None:
        return (f"Boss: {made.boss_why}.",)
    boss = made.boss
    return (
        f"A boss at face {boss.face}, {show.length(boss.diameter)} thick, {show.length(boss.length)} long: {made.boss_why}.",
        "It is in the pattern, in the weight and in the drawings. It comes off last, when bore and rim are done. "
        "Thick metal freezes late: a chill set against it in the mould, or the riser over it, and a look for pores where it was.",
    )


def _steps(made: MadeCasting, show: Show) -> tuple[RouteStep, ...]:
    mould = made.mould
    other = "B" if mould.up == "A" else "A"
    core = (
        RouteStep("Set the core", ("Dry, vent open, upright in its print; the cope goes on by its pins without touching it.",)),
    ) if made.core else ()  # fmt: skip
    return (
        RouteStep(
            "Ram up", (f"Face {other} down, face {mould.up} up: {mould.up_why}.", "Vent with a wire over rim and hub."), ("sand, how damp",)
        ),
        RouteStep("Draw the pattern", ("Rap it, lift it straight; mend torn edges, blow loose sand out.",)),
        *core,
        RouteStep("Close, weight, pour", ("Without a stop, the sprue kept full, no hotter than the thinnest wall needs.",), ("heat at the pour", "time")),
        RouteStep("Leave it", ("In the sand until it is cold enough not to crack or burn.",), ("time",)),
        RouteStep("Saw off, weigh, measure", ("Sprue and riser sawn, not knocked off. Weigh it: too light says hollow.", f"Sum here: {show.weight(made.melt.casting)}."), ("weight", "outside", "length")),
    )  # fmt: skip


def _melt(made: MadeCasting, show: Show, tables: Tables) -> Sheet:
    melt, metal = made.melt, tables.foundry_metal(made.material)
    rows = (
        ("one casting, as sawn off", show.weight(melt.casting)),
        (f"poured for one, at a yield of {melt.yield_share:.0%}", show.weight(melt.poured)),
        (f"poured for {melt.tries}", show.weight(melt.poured * melt.tries)),
        (f"to melt, {melt.loss:.0%} lost", show.weight(melt.charge)),
    )
    low, high = metal.yield_share.low, metal.yield_share.high
    spares = (
        f"For {melt.wanted} good, pour {melt.tries}: with {melt.scrap:.0%} scrap that is enough {100 * melt.chance:.0f} times in 100"
        f"{f', {melt.tries - 1} only {100 * _one_less(made):.0f}' if melt.tries > melt.wanted else ''}; "
        f"{100 * melt.sure:.0f} was wanted.",
        f"Scrap in a shop that casts now and then: {metal.scrap.low:.0%} to {metal.scrap.high:.0%} (our judgment); `--scrap` takes the shop's own count.",
    )
    said = (metal.note, *_wrought(made, tables))
    return Sheet(
        "Melt and spares",
        (
            Grid("Weights", ("of", "weight"), rows, (f"Yield runs from {low:.0%} to {high:.0%}; fillets are left out of the sum.",)),
            Said("Spares", spares),
            Said("This metal", said),
            Grid("Count kept", ("heat", "date", "poured", "good", "what spoiled the rest"), tuple((str(n), "", "", "", "") for n in (1, 2, 3))),
        ),
    )  # fmt: skip


def _one_less(made: MadeCasting) -> float:
    return chance_enough(made.melt.wanted, made.melt.tries - 1, made.melt.scrap)


def _wrought(made: MadeCasting, tables: Tables) -> tuple[str, ...]:
    name = tables.material(made.material).name
    if "wrought" not in name:
        return ()
    return (
        f"The job says {name}: alloys made for rolling pour badly and crack as they freeze; a casting alloy is kinder.",
    )


def _cautions(made: MadeCasting, tables: Tables) -> Warned:
    material = tables.material(made.material)
    tags = ["molten", f"molten-{material.family}"]
    if material.family in ("zinc", "brass", "bronze"):
        tags.append("molten-zinc-fume")
    if "leaded-metal" in material.cautions:
        tags.append("molten-lead")
    return cautioned(tables, *tags)
