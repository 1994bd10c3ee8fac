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
    small, large = (
        figure("small_end", m.small_end, "m", "bore", ""),
        figure("large_end", m.large_end, "m", "bore", ""),
    )
    yield (
        "Which end is which",
        f"Measure {m.name} near both ends of the ground part: small end about {show.bore(m.small_end)}, "
        f"large end about {show.bore(m.large_end)}. The large end is usually the stamped one.",
        (small, large),
        ("small end", "large end"),
    )
    yield (
        "Check the bore",
        f"Go {show.bore(low)}, not-go {show.bore(high)}. Chamfer both ends of the bore a little larger than the "
        "mandrel, so that the facing tool can stop short of it, and wipe out every chip.",
        _window(low, high),
        ("bore",),
    )


def _window(low: float, high: float) -> tuple[Figure, ...]:
    return (
        figure("go_size", low, "m", "bore", "bore_window"),
        figure("not_go_size", high, "m", "bore", "bore_window"),
    )


def _press_on(trial: Trial, push: PushAdvice) -> Iterator[Line]:
    show, lead, c = trial.show, trial.hold.leading, trial.chosen
    touch = _rule_readings(trial, c.press)
    seat = _rule_readings(trial, 0.0)
    light = trial.tables.allowance("touch_push").best
    yield (
        "Oil and touch",
        f"Wipe a film of oil on mandrel and bore. Slide the work on from the small end, face {lead} first, until it "
        f"stops under a light push (about {show.force(light)}). Rule from the large-end face of the mandrel to "
        f"face {lead}: {_where(trial, touch)}. Where it stops is the bore's true size.",
        _rule_figures("touch", touch),
        (f"large-end face to face {lead} at touch",),
    )
    yield (
        "Support under the hub",
        f"Stand the hub, not the rim, on a ring or on blocks, face {lead} up, with room below for the mandrel. "
        "Protect the center hole with a soft pad.",
        (),
        (),
    )
    press = figure("press_distance", c.press, "m", "length", "press_distance")
    yield (
        "Press",
        f"Press the mandrel in {show.length(c.press)} past the touch, until the rule reads {_where(trial, seat)}. "
        f"Expect about {show.force(push.expected.best)} at the end. Stop and look if it passes "
        f"{show.force(push.stop_at.best)}: tight bore, burr or galling. "
        f"{show.force(push.look_for.best)} or more at the line proves the grip for these cuts; with less, "
        "trust only the proof load.",
        (press, push.expected, push.stop_at, push.look_for, *_rule_figures("seat", seat)),
        (f"large-end face to face {lead}", "push felt"),
    )


def _rule_readings(trial: Trial, before: float) -> tuple[float, float, float]:
    """Low, likely and high rule reading (m) from the large-end face, `before` m short of the seat."""
    seat = trial.seat - before
    readings = (high_end(seat), likely(seat), low_end(seat))
    return tuple(trial.from_large_end(x) for x in readings)  # type: ignore[return-value]


def _rule_figures(name: str, reading: tuple[float, float, float]) -> tuple[Figure, ...]:
    low, best, high = reading
    return (
        figure(f"{name}_rule_reading", best, "m", "length", "large_end_to_face", band=(low, high)),
    )


def _where(trial: Trial, reading: tuple[float, float, float]) -> str:
    low, best, high = reading
    show = trial.show
    if high - low > trial.line_large - trial.line_small:
        return f"about {show.length(best)} if the bore is as read; the reading is too loose to say closer"
    return f"{show.band(low, high, 'length')}, likely {show.length(best)}"


def _prove(trial: Trial, proof: ProofLoad) -> Iterator[Line]:
    show = trial.show
    force = figure("proof_force", proof.force, "N", "force", "proof_load")
    arm = figure("proof_arm", proof.arm, "m", "length", "proof_load")
    yield (
        "Pencil line",
        "Draw a pencil line across mandrel and work at both faces. If it ever breaks, it slipped: stop.",
        (),
        (),
    )
    yield (
        "Proof load",
        f"Hold the mandrel by its dog and hang {show.weight(proof.force / GRAVITY)} on a level arm of "
        f"{show.length(proof.arm)} clamped to the work (or pull {show.force(proof.rim_force)} at the rim): {proof.factor:g} times the "
        "hardest cut below. The pencil line must not break. If it does, press further or cut lighter.",
        (force, arm, figure("proof_rim_force", proof.rim_force, "N", "force", "proof_load")),
        ("line held: yes / no",),
    )


def _cut(trial: Trial) -> Iterator[Line]:
    yield (
        "Between centers",
        "Large end to the headstock, dog (carrier) on the large end, its tail guarded. Oil the tailstock center and "
        "ease it when the mandrel warms. Turn once by hand: dog and work must clear everything.",
        (),
        (),
    )
    yield (
        "Indicator",
        "Indicator on the rim and on both faces before cutting. Rim and face each running out alike means the bore or "
        "the centers; find out which before metal comes off.",
        (),
        ("rim runs out", "face runs out"),
    )
    for cut in trial.cuts:
        yield _one_cut(trial, cut)
    growth = likely(trial.grip.growth)
    yield (
        "Cool, then last size",
        "Let work and mandrel come to one temperature before the last pass and before measuring. On the mandrel the "
        f"rim measures up to {trial.show.small(growth)} larger than it will be off it.",
        (figure("outside_growth", growth, "m", "small", "outside_growth"),),
        ("finished outside",),
    )


def _one_cut(trial: Trial, cut: Cut) -> Line:
    show = trial.show
    passes = f", {cut.passes} passes" if cut.passes > 1 else ""
    text = (
        f"{show.spindle(cut.spindle_speed)} or the next slower, {show.length(cut.depth)} deep{passes}, "
        f"{show.feed(cut.feed)}, {cut.direction}: this {cut.seat_effect} the seat."
    )
    if cut.kind == "face":
        text += " Stop in the chamfer, short of the mandrel."
    if cut.seat_effect == LOOSENS:
        text += " Keep it light and watch the pencil line."
    return (
        cut.name[0].upper() + cut.name[1:],
        text,
        (
            figure(f"{cut.id}_spindle", cut.spindle_speed, "rev/s", "spindle", "spindle_speed"),
            figure(f"{cut.id}_depth", cut.depth, "m", "length", ""),
            figure(f"{cut.id}_feed", cut.feed, "m", "feed", ""),
        ),
        (),
    )


def _press_off(trial: Trial) -> Iterator[Line]:
    off, show = trial.grip.push_off, trial.show
    yield (
        "Press off",
        f"Turn it over: large end down, hub supported under face {trial.hold.leading}, and press on the small end: "
        f"about {show.force(likely(off))} ({show.band(low_end(off), high_end(off), 'force')}). Catch the mandrel.",
        (figure("push_off_force", likely(off), "N", "force", "push_off"),),
        (),
    )
