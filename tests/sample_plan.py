"""Plans made by hand for tests of drawings and reports: invented figures, right in shape only.

Nothing here is computed by borewright; no number is a check value for mechanics.
"""

from __future__ import annotations

from dataclasses import replace
from math import pi

from borewright.answer.picture import Band, Layout, Ring
from borewright.answer.plan import Plan
from borewright.answer.records import (
    Assumption,
    Candidate,
    Caution,
    Cut,
    Figure,
    Input,
    ProofLoad,
    PushAdvice,
    Question,
    Step,
    Verdict,
)

INCH = 0.0254
QUESTION_IDS = (
    "seat", "bore", "push", "crack", "slip", "rock", "bend", "heat", "true", "reach", "speed",
)  # fmt: skip
SHAPES = ("wheel", "disc", "bush", "quarter", "webbed", "long hub")


def sample_layout(shape: str = "wheel") -> Layout:
    """One of the invented shapes: small, huge, thin, webbed and long work on its mandrel."""
    return _LAYOUTS[shape]()


def sample_plan(units: str = "inch", big: bool = False, shape: str = "wheel") -> Plan:
    """A whole plan; `big` is as wordy as a plan for a beginner may become."""
    yes, care = Verdict.YES, Verdict.CARE
    many = 14 if big else 8
    return Plan(
        title="Hollow Brook drive wheel"
        + (" for the upper line shaft, second of a pair" if big else ""),
        units=units,
        verdict=care,
        headline="With care: hold it on the 5/8 in mandrel, press it 1 1/2 in past first touch, "
        "and take cuts no deeper than 0.030 in.",
        echo=(
            "aluminium wheel 2.480 in outside, 0.750 in long",
            "bore 0.6252 in by telescope gauge",
        ),
        chosen=Candidate("mandrel", "5/8 in", "A", care, "grips enough for light cuts"),
        questions=tuple(_question(k, name, big) for k, name in enumerate(QUESTION_IDS)),
        candidates=(
            Candidate("mandrel", "5/8 in", "A", care, "grips enough for light cuts"),
            Candidate(
                "mandrel", "16 mm", "A", Verdict.NO, "the bore is smaller than its small end"
            ),
        ),
        better_ways=(
            Candidate(
                "one setting", "", "", yes, "bore and rim in one chucking need no mandrel", False
            ),
        ),
        steps=tuple(_step(k, big) for k in range(1, many + 1)),
        cautions=tuple(
            Caution(f"caution-{k}", _CAUTIONS[k % len(_CAUTIONS)], "practice")
            for k in range(6 if big else 3)
        ),
        cuts=tuple(_cut(k) for k in range(4 if big else 2)),
        have_ready=(
            "5/8 in mandrel and its dog",
            "dead center, oil",
            "tenths micrometer",
            "lead pencil",
        ),
        figures=(_force("push", 1900.0),),
        bore_window=(0.6241 * INCH, 0.6264 * INCH),
        push=_push(),
        proof=ProofLoad(14.0, 0.3048, 45.9, 0.0315, 444.0, 1.5),
        layout=sample_layout(shape),
        assumed=tuple(
            Assumption(f"friction {k}", "0.12, oiled steel on aluminium", "practice")
            for k in range(8 if big else 3)
        ),
        not_judged=("balance", "porosity of the casting"),
        sources=("practice", "tm-1-420", "od1645")[: 3 if big else 2],
        notes=("measure the bore again warm",),
    )


def wordiest_plan(units: str = "inch") -> Plan:
    """More words than any job asks for: webbed casting, long names, steps, cautions, four cuts."""
    plan, name = sample_plan(units, big=True, shape="webbed"), "the third 3/4 in mandrel of the set"
    steps = tuple(replace(s, text=f"{s.text} {_LONG.format(name)}") for s in plan.steps[:12])
    cautions = tuple(
        Caution(
            f"caution-{k}", f"Hazard {k}: {_CAUTIONS[k % 3]} {_CAUTIONS[(k + 1) % 3]}", "practice"
        )
        for k in range(13)
    )
    return replace(
        plan,
        headline=f"{plan.headline} {_LONG.format(name)}",
        steps=steps,
        cautions=cautions,
        have_ready=tuple(f"{name}, {what}" for what in plan.have_ready),
        better_ways=tuple(replace(plan.better_ways[0], way=f"way {k}") for k in range(4)),
        assumed=tuple(replace(a, what=f"{a.what} of {name}") for a in plan.assumed),
    )


def _question(k: int, name: str, big: bool) -> Question:
    reason = f"the {name} holds in most cases" + (
        " but a light casting with an unknown bore finish moves it either way" if big else ""
    )
    verdict = Verdict.CARE if k % 4 == 0 else Verdict.YES
    return Question(
        name, verdict, 1.7 + k, 0.8 + k / 2, reason, "travel", (_force(f"{name}_force", 300.0 + k),)
    )


def _force(name: str, best: float) -> Figure:
    return Figure(
        name, best, "N", 0.6 * best, 1.5 * best, "press-force",
        (Input("friction", 0.12, ""), Input("normal force", 16e3, "N")), ("practice",), "force",
    )  # fmt: skip


def _push() -> PushAdvice:
    return PushAdvice(
        _force("push_expected", 1900.0),
        _force("push_look_for", 1500.0),
        _force("push_stop", 4000.0),
        Figure("torque_proved", 10.5, "N·m", 8.0, 12.0, kind="torque"),
        0.7,
        1.0,
    )


def _step(k: int, big: bool) -> Step:
    text = _STEPS[(k - 1) % len(_STEPS)]
    extra = (
        " Do not hurry this; the next step depends on it, and write down what was read."
        if big
        else ""
    )
    figures = (
        Figure(f"travel_{k}", (1 + k / 8) * INCH, "m", kind="length"),
        Figure(f"push_{k}", 1000.0 + 37 * k, "N", 900.0, 2000.0, kind="force"),
    )
    return Step(
        k, f"Step title {k}", text + extra, figures[: k % 3], ("bore at A",) if k % 2 else ()
    )


def _cut(k: int) -> Cut:
    return Cut(
        f"cut-{k}", "turn" if k % 2 == 0 else "face", f"{'rim' if k % 2 == 0 else 'face'} cut {k + 1}",
        0.063, 0.03 * INCH, 0.004 * INCH, 2 + k, 1.0, 350 / 60, pi / 2, 0.4e-3,
        "towards the headstock", "tightens",
    )  # fmt: skip


_STEPS = (
    "Wipe the mandrel and the bore, then put a film of oil on both.",
    "Slide the work on from the small end until it touches.",
    "Press it on; support the hub, not the rim.",
    "Draw a pencil line across work and mandrel.",
    "Hang the proof load and look at the pencil line.",
    "Set it between centers with the dog at the headstock.",
    "Turn the rim towards the headstock.",
)
_LONG = "Read the rule from the large-end face of {} before and after, and write both down."
_CAUTIONS = (
    "Never let the tool touch a hard mandrel.",
    "Keep loose sleeves and the dog's tail clear of each other.",
    "A cracked casting can burst: tap it and listen before pressing.",
)


def _layout(
    nominal: float,
    ground: float,
    rings: tuple[Ring, ...],
    seat: float,
    slip: float | None,
    slip_low: float | None,
    travel: float = 1.5 * INCH,
    end_length: float = 0.6 * INCH,
) -> Layout:
    taper = 0.0005
    small = nominal - 0.0005 * INCH
    length = max(r.end for r in rings)
    bore = small + taper * (seat - travel)
    zs = tuple(length * k / 40 for k in range(41))
    tight = tuple(small + taper * (seat - z) - bore for z in zs)
    band = 0.16 * INCH
    return Layout(
        mandrel_name="the sample mandrel",
        small_end=small,
        large_end=small + taper * ground,
        ground_length=ground,
        overall_length=ground + 2 * end_length,
        end_diameter=0.88 * nominal,
        end_length=end_length,
        bore=bore,
        work_length=length,
        rings=tuple(replace(r, inside=max(r.inside, bore)) for r in rings),
        seat=Band(seat - band, seat, seat + band),
        touch=Band(seat - travel - band, seat - travel, seat - travel + band),
        travel=travel,
        leading_face="A",
        tool_limit_large=min(seat + 0.35 * INCH, ground),
        tool_limit_small=seat - length - 0.4 * INCH,
        slip_radius=slip,
        slip_radius_low=slip_low,
        interference_z=zs,
        interference=tight,
        interference_kept=tuple(v - 5e-6 for v in tight),
    )


def _webbed() -> tuple[Ring, ...]:
    return (
        Ring(0.0, 0.045, 0.045, 0),
        Ring(0.015, 0.024, 0.130, 0.045),
        Ring(0.005, 0.035, 0.150, 0.130),
    )


_LAYOUTS = {
    "wheel": lambda: _layout(
        0.625 * INCH, 4.4 * INCH, (Ring(0, 0.019, 0.063, 0),), 0.070, 0.045, 0.026
    ),
    "disc": lambda: _layout(
        0.016, 0.125, (Ring(0, 0.040, 0.060, 0), Ring(0.012, 0.032, 0.310, 0)),
        0.085, 0.080, 0.050, travel=0.040,
    ),
    "bush": lambda: _layout(
        0.022, 0.140, (Ring(0, 0.040, 0.0286, 0),), 0.095, None, None, travel=0.035
    ),
    "quarter": lambda: _layout(
        0.25 * INCH, 2.9 * INCH, (Ring(0, 0.010, 0.025, 0),), 0.045, 0.010, 0.0075,
        travel=0.02, end_length=0.4 * INCH,
    ),
    "webbed": lambda: _layout(0.75 * INCH, 5.5 * INCH, _webbed(), 0.100, 0.090, 0.052),
    "long hub": lambda: _layout(
        0.025, 0.190, (Ring(0, 0.110, 0.050, 0), Ring(0.040, 0.070, 0.090, 0.05)),
        0.150, 0.030, 0.020, travel=0.06,
    ),
}  # fmt: skip
