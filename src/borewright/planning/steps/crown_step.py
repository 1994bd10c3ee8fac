"""The step that puts the crown on a pulley's face, after its finishing cut."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.crown import PulleyCrown
from borewright.answer.records import Figure
from borewright.job.crown_wish import crowned_stretch
from borewright.planning.steps.finished_words import broken_edges
from borewright.planning.steps.load_steps import Line
from borewright.planning.weighing.crown_cut import crown_wanted
from borewright.planning.weighing.figures import figure, given
from borewright.planning.weighing.turned import Turned
from borewright.quantities.show import Show

LISTED = 20
"""As many stops as a line of the sheet has room for; ours."""


def crown_line(trial: Turned, feed: str = "") -> Iterator[Line]:
    """The crown as title, text, figures and blanks; nothing where none is wanted.

    `feed`: which way the hold wants to be fed, as a sentence.
    """
    wish = trial.job.work.finished.form.crown
    if wish is None:
        return
    crown = crown_wanted(trial.job, wish, trial.tables)
    yield (
        "Crown",
        crown_text(crown, trial.show, "" if crown.shape == "arc" else feed)
        + _middle(trial)
        + broken_edges(trial.job, trial.show),
        crown_figures(crown),
        ("middle of the face",),
    )


def _middle(trial: Turned) -> str:
    """Where its middle is, as a sentence after a space."""
    start, end = crowned_stretch(trial.job.work)
    return f" Its middle is {trial.show.length((start + end) / 2)} from face A as finished."


def crown_text(crown: PulleyCrown, show: Show, feed: str = "") -> str:
    """What is cut away, by which rule, how it is set, and what is measured after."""
    by = "as stated" if crown.rule is None else f"{crown.rule.rule}: {crown.rule.as_published}"
    rules = show.band(crown.rules[0].height, crown.rules[-1].height, "turned")
    form = _arc(crown, show) if crown.shape == "arc" else _taper(crown, show)
    return (
        f"At the edges of the face only, {show.turned(crown.height)} on radius ({by}; the rules run from {rules}): the "
        f"middle stays at the finished size. {form}{feed and f' {feed}'} Measure over the middle once more."
    )


def _taper(crown: PulleyCrown, show: Show) -> str:
    flat = f"a flat of {show.length(crown.flat)}" if crown.flat else "the middle"
    return (
        f"Top slide over by {show.angle(crown.angle)}, one half, then the other: {show.length(crown.slide_travel)} of it reads "
        f"{show.turned(crown.slide_reading)} on an indicator. Ink the face; each half is done when the fresh metal meets {flat}. "
        "Turn once by hand first: the slide set over must clear what drives and what holds."
    )


def _arc(crown: PulleyCrown, show: Show) -> str:
    stepped, made = crown.stepped, crown.stepped.stairs
    arc = f"An arc of {show.length(crown.radius)} radius"
    if made is None:
        return f"{arc}, too slight for the dial: file it to a straightedge."
    if len(made.stops) > LISTED:
        return f"{arc}: step it off by the list that `borewright crown` prints."
    counts = "depth" if stepped.dial == "unknown" else "dial"
    stops = "; ".join(
        f"{_bare(show.length(stop))}, {_bare(show.turned(n * stepped.division))}"
        for stop, n in zip(made.stops.tolist(), made.divisions.tolist(), strict=True)
    )
    return (
        f"{arc}, in steps from either edge to its stop, the dial only ever turned in; stop, {counts} "
        f"({'inches' if show.units == 'inch' else 'mm'}): {stops}. File away the ridges, up to {show.small(made.cusp)}."
    )


def _bare(words: str) -> str:
    """A size without its units: a row of them is long enough.

    >>> _bare("7/16 in (11.11 mm)")
    '7/16'
    """
    return words.partition(" (")[0].rpartition(" ")[0]


def crown_figures(crown: PulleyCrown) -> tuple[Figure, ...]:
    """Height, and what sets the form, with their sums."""
    source = ("stated",) if crown.rule is None else (crown.rule.source,)
    height = given("height", crown.height, "m", "turned")
    face = given("face", crown.face, "m")
    own = figure("crown_height", crown.height, "m", "turned", "", sources=source)
    if crown.shape == "arc":
        radius = figure("crown_radius", crown.radius, "m", "length", "crown_radius", (height, face))
        return own, radius
    flat = given("flat", crown.flat, "m")
    angle = given("angle", crown.angle, "rad", "angle")
    travel = given("travel", crown.slide_travel, "m")
    return (
        own,
        figure("crown_angle", crown.angle, "rad", "angle", "crown_angle", (height, face, flat)),
        figure(
            "crown_reading",
            crown.slide_reading,
            "m",
            "turned",
            "crown_reading",
            (travel, angle),
        ),
    )
