"""The numbered steps, in the order a hand does them."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.records import Cut, Figure, ProofLoad, PushAdvice, Step
from borewright.cutting.schedule import LOOSENS
from borewright.mechanics.spread import high_end, likely, low_end
from borewright.planning.figures import figure
from borewright.planning.trial import Trial

GRAVITY = 9.80665
"""Standard gravity (m/s²), by definition (CGPM 1901)."""

GAUGE_STEP = 2.54e-6
"""A tenth of a thou of bore (m): the mandrel read backwards as a gauge."""

Line = tuple[str, str, tuple[Figure, ...], tuple[str, ...]]
"""Title, text, figures that the text shows, blanks to write in."""


def steps(trial: Trial, push: PushAdvice, proof: ProofLoad) -> tuple[Step, ...]:
    """From finding the large end to pressing off."""
    lines = [
        *_make_ready(trial),
        *_press_on(trial, push),
        *_prove(trial, proof),
        *_cut(trial),
        *_press_off(trial),
    ]
    return tuple(Step(k, *line) for k, line in enumerate(lines, 1))


def _make_ready(trial: Trial) -> Iterator[Line]:
    show, m, (low, high) = trial.show, trial.mandrel, trial.window
    yield (
        "Which end is which",
        f"Measure both ends of the ground part: small about {show.bore(m.small_end)}, large about "
        f"{show.bore(m.large_end)}. The large end is usually the stamped one.",
        (_plain("small_end", m.small_end, "bore"), _plain("large_end", m.large_end, "bore")),
        ("small end", "large end"),
    )
    yield (
        "Check the bore",
        f"Go {show.bore(low)}, not-go {show.bore(high)}. Chamfer both ends of the bore wider than the "
        "mandrel: facing stops in the chamfer. Wipe out every chip.",
        (
            figure("go_size", low, "m", "bore", "bore_window"),
            figure("not_go_size", high, "m", "bore", "bore_window"),
        ),
        ("bore",),
    )


def _plain(name: str, size: float, kind: str) -> Figure:
    """A size that no rule stands behind."""
    return figure(name, size, "m", kind, "")


def _press_on(trial: Trial, push: PushAdvice) -> Iterator[Line]:
    show, lead, c = trial.show, trial.hold.leading, trial.chosen
    touch, seat = _rule_readings(trial, c.press), _rule_readings(trial, 0.0)
    light = trial.tables.allowance("touch_push")
    yield (
        "Oil and touch",
        f"Wipe on a film of oil. Slide on from the small end, face {lead} first{_mark(trial)}, until it stops under a light "
        f"push (about {show.force(light.best)}). Rule, large-end face of the mandrel to face {lead}: "
        f"{_where(trial, touch)}. Where it stops tells the bore: each {show.length(GAUGE_STEP / trial.mandrel.taper)} nearer the large end is "
        f"{show.small(GAUGE_STEP)} larger.",
        (
            figure("touch_push", light.best, "N", "force", "", sources=(light.source,)),
            _rule_figure("touch", touch),
        ),
        (f"large-end face to face {lead}",),
    )
    yield (
        "Support under the hub",
        f"The hub, not the rim, on a ring or blocks; face {lead} up; room below for the mandrel; a soft pad on the "
        "center hole.",
        (),
        (),
    )
    yield (
        "Press",
        f"{show.length(c.press)} past touch: the rule then reads {_where(trial, seat)}. Expect about "
        f"{show.force(push.expected.best)} at the end. Past {show.force(push.stop_at.best)} stop and look: tight bore, "
        f"burr or galling. {show.force(push.look_for.best)} or more at the line proves the grip for these cuts; with "
        "less, trust only the proof load.",
        (
            figure("press_distance", c.press, "m", "length", "press_distance"),
            push.expected,
            push.stop_at,
            push.look_for,
            _rule_figure("seat", seat),
        ),
        (f"large-end face to face {lead}", "push felt"),
    )


def _mark(trial: Trial) -> str:
    """Which face is meant, where nothing on the work tells."""
    plain = not trial.job.work.bore.readings and len(trial.hold.line.outside) == 1
    return " (either face: mark it)" if plain else " (A is where depths count from)"


def _rule_readings(trial: Trial, before: float) -> tuple[float, float, float]:
    """Low, likely and high rule reading (m) from the large-end face, `before` m short of the seat."""
    seat = trial.seat - before
    low, best, high = (
        trial.from_large_end(x) for x in (high_end(seat), likely(seat), low_end(seat))
    )
    return low, best, high


def _rule_figure(name: str, reading: tuple[float, float, float]) -> Figure:
    low, best, high = reading
    return figure(f"{name}_rule_reading", best, "m", "length", "rule_reading", band=(low, high))


def _where(trial: Trial, reading: tuple[float, float, float]) -> str:
    low, best, high = reading
    show = trial.show
    if high - low > trial.line_large - trial.line_small:
        return f"about {show.length(best)} if the bore is as read, which is too loose to say closer"
    return f"{show.band(low, high, 'length')}, likely {show.length(best)}"


def _prove(trial: Trial, proof: ProofLoad) -> Iterator[Line]:
    show = trial.show
    yield (
        "Pencil line",
        "Across mandrel and work, at both faces. If it ever breaks, it slipped: stop.",
        (),
        (),
    )
    yield (
        "Proof load",
        f"Hold the dog. Hang {show.weight(proof.force / GRAVITY)} on a level arm of {show.length(proof.arm)} clamped "
        f"to the work, or pull {show.force(proof.rim_force)} at the rim: {proof.factor:g} times the hardest cut below. "
        "The pencil line must not break; if it does, press further or cut lighter.",
        (
            figure("proof_weight", proof.force / GRAVITY, "kg", "mass", "proof_load"),
            figure("proof_arm", proof.arm, "m", "length", "proof_load"),
            figure("proof_rim_force", proof.rim_force, "N", "force", "proof_load"),
        ),
        ("line held",),
    )


def _cut(trial: Trial) -> Iterator[Line]:
    yield (
        "Between centers",
        "Large end to the headstock, dog (carrier) on it, tail guarded. Oil the tailstock center; ease it as the "
        "mandrel warms. Turn once by hand: everything must clear.",
        (),
        (),
    )
    yield (
        "Indicator",
        "On rim and faces before any cut. Find out why before metal comes off if it runs out more than the stock "
        "can clean up.",
        (),
        ("rim", "face"),
    )
    loosens = any(cut.seat_effect == LOOSENS for cut in trial.cuts)
    watch = " A cut that loosens the seat is kept light: watch the pencil line." if loosens else ""
    yield (
        "Cut, in the order of the table",
        f"Its speeds, or the next slower. Facing stops in the chamfer, short of the mandrel.{watch}",
        tuple(f for cut in trial.cuts for f in _cut_figures(cut)),
        (),
    )
    growth = likely(trial.grip.growth)
    yield (
        "Cool, then the last size",
        "Let work and mandrel come to one temperature before the last pass and before measuring. On the mandrel "
        f"the rim measures up to {trial.show.small(growth)} larger than off it.",
        (figure("outside_growth", growth, "m", "small", "outside_growth"),),
        ("finished outside",),
    )


def _cut_figures(cut: Cut) -> tuple[Figure, ...]:
    return (
        figure(f"{cut.id}_spindle", cut.spindle_speed, "rev/s", "spindle", "spindle_speed"),
        figure(f"{cut.id}_depth", cut.depth, "m", "length", ""),
        figure(f"{cut.id}_feed", cut.feed, "m", "feed", ""),
    )


def _press_off(trial: Trial) -> Iterator[Line]:
    off, show = trial.grip.push_off, trial.show
    yield (
        "Press off",
        f"Turn it over: large end down, hub supported under face {trial.hold.leading}, push on the small end, about "
        f"{show.force(likely(off))}. Catch the mandrel.",
        (figure("push_off_force", likely(off), "N", "force", "push_off"),),
        (),
    )
