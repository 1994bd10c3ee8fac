"""The acceptance sheet of a mandrel: stations with limits, runout, and blanks to fill in."""

from __future__ import annotations

from typing import Final

from borewright.answer.made_mandrel import MadeMandrel
from borewright.answer.papers import Grid, Said, Sheet
from borewright.making.mandrel.form import GRID
from borewright.making.mandrel.route_finish import differ_words
from borewright.making.mandrel.words import takes_words
from borewright.quantities.show import Show
from borewright.quantities.si import Metre

STATIONS: Final = 5


def stations_of(made: MadeMandrel) -> tuple[tuple[str, Metre, Metre, Metre, Metre], ...]:
    """Name, x from the small end, distance from the large-end face, and both limits (m).

    The first is A, near the large end; the last B.
    """
    form = made.form
    # On places where the straight line between the limits lies on whole tenths or whole µm.
    step = GRID[made.units] / form.taper
    count = round(form.apart / step)
    face = form.end_length + form.ground_length
    found = []
    for k in range(STATIONS):
        x = form.zone.at_large - step * round(k * count / (STATIONS - 1))
        name = {0: "A", STATIONS - 1: "B"}.get(k, str(k))
        found.append((name, x, face - x, *form.zone.ends(x)))
    return tuple(found)


def acceptance_sheet(made: MadeMandrel, show: Show) -> Sheet:
    """The sheet that goes with the mandrel into its drawer."""
    return Sheet(
        "Acceptance",
        (
            _measured(made, show),
            _judged(made, show),
            Said(
                "When it is accepted",
                (
                    takes_words(made, show),
                    "Enter what was found, not what was wanted: `borewright mandrel` says from the readings "
                    "what the taper is, how straight, and which bores it takes; the shelf file keeps them; "
                    "`borewright make strip` makes the strip again from them.",
                    "The strip that goes with these papers is that of the drawing's middle: it serves until "
                    "the mandrel has been measured.",
                ),
            ),
        ),
    )


def _measured(made: MadeMandrel, show: Show) -> Grid:
    rows = tuple(
        (
            name,
            show.length(from_face),
            show.bore(low).partition(" (")[0],
            show.bore(high).partition(" (")[0],
            "",
            "",
        )
        for name, _, from_face, low, high in stations_of(made)
    )
    return Grid(
        "Diameters, at room temperature, micrometer set on a gauge",
        ("station", "from the large-end face", "smallest", "largest", "found", "at right angles"),
        rows,
        (
            f"A must be {differ_words(made, show)}. Between them the limits run straight: "
            "a station beyond them is a hollow or a swelling.",
        ),
    )


def _judged(made: MadeMandrel, show: Show) -> Grid:
    runout = show.small(made.settings.runout)
    middle = show.length(made.form.end_length + made.form.ground_length / 2)
    rows = [
        ("runout at A, on its own dead centers", runout, ""),
        (f"runout at the middle, {middle} from the face", runout, ""),
        ("runout at B", runout, ""),
        ("centers: blue all round, no bruise", "yes", ""),
        ("flat takes the dog's screw; stamps read", "yes", ""),
    ]
    if made.stock.steel.hard:
        rows.insert(3, ("file skates on the taper (its end, not its middle)", "yes", ""))
        rows.insert(4, ("no crack: wiped with thin oil, then chalked", "none seen", ""))
    return Grid("Runout and looks", ("what", "wanted", "found"), tuple(rows))
