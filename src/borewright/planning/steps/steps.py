"""The numbered steps, in the order a hand does them."""

from __future__ import annotations

from collections.abc import Iterator

from borewright.answer.records import Cut, Figure, ProofLoad, PushAdvice, Step
from borewright.cutting.directions import LOOSENS
from borewright.cutting.knock import hole_in_the_outside, runs_out
from borewright.mechanics.spread import likely
from borewright.planning.questions.push import blows
from borewright.planning.steps.balance_step import balance_step
from borewright.planning.steps.crown_step import crown_line
from borewright.planning.steps.finished_words import edge_words, last_size, size_blanks
from borewright.planning.steps.load_steps import Line, loads, mouths_words
from borewright.planning.steps.parallel_step import parallel_step
from borewright.planning.steps.prove_steps import prove
from borewright.planning.steps.support_step import support_sizes, support_words
from borewright.planning.taper.trial import Trial
from borewright.planning.weighing.figures import figure
from borewright.planning.weighing.turned import Turned

GAUGE_STEP: dict[str, float] = {"inch": 2.54e-6, "mm": 0.01e-3}
"""A tenth of a thou, or a hundredth of a mm, of bore (m): the mandrel read backwards as a gauge."""


def steps(trial: Trial, push: PushAdvice, proof: ProofLoad) -> tuple[Step, ...]:
    """From finding the large end to pressing off."""
    lines = [
        *_make_ready(trial),
        *_press_on(trial, push),
        *prove(trial, proof),
        *_cut(trial),
        *balance_step(trial, "Still on its mandrel"),
        *_press_off(trial),
    ]
    return tuple(Step(k, *line) for k, line in enumerate(lines, 1))


def _make_ready(trial: Trial) -> Iterator[Line]:
    show, m, (low, high) = trial.show, trial.mandrel, trial.window
    yield (
        "Which end is which",
        f"Measure both ends of the ground part: small about {show.bore(m.small_end)}, large about "
        f"{show.bore(m.large_end)}. The large end is usually the stamped one. Alone between clean centers both ends should "
        "run true to the indicator.",
        (
            _plain("small_end", m.small_end, "bore", m.sources),
            _plain("large_end", m.large_end, "bore", m.sources),
        ),
        ("small end", "large end", "runs out"),
    )
    yield (
        "Check the bore",
        f"Go {show.bore(low)}, not-go {show.bore(high)}. {mouths_words(trial)} {_keyway_burr(trial)}Wipe out every chip.",
        (
            figure("go_size", low, "m", "bore", "bore_window"),
            figure("not_go_size", high, "m", "bore", "bore_window"),
        ),
        ("bore",),
    )


def _keyway_burr(trial: Trial) -> str:
    if trial.job.work.keyway is None:
        return ""
    return (
        "Stone the burr off both edges of the keyway: it scores the mandrel and gives a false touch. Look into its corners "
        "for cracks. "
    )


def _plain(name: str, size: float, kind: str, sources: tuple[str, ...] = ()) -> Figure:
    """A size that no rule stands behind."""
    return figure(name, size, "m", kind, "", sources=sources)


def _press_on(trial: Trial, push: PushAdvice) -> Iterator[Line]:
    show, lead, c = trial.show, trial.hold.leading, trial.chosen
    light = trial.tables.allowance("touch_push")
    yield (
        "Oil and touch",
        f"Wipe on a film of oil. Slide on from the small end, face {lead} first{_mark(trial)}, to a light push (about "
        f"{show.force(light.best)}). Rule, large-end face of the mandrel to face {lead}: {_touch_words(trial)} Each "
        f"{show.length(_gauge_travel(trial))} nearer is {show.small(GAUGE_STEP[show.units])} more bore.{_each_its_own(trial)}",
        (
            figure("touch_push", light.best, "N", "force", "", sources=(light.source,)),
            *_touch_figures(trial),
        ),
        (f"large-end face to face {lead}",),
    )
    yield ("Support under the hub", support_words(trial), support_sizes(trial), ())
    if trial.shop.hammers:
        yield _driven(trial)
        return
    yield (
        "Press",
        f"{show.rule(c.press)} further, until the rule reads that much less{_seat_words(trial)}. Expect about "
        f"{show.force(push.expected.best)} at the end (felt, unless the press has a gauge). Past "
        f"{show.force(push.stop_at.best)} stop and look: tight bore, burr or galling; under {show.force(_least_push(push))} "
        f"too: the bore is not as read. {show.force(push.look_for.best)} or "
        "more at the end proves the grip for these cuts; with less, or no way to tell, trust only the proof load.",
        (
            figure("press_distance", c.press, "m", "rule", "press_distance"),
            push.expected,
            push.stop_at,
            push.look_for,
            *_seat_figures(trial),
        ),
        (f"large-end face to face {lead}", "push felt"),
    )


HARDLY = 1e-6
"""Growth (m) of the outside below which no micrometer sees it; ours."""


def _grown(growth: float) -> tuple[Figure, ...]:
    if growth < HARDLY:
        return ()
    return (figure("outside_growth", growth, "m", "small", "outside_growth"),)


def _larger(growth: float, trial: Trial) -> str:
    if growth < HARDLY:
        return "what it measures off it"
    return f"up to {trial.show.small(growth)} larger than off it, most towards face {trial.hold.leading}"


def _least_push(push: PushAdvice) -> float:
    """The low end of the push to expect (N)."""
    return push.expected.best if push.expected.low is None else push.expected.low


def _each_its_own(trial: Trial) -> str:
    """For a batch: every bore stops at its own place, and is pressed from there."""
    many = trial.job.work.quantity
    return f" Each of the {many} stops at its own place: press it from there." if many > 1 else ""


def _driven(trial: Trial) -> Line:
    """The press step where a hammer does it: the rule tells, no push is felt."""
    show, lead = trial.show, trial.hold.leading
    return (
        "Drive",
        f"{show.rule(trial.chosen.press)} further, until the rule reads that much less{_seat_words(trial)}: about "
        f"{blows(trial)} blows. If it stops moving short of that, do not hit harder: clean it, oil it, look. Blows prove "
        "nothing: trust only the proof load.",
        (
            figure("press_distance", trial.chosen.press, "m", "rule", "press_distance"),
            *_seat_figures(trial),
        ),
        (f"large-end face to face {lead}", "blows"),
    )


def _drift(trial: Trial) -> str:
    return ", by a soft drift and hammer" if trial.shop.hammers else ""


def _gauge_travel(trial: Trial) -> float:
    """How far (m) the touch moves for one gauge step of bore."""
    return GAUGE_STEP[trial.show.units] / trial.mandrel.taper


def _touch_words(trial: Trial) -> str:
    """Where it should stop, and the gate outside which nothing is pressed."""
    show, (near, far) = trial.show, trial.touch_gate
    gate = (
        f"Press only if it reads from {show.length(near)} to {show.length(far)}: nearer, the bore is too large for it: stop, "
        "and turn a stub to the bore; farther, too small."
    )
    if not trial.touch_is_known:
        return f"the bore reading cannot say where. {gate}"
    low, best, high = _rule_readings(trial, trial.chosen.press)
    return f"expect {show.band(max(low, 0.0), high, 'length')}, likely {show.length(best)}. {gate}"


def _touch_figures(trial: Trial) -> tuple[Figure, ...]:
    near, far = trial.touch_gate
    gate = (
        figure("touch_gate_near", near, "m", "length", "touch_gate"),
        figure("touch_gate_far", far, "m", "length", "touch_gate"),
    )
    known = trial.touch_is_known
    return (
        (_rule_figure("touch", _rule_readings(trial, trial.chosen.press)), *gate) if known else gate
    )


def _seat_words(trial: Trial) -> str:
    if not trial.touch_is_known:
        return ""
    low, best, high = _rule_readings(trial, 0.0)
    show = trial.show
    return f": {show.band(max(low, 0.0), high, 'length')}, likely {show.length(best)}"


def _seat_figures(trial: Trial) -> tuple[Figure, ...]:
    return (_rule_figure("seat", _rule_readings(trial, 0.0)),) if trial.touch_is_known else ()


def _mark(trial: Trial) -> str:
    """Which face is meant, where nothing on the work tells."""
    plain = not trial.job.work.bore.readings and len(trial.hold.line.outside) == 1
    return " (either face: mark it)" if plain else " (A is where depths count from)"


def _rule_readings(trial: Trial, before: float) -> tuple[float, float, float]:
    """Low, likely and high rule reading (m) from the large-end face, `before` m short of the seat.

    Only what the gate lets through: outside it nothing is pressed.
    """
    low, high = trial.within_lines(*trial.seat_band)
    best = min(max(likely(trial.seat), low), high)
    near, middle, far = (trial.from_large_end(x - before) for x in (high, best, low))
    return near, middle, far


def _rule_figure(name: str, reading: tuple[float, float, float]) -> Figure:
    low, best, high = reading
    return figure(f"{name}_rule_reading", best, "m", "length", "rule_reading", band=(low, high))


def _cut(trial: Trial) -> Iterator[Line]:
    turned = any(cut.on_lathe for cut in trial.cuts)
    if turned:
        yield from _turn(trial)
    for (title, text, figures, blanks), cut in loads(trial, set_already=not turned):
        own = () if cut is None else cut_figures(cut, trial)
        yield title, text, (*figures, *own), blanks
    yield from crown_line(trial, "Feed both halves towards the headstock: that tightens the seat.")


def _turn(trial: Trial) -> Iterator[Line]:
    yield (
        "Indicator",
        "On the ground part beside the work: that is how true the work will be. On rim and faces only to see whether the "
        "stock cleans up.",
        (),
        ("ground part", "rim"),
    )
    turned = [cut for cut in trial.cuts if cut.on_lathe]
    loosens = any(cut.seat_effect == LOOSENS for cut in turned)
    watch = " A cut that loosens the seat is kept light: watch the pencil line." if loosens else ""
    yield (
        "Cut, in the order of the table",
        f"Its speeds, or the next slower. {DIALS[trial.job.shelf.machine.dial]} Facing stops in the chamfer, short of the mandrel{_touched(trial)}.{watch}"
        f"{_interrupted(trial)}",
        tuple(f for cut in turned for f in cut_figures(cut, trial)),
        (),
    )
    yield from parallel_step(trial, trial.mandrel.overall_length)
    growth, (to_size, size) = likely(trial.grip.growth), last_size(trial)
    yield (
        "Cool, then the last size",
        f"Let work and mandrel come to one temperature before the last pass and before measuring.{to_size} On the mandrel "
        f"the outside measures {_larger(growth, trial)}.{edge_words(trial.job, trial.show)}",
        (*size, *_grown(growth)),
        size_blanks(trial.job),
    )


DIALS = {
    "radius": "Depths are on radius, as this lathe's dial counts.",
    "diameter": "Depths are on radius: this lathe's dial counts diameter, turn it twice as far.",
    "unknown": "Depths are on radius; a dial that counts diameter is turned twice as far.",
}
"""What a depth in the table of cuts is on the cross slide's dial."""

TOUCHED = {
    "hard": ": it is hard and takes the edge off the tool",
    "soft": ": it is soft, and one touch scores it",
    "unknown": "",
}
"""What a tool that runs into the mandrel does (common practice, no source)."""


def _touched(trial: Trial) -> str:
    note = trial.shop.notes_of.get(trial.mandrel.name)
    return TOUCHED[note.hardness if note else "unknown"]


def _interrupted(trial: Trial) -> str:
    """What spokes and holes do to the cuts: a whole rim is no interrupted cut, a face across spokes is."""
    if hole_in_the_outside(trial.job):
        return " The cross hole knocks at the tool once a turn: chamfer or plug its mouth."
    out = ""
    if any(runs_out(cut, trial.job) for cut in trial.cuts):
        out = (
            " The rim is out as cast: at first the tool cuts for part of each turn only and knocks; find the high spot by "
            "hand, zero the dial there, and go on at the same feed until it cuts all round; on the low side it rubs on the skin "
            "until then, so keep a keen spare edge."
        )
    if trial.job.work.spokes is None:
        return out
    return out + (
        " Face rim and hub only: across the spokes every one of them knocks. The rim springs in between the spokes "
        "under the tool and comes out with as many highs: take the last pass light."
    )


def cut_figures(cut: Cut, trial: Turned) -> tuple[Figure, ...]:
    """Speed, depth and feed of a cut, with where they come from."""
    chosen = (
        ("stated",)
        if cut.id.startswith("cut-")
        else (trial.tables.cut_defaults(trial.job.work.material).source,)
    )
    depth = "small" if cut.kind == "grind" else "depth"
    feed = "length" if cut.kind == "gear" else "feed"
    return (
        figure(f"{cut.id}_spindle", cut.spindle_speed, "rev/s", "spindle", "spindle_speed"),
        figure(f"{cut.id}_depth", cut.depth, "m", depth, "", sources=chosen),
        figure(f"{cut.id}_feed", cut.feed, "m", feed, "", sources=chosen),
    )


def _press_off(trial: Trial) -> Iterator[Line]:
    off, show = trial.grip.push_off, trial.show
    yield (
        "Press off",
        f"Turn it over: large end down, hub on the same ring under face {trial.hold.leading}, catch the mandrel, and push on the small end, about "
        f"{show.force(likely(off))}{_drift(trial)}.",
        (figure("push_off_force", likely(off), "N", "force", "push_off"),),
        (),
    )
