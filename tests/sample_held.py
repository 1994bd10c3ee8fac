"""Work held in other ways than the plain taper, made by hand for tests of drawings and sheets.

Sizes are invented and right in shape only; nothing here is computed by borewright.
"""

from __future__ import annotations

from dataclasses import replace
from math import pi

from tests.sample_plan import INCH, sample_plan, wordiest_plan

from borewright.answer.held_picture import HeldMark, HeldNote, HeldPicture, HeldRing, Role
from borewright.answer.plan import Plan
from borewright.answer.records import Candidate, Figure, Have, Need, Verdict

MM = 1e-3
HELD = (
    "jaws on a hub",
    "strapped faceplate",
    "nut mandrel",
    "ring clamped endwise",
    "tiny bush on a stub",
    "webbed wheel on a plate",
    "thin ring in soft jaws",
    "expanding sleeve",
    "bonded disc",
)


def sample_picture(shape: str) -> HeldPicture:
    """One of the hand-made holds."""
    return _PICTURES[shape]()


def sample_held(shape: str, units: str = "inch", big: bool = False) -> Plan:
    """A whole plan of a hand-made hold, as wordy as the sample on a mandrel."""
    return _held(sample_plan(units, big=big), shape)


def wordiest_held(shape: str, units: str = "inch") -> Plan:
    """More words than any job asks for."""
    return _held(wordiest_plan(units), shape)


def _held(plan: Plan, shape: str) -> Plan:
    picture = sample_picture(shape)
    outside = max(g.outer for g in picture.rings if g.role is Role.WORK)
    needs = (
        Need("three-jaw chuck", Have.OWN),
        Need("the stub and its washer, with a 5/16 in screw", Have.MAKE, 25.0),
        Need("retaining compound", Have.BUY),
    )
    chosen = Candidate(
        "turned-stub", "stub turned to 0.6251 in", "B", Verdict.CARE, "it holds", True, "slip",
        4.5e-6, 42.0, needs,
    )  # fmt: skip
    others = tuple(
        Candidate(f"way-{k}", f"way {k} of holding it", "A", verdict, f"Reason {k}.", True, "true",
                  (3 + k) * 1e-6, 31.0 + 17 * k, needs[:k])
        for k, verdict in enumerate((Verdict.YES, Verdict.CARE, Verdict.CARE, Verdict.NO))
    )  # fmt: skip
    slip = Figure("slip_radius", 0.8 * outside, "m", 0.55 * outside, 1.3 * outside, kind="length")
    questions = tuple(replace(q, figures=(slip,)) if q.id == "slip" else q for q in plan.questions)
    return replace(
        plan, chosen=chosen, candidates=(chosen, *others), better_ways=others[:3], layout=None,
        questions=questions, push=None, bore_window=None, held=picture,
    )  # fmt: skip


def _wheel(start: float, outside: float, length: float, bore: float) -> tuple[HeldRing, ...]:
    return (HeldRing(Role.WORK, start, start + length, outside / 2, bore / 2),)


def _webbed(start: float, outside: float, length: float, bore: float) -> tuple[HeldRing, ...]:
    """Hub, web and rim; hub and rim as long as each other, the web a fifth of it in the middle."""
    hub, rim = 0.1 * outside, 0.42 * outside
    end, web = start + length, start + 0.4 * length
    return (
        HeldRing(Role.WORK, start, end, hub, bore / 2),
        HeldRing(Role.WORK, web, web + 0.2 * length, rim, bore / 2),
        HeldRing(Role.WORK, start, end, outside / 2, rim),
    )


def _jaws_on_a_hub() -> HeldPicture:
    """A wheel whose hub is gripped in the jaws, the rim free."""
    return HeldPicture(
        (
            HeldRing(Role.SPINDLE, -70 * MM, -40 * MM, 62 * MM),
            HeldRing(Role.JAW, -40 * MM, 0.0, 55 * MM, 20 * MM),
            HeldRing(Role.WORK, -22 * MM, 4 * MM, 20 * MM, 8 * MM),
            HeldRing(Role.WORK, 4 * MM, 26 * MM, 65 * MM, 8 * MM),
        ),
        (HeldMark(Role.JAW, 37.5 * MM, 35 * MM, 3),),
        turned=(4 * MM, 26 * MM),
    )


def _strapped_faceplate() -> HeldPicture:
    """A crank disc off balance, three straps, a counterweight opposite the lump."""
    return HeldPicture(
        (
            HeldRing(Role.SPINDLE, -60 * MM, -25 * MM, 30 * MM),
            HeldRing(Role.PLATE, -25 * MM, 0.0, 130 * MM),
            *_wheel(0.0, 200 * MM, 30 * MM, 25 * MM),
            HeldRing(Role.STRAP, 30 * MM, 42 * MM, 118 * MM, 70 * MM),
            HeldRing(Role.SCREW, 0.0, 55 * MM, 112 * MM, 106 * MM),
            HeldRing(Role.WEIGHT, 0.0, 20 * MM, 128 * MM, 104 * MM),
        ),
        (
            HeldMark(Role.STRAP, 94 * MM, 48 * MM, 3),
            HeldMark(Role.WEIGHT, 116 * MM, 24 * MM, 1, pi),
        ),
        (HeldNote(Role.WEIGHT, "counterweight, 1.2 kg at 116 mm"),),
        turned=None,
    )


def _nut_mandrel() -> HeldPicture:
    """A thin wheel between shoulder and nut, between centers, with a dog."""
    return HeldPicture(
        (
            HeldRing(Role.CENTER, -25 * MM, -8 * MM, 9 * MM),
            HeldRing(Role.CENTER, -8 * MM, 0.0, 9 * MM, 0.0, 3 * MM),
            HeldRing(Role.DOG, 4 * MM, 16 * MM, 28 * MM, 8 * MM),
            HeldRing(Role.MANDREL, 0.0, 40 * MM, 8 * MM),
            HeldRing(Role.MANDREL, 40 * MM, 52 * MM, 18 * MM),
            HeldRing(Role.MANDREL, 52 * MM, 75 * MM, 10 * MM),
            HeldRing(Role.MANDREL, 75 * MM, 105 * MM, 8 * MM),
            *_wheel(52 * MM, 90 * MM, 20 * MM, 20 * MM),
            HeldRing(Role.WASHER, 72 * MM, 75 * MM, 17 * MM, 10 * MM),
            HeldRing(Role.NUT, 75 * MM, 87 * MM, 13 * MM, 8 * MM),
        ),
        (HeldMark(Role.DOG, 22 * MM, 20 * MM, 1),),
        tailstock=True,
        turned=(52 * MM, 72 * MM),
    )


def _ring_clamped_endwise() -> HeldPicture:
    """A thin ring against a plate, pressed along the axis by a disc and a center screw."""
    return HeldPicture(
        (
            HeldRing(Role.SPINDLE, -50 * MM, -20 * MM, 25 * MM),
            HeldRing(Role.PLATE, -20 * MM, 0.0, 75 * MM),
            HeldRing(Role.WORK, 0.0, 12 * MM, 50 * MM, 46 * MM),
            HeldRing(Role.WASHER, 12 * MM, 20 * MM, 48.5 * MM, 5 * MM),
            HeldRing(Role.SCREW, 0.0, 34 * MM, 5 * MM),
        ),
        (HeldMark(Role.SCREW, 0.0, 10 * MM),),
        (HeldNote(Role.WASHER, "disc that clamps the ring along the axis"),),
        turned=(0.0, 12 * MM),
    )


def _tiny_bush() -> HeldPicture:
    return HeldPicture(
        (
            HeldRing(Role.SPINDLE, -14 * MM, -8 * MM, 9 * MM),
            HeldRing(Role.JAW, -8 * MM, 0.0, 7 * MM, 3 * MM),
            HeldRing(Role.MANDREL, -8 * MM, 2 * MM, 3 * MM),
            HeldRing(Role.MANDREL, 2 * MM, 7.5 * MM, 2 * MM),
            *_wheel(2 * MM, 8 * MM, 6 * MM, 4 * MM),
            HeldRing(Role.WASHER, 8 * MM, 9 * MM, 3.4 * MM, 1 * MM),
            HeldRing(Role.SCREW, 9 * MM, 11 * MM, 1.8 * MM),
        ),
        (HeldMark(Role.JAW, 5 * MM, 4 * MM, 3),),
        turned=(2 * MM, 8 * MM),
    )


def _webbed_on_a_plate() -> HeldPicture:
    """A 310 mm wheel bolted through its web to a plate with a spigot."""
    return HeldPicture(
        (
            HeldRing(Role.SPINDLE, -70 * MM, -30 * MM, 40 * MM),
            HeldRing(Role.PLATE, -30 * MM, 0.0, 150 * MM),
            HeldRing(Role.PLATE, 0.0, 18 * MM, 12.5 * MM),
            *_webbed(0.0, 310 * MM, 50 * MM, 25 * MM),
            HeldRing(Role.SCREW, 30 * MM, 42 * MM, 88 * MM, 72 * MM),
            HeldRing(Role.PIN, 0.0, 40 * MM, 64 * MM, 52 * MM),
        ),
        (
            HeldMark(Role.SCREW, 80 * MM, 16 * MM, 4, pi / 4),
            HeldMark(Role.PIN, 58 * MM, 12 * MM, 2),
        ),
        (HeldNote(Role.PLATE, "plate with a spigot turned in place"),),
        turned=(0.0, 50 * MM),
    )


def _thin_ring_in_soft_jaws() -> HeldPicture:
    return HeldPicture(
        (
            HeldRing(Role.SPINDLE, -90 * MM, -50 * MM, 80 * MM),
            HeldRing(Role.JAW, -50 * MM, -12 * MM, 75 * MM, 30 * MM),
            HeldRing(Role.JAW, -12 * MM, 0.0, 75 * MM, 50 * MM),
            *_wheel(-12 * MM, 100 * MM, 25 * MM, 90 * MM),
        ),
        (HeldMark(Role.JAW, 62.5 * MM, 25 * MM, 3),),
        (HeldNote(Role.JAW, "soft jaws bored to the ring"),),
        turned=(0.0, 13 * MM),
    )


def _expanding_sleeve() -> HeldPicture:
    """A slit sleeve on a cone, both round all the way."""
    return HeldPicture(
        (
            HeldRing(Role.CENTER, -20 * MM, 0.0, 9 * MM, 0.0, 2 * MM),
            HeldRing(Role.MANDREL, 0.0, 20 * MM, 9 * MM),
            HeldRing(Role.MANDREL, 20 * MM, 90 * MM, 10 * MM, 0.0, 6 * MM),
            HeldRing(Role.MANDREL, 90 * MM, 105 * MM, 5 * MM),
            HeldRing(Role.SLEEVE, 30 * MM, 70 * MM, 12.5 * MM, 9.4 * MM, 12.5 * MM, 7.2 * MM),
            *_wheel(34 * MM, 60 * MM, 30 * MM, 25 * MM),
        ),
        (),
        (HeldNote(Role.SLEEVE, "slit sleeve"),),
        tailstock=True,
        turned=(34 * MM, 64 * MM),
    )


def _bonded_disc() -> HeldPicture:
    """A disc three millimetres thick stuck to a stub's face."""
    return HeldPicture(
        (
            HeldRing(Role.JAW, -30 * MM, -5 * MM, 45 * MM, 25 * MM),
            HeldRing(Role.SPINDLE, -55 * MM, -30 * MM, 50 * MM),
            HeldRing(Role.MANDREL, -30 * MM, 10 * MM, 25 * MM),
            HeldRing(Role.BOND, 10 * MM, 10.1 * MM, 25 * MM),
            HeldRing(Role.WORK, 10.1 * MM, 13.1 * MM, 30 * MM, 5 * MM),
        ),
        (HeldMark(Role.JAW, 35 * MM, 20 * MM, 3),),
        (HeldNote(Role.MANDREL, "stub, faced"), HeldNote(Role.BOND, "glue on the whole face")),
        turned=(10.1 * MM, 13.1 * MM),
    )


_PICTURES = dict(
    zip(
        HELD,
        (
            _jaws_on_a_hub, _strapped_faceplate, _nut_mandrel, _ring_clamped_endwise, _tiny_bush,
            _webbed_on_a_plate, _thin_ring_in_soft_jaws, _expanding_sleeve, _bonded_disc,
        ),
        strict=True,
    )
)  # fmt: skip

__all__ = ["HELD", "INCH", "sample_held", "sample_picture", "wordiest_held"]
