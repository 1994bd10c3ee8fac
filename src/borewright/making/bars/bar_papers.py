"""The papers and the drawing of blanks from bar."""

from __future__ import annotations

from borewright.answer.drawn_part import Across, Along, DrawnPart, Limits, Stretch
from borewright.answer.figure import Figure, Input
from borewright.answer.made_bar import BarBlanks
from borewright.answer.papers import Grid, Papers, Route, RouteStep, Said, Sheet
from borewright.making.cautioned import cautioned
from borewright.quantities.show import Show
from borewright.reference.library import Tables


def bar_papers(made: BarBlanks, tables: Tables) -> Papers:
    """All sheets of a batch from bar."""
    show = Show(made.units)
    return Papers(
        f"Blanks from bar: {made.title or 'a batch'}",
        _headline(made, show),
        made.units,
        (
            Sheet(
                "Bar and cutting list",
                (
                    cautioned(
                        tables, "saw" if made.cut == "sawn" else "parting", material=made.material
                    ),
                    *((Said("", made.notes),) if made.notes else ()),
                    _list(made, show),
                    Route("Steps", _steps(made, show, tables)),
                ),
            ),
        ),
        _figures(made, tables),
    )


def _headline(made: BarBlanks, show: Show) -> str:
    many = f"{made.quantity} blank{'' if made.quantity == 1 else 's'}"
    if not made.whole:
        return f"No: the bars stated give {made.quantity - made.missing} of {many}, {made.missing} short."
    return (
        f"{many} of {show.length(made.piece)}, {made.cut} from {made.bar_size} round: "
        f"{_bars(made, show)}. Each leaves "
        f"{show.depth((made.bar - made.outside) / 2)} on a side and "
        f"{show.depth((made.piece - made.length) / 2)} on each face."
    )


def _bars(made: BarBlanks, show: Show) -> str:
    """How much bar and its weight: in one length where one bar gives all."""
    many = sum(lot.count for lot in made.lots)
    if many == 1:
        return f"{show.length(made.order)} of it in one length, {show.weight(made.mass)}"
    used = sum(lot.count * (lot.length - lot.left) for lot in made.lots)
    weight = show.weight(made.mass * used / made.order)
    return f"{many} bars, of which {show.length(used)} is used, {weight}"


def _list(made: BarBlanks, show: Show) -> Grid:
    rows = tuple(
        (
            lot.name,
            show.length(lot.length),
            str(lot.count),
            str(lot.pieces),
            show.length(lot.left),
            "",
        )
        for lot in made.lots
    )
    proved = (
        "No way of cutting takes less bar."
        if made.proved
        else "A way that takes less bar may exist; none was found."
    )
    return Grid(
        "Cutting list",
        ("bar", "long", "bars", "pieces from each", "left of each", "cut"),
        rows,
        (
            f"Each cut takes {show.depth(made.kerf)}, and {show.length(made.end)} of each bar stays in "
            f"{'the saw' if made.cut == 'sawn' else 'the chuck'}. {proved}",
        ),
    )


def _steps(made: BarBlanks, show: Show, tables: Tables) -> tuple[RouteStep, ...]:
    cut = (
        RouteStep(
            "Saw the pieces",
            (
                f"{show.length(made.piece)} each, against a stop: the saw may run off by "
                f"{show.depth(tables.bar_fact('saw_skew').best * made.bar)}, and the short side must "
                "still clean up.",
            ),
            ("pieces",),
        )
        if made.cut == "sawn"
        else RouteStep(
            "Part the pieces off",
            (
                f"Close to the chuck, a blade {show.depth(made.kerf)} wide, sharp, square and on center, "
                "slow and steadily fed, oil on steel. Bore and ream each while it is still on the bar: "
                "outside and bore then come from one setting.",
            ),
            ("pieces",),
        )
    )
    return (
        RouteStep(
            "Look at the bar",
            (
                f"{made.bar_size} as measured, straight, no crack or seam at the ends: cut the first "
                f"{show.length(tables.bar_fact('face_stock').low * 4)} off a bar that was sheared. Paint or stamp its "
                "material on the piece that is left.",
            ),
            ("measures", "material read"),
        ),
        cut,
        RouteStep(
            "Deburr and count",
            (
                "Edges off before anybody grips one. One more than wanted is cheap while the bar is in the saw.",
            ),
        ),
    )


def _figures(made: BarBlanks, tables: Tables) -> tuple[Figure, ...]:
    over, face = tables.bar_fact("over_outside"), tables.bar_fact("face_stock")
    order = Figure(
        "bar_to_order",
        made.quantity * (made.piece + made.kerf) + made.end,
        "m",
        formula="bar_to_order",
        inputs=(
            Input("pieces", made.quantity, ""),
            Input("length of a piece", made.piece, "m", "length"),
            Input("cut", made.kerf, "m", "depth"),
            Input("end", made.end, "m", "length"),
        ),
        kind="length",
    )
    return (
        Figure(
            "bar_over_outside",
            over.best,
            "m",
            over.low,
            over.high,
            sources=(over.source,),
            kind="depth",
        ),
        Figure(
            "stock_on_a_face",
            face.best,
            "m",
            face.low,
            face.high,
            sources=(face.source,),
            kind="depth",
        ),
        order,
    )


def drawn_bar_blank(made: BarBlanks) -> DrawnPart:
    """One blank with the finished part in it, double-dotted."""
    face = (made.piece - made.length) / 2
    return DrawnPart(
        title=f"Blank: {made.title or 'from bar'}",
        material=f"{made.material}, {made.bar_size} bar, {made.cut}",
        stretches=(Stretch(0.0, made.piece, made.bar),),
        across=(Across(0.0, Limits(made.bar), "left", "bar"),),
        along=(
            Along(0.0, made.piece, Limits(made.piece), "piece"),
            Along(0.0, face, Limits(face), "face"),
        ),
        phantom=(Stretch(face, face + made.length, made.outside),),
        notes=(
            "Double-dotted: what it is turned to.",
            f"{made.quantity} of them; a cut takes {Show(made.units).depth(made.kerf)}.",
        ),
        general="as cut",
        end_view="right",
        quantity=made.quantity,
    )
