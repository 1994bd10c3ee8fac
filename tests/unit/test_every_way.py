"""The contract of every way of holding: whatever is registered can be asked, shown and taught.

Each has some common part that it holds; there it has its words, its grip, its steps and a drawing.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from borewright.answer.held import HEAD_FACE, OUTSIDE, TAIL_FACE, Held
from borewright.answer.held_picture import Role
from borewright.answer.records import Have, Verdict
from borewright.holding import ways as ways_room
from borewright.holding.registry import PLAIN_TAPER, WAYS
from borewright.job.records import Bore, BoreReading, Job, Piece, Shelf, Work
from borewright.job.tools import OwnHolding
from borewright.mechanics.spread import COUNT
from borewright.planning.questions.asked import ORDER
from borewright.reference.library import Tables
from borewright.service.planned import plan

TABLES = Tables()


def work(material: str, *rings: Piece, bore: float = 0.016, **more: object) -> Work:
    hole = Bore(bore, 5e-6, "plug gauge", str(more.pop("made_by", "reamed")))
    return Work(material, rings, hole, **more)


def hubbed(out: float) -> tuple[Piece, ...]:
    """A wheel whose hub stands out at face A by so much (m)."""
    return (
        Piece(0.0, out + 0.02, 0.04),
        Piece(out, out + 0.02, 0.11, 0.04),
    )


WHEEL = work("al-6061-t6", Piece(0.0, 0.025, 0.063), blank="bar")
HUBBED = work("gray-iron-30", *hubbed(0.03), blank="casting")
RAW = work("steel-1018", *hubbed(0.03), blank="bar", made_by="drilled")
RING = work("al-6061-t6", Piece(0.0, 0.008, 0.112), bore=0.100, blank="bar")
DISC = work("al-6061-t6", Piece(0.0, 0.02, 0.310), bore=0.025, blank="bar")
MANY = replace(WHEEL, pieces=(Piece(0.0, 0.008, 0.063),), quantity=12)
BUSH = work("bronze-sae-660", Piece(0.0, 0.04, 0.0286), bore=0.022, blank="bar")
PARTS = (WHEEL, HUBBED, RAW, RING, DISC, MANY, BUSH)

EVERYTHING = Shelf(
    holding=tuple(OwnHolding(name) for name in TABLES.table("holding_tools").column("id"))
)
NEEDS_A_KEY_OF_ITS_OWN = ("threaded",)
"""Ways that none of the plain parts above can take."""


def held_of(way: str) -> list[Held]:
    jobs = (Job("A part", part, "mm", EVERYTHING) for part in PARTS)
    return [h for job in jobs for h in WAYS[way].offer(job, TABLES) if not h.cannot]


COMMON = [way for way in WAYS if way not in NEEDS_A_KEY_OF_ITS_OWN]


@pytest.mark.parametrize("way", WAYS)
def test_each_says_of_every_part_that_it_holds_it_or_why_not(way: str) -> None:
    for part in PARTS:
        offered = WAYS[way].offer(Job("A part", part, "mm"), TABLES)
        assert offered, part
        for held in offered:
            assert held.way == way
            assert (held.grip is None) == bool(held.cannot)
            assert held.cannot == "" or held.cannot.endswith(".")


@pytest.mark.parametrize("way", COMMON)
def test_each_holds_some_common_part(way: str) -> None:
    assert held_of(way)


@pytest.mark.parametrize("way", WAYS)
def test_each_has_steps_before_and_after_and_words_for_a_hand(way: str) -> None:
    for held in held_of(way):
        assert held.tool
        assert held.do_it
        assert held.do_it[0].islower()
        assert not held.do_it.endswith(".")
        assert held.mount
        assert held.release
        assert all(s.title and s.text.endswith((".", "!")) for s in (*held.mount, *held.release))
        assert held.needs
        assert held.marks.endswith(".")
        assert held.leading in ("A", "B")
        assert set(held.reaches) <= {OUTSIDE, TAIL_FACE, HEAD_FACE}
        assert OUTSIDE in held.reaches or held.way in ("four-jaw", "three-jaw", "soft-jaws")


@pytest.mark.parametrize("way", WAYS)
def test_each_has_cautions_of_its_own(way: str) -> None:
    always = {h.id for h in TABLES.cautions("always")}
    for held in held_of(way):
        own = {h.id for h in TABLES.cautions(*held.caution_tags)} - always
        assert own, held.caution_tags


@pytest.mark.parametrize("way", WAYS)
def test_each_is_drawn_with_the_work_in_it(way: str) -> None:
    for held in held_of(way):
        assert held.picture is not None
        roles = {ring.role for ring in held.picture.rings}
        assert Role.WORK in roles
        assert len(roles) > 1
        for ring in held.picture.rings:
            assert ring.start < ring.end
            assert 0 <= ring.inner < ring.outer


@pytest.mark.parametrize("way", WAYS)
def test_each_has_a_grip_as_draws_that_a_cut_can_be_held_against(way: str) -> None:
    for held in held_of(way):
        grip = held.grip
        assert grip is not None
        for name in ("torque", "thrust_in", "thrust_out", "tilt", "runout", "strength", "springs"):
            draws = getattr(grip, name)
            assert draws.shape == (COUNT + 1,), name
            assert (draws >= 0).all(), name
            assert not np.isnan(draws).any(), name
        assert grip.torque[0] > 0
        assert grip.stiffness > 0
        assert grip.half_warm.shape == (COUNT + 1,)


@pytest.mark.parametrize("way", WAYS)
def test_each_is_documented_where_it_is_looked_up(way: str) -> None:
    row = TABLES.way(way)
    assert row.computed
    assert "better" in row.serves_better
    assert TABLES.setup_minutes(way).each.best >= 0
    module = type(WAYS[way]).__module__.rpartition(".")[2]
    assert module in (ways_room.__doc__ or "")


def test_the_table_says_computed_of_exactly_those_that_are() -> None:
    said = {way.id for way in TABLES.ways() if way.computed}
    assert said == {PLAIN_TAPER, *WAYS}


@pytest.mark.parametrize("way", COMMON)
def test_each_can_be_insisted_on_and_is_carried_through(way: str) -> None:
    for part in PARTS:
        answer = plan(Job("A part", part, "mm", EVERYTHING), use=way, source_tables=TABLES)
        assert {c.way for c in answer.candidates} == {way}
        if answer.verdict is Verdict.NO:
            assert answer.headline.startswith("No: ") or answer.headline.startswith("No, ")
            continue
        assert [q.id for q in answer.questions] == list(ORDER)
        assert answer.steps
        assert [s.number for s in answer.steps] == list(range(1, len(answer.steps) + 1))
        assert answer.held is not None
        assert answer.cautions[0].id == "local-codes"


def test_a_tool_that_is_said_to_be_missing_is_made_or_bought_and_never_owned() -> None:
    for way in WAYS:
        for held in held_of(way):
            names = [n.what for n in held.needs if n.have is Have.OWN]
            assert names or held.making > 0, way


def test_an_oval_bore_takes_nothing_round_that_finds_it() -> None:
    oval = (BoreReading(0.005, 0.0160, "x"), BoreReading(0.005, 0.0162, "y"))
    job = Job("Worn", replace(WHEEL, bore=replace(WHEEL.bore, readings=oval)), "mm", EVERYTHING)
    for way in ("turned-stub",):
        assert all(h.cannot for h in WAYS[way].offer(job, TABLES))


JAWS = ("three-jaw", "four-jaw", "soft-jaws", "one-chucking", "expanding", "bonded", "warm-fit")
TURNED_HERE = [way for way in WAYS if way not in JAWS]
"""Ways that something is turned, faced or set true for."""


def bought(way: str, lacks: str) -> list[tuple[Held, bool]]:
    """Every hold of the common parts in a shop without that, and whether it must buy it."""
    shelf = Shelf(have_not=(lacks,))
    jobs = (Job("A part", part, "mm", shelf) for part in PARTS)
    found = [h for job in jobs for h in WAYS[way].offer(job, TABLES) if not h.cannot]
    return [(h, any(n.have is Have.BUY for n in h.needs)) for h in found]


@pytest.mark.parametrize("way", TURNED_HERE)
def test_what_its_steps_clock_with_is_among_what_it_needs(way: str) -> None:
    for held, must in bought(way, "indicator"):
        said = " ".join(s.text for s in held.mount).lower()
        if any(word in said for word in ("clock", "indicator")):
            assert must, held.tool


@pytest.mark.parametrize("way", TURNED_HERE)
def test_what_its_steps_turn_from_bar_needs_bar(way: str) -> None:
    for held, must in bought(way, "bar"):
        text = " ".join(s.text for s in held.mount)
        if any(said in text for said in ("Bar with", "Bar in", "Soft bar", "drawn bar")):
            assert must, held.tool


@pytest.mark.parametrize("way", [w for w in WAYS if w not in JAWS])
def test_only_a_batch_is_told_of_the_next_piece_and_of_the_batch(way: str) -> None:
    for part in PARTS:
        for held in WAYS[way].offer(Job("A part", replace(part, quantity=1), "mm"), TABLES):
            said = " ".join(f"{s.title} {s.text}" for s in (*held.mount, *held.release))
            for word in ("ext piece", "batch", "next on"):
                assert word not in f"{held.do_it} {said}", held.tool
