"""What holds a casting, what feeds it, and its core: bosses, jaws, risers that find room or none."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.cast_jobs import EXAMPLE, ROOT, TABLES, disc, disc_in, said, told
from tests.cli_run import ran, refused

from borewright.errors import RefusedInput
from borewright.job import parse_job, read_job
from borewright.making.blank.casting import made_casting
from borewright.making.blank.casting_asked import CastingAsked
from borewright.making.blank.casting_drawn import drawn_casting
from borewright.making.blank.feed_words import feeding_words
from borewright.making.blank.holds import hold_words, holds_of
from borewright.quantities.show import Show


@pytest.fixture
def disc_file(tmp_path: Path) -> str:
    return disc_in(tmp_path)


def test_a_boss_is_there_only_where_it_is_asked_for_and_is_in_the_weight() -> None:
    without = made_casting(disc(), CastingAsked(), TABLES)
    plain = made_casting(disc(), CastingAsked(boss="B"), TABLES)
    assert without.boss is None
    assert plain.boss is not None
    assert plain.core is not None
    tube = (plain.boss.diameter**2 - plain.core.diameter**2) * math.pi / 4 * plain.boss.length
    more = plain.melt.casting - without.melt.casting
    assert more == pytest.approx(plain.density * tube, rel=0.05)  # and the boss's draft
    assert "boss" in {across.limits.after for across in drawn_casting(plain, TABLES).across}


@settings(max_examples=60, deadline=None)
@given(st.floats(12, 150), st.floats(30, 400), st.floats(15, 120), st.sampled_from(("inch", "mm")))
def test_a_boss_leaves_a_wall_draws_out_and_is_long_for_its_weight(
    bore: float, outside: float, long: float, units: str
) -> None:
    if bore > outside - 10:
        return
    sizes = f'bore = "{bore:.2f}mm", outside = "{outside:.2f}mm", length = "{long:.2f}mm"'
    job = parse_job(f'units = "{units}"\nwork = {{material = "gray iron", {sizes}}}', "job.toml")
    try:
        made = made_casting(job, CastingAsked(boss="A"), TABLES)
    except RefusedInput:
        return
    assert made.boss is not None
    assert made.boss.diameter * 1e3 >= bore + 2 * 6.3
    root = made.boss.diameter + 2 * made.boss.length * math.tan(made.mould.outside_draft)
    assert root <= made.outside + 1e-9
    assert made.boss.length >= max(0.0127, 0.12 * made.outside) - 1e-9
    if made.core:
        assert made.core.between <= 6 * made.core.diameter + 0.01


def test_a_bush_that_a_boss_would_not_hold_is_refused_one_and_told_what_does() -> None:
    text = (ROOT / "examples/twelve/06-bronze-bush.toml").read_text(encoding="utf-8")
    job = parse_job(text.replace('blank = "bar"', 'blank = "casting"'), "bush.toml")
    with pytest.raises(RefusedInput, match="wall round the bore"):
        made_casting(job, CastingAsked(boss="B"), TABLES)
    said = " ".join(hold_words(made_casting(job, CastingAsked(), TABLES), TABLES))
    assert "Jaws find only its own outside" in said
    assert "63.5 mm" in said  # 44.8 as cast, 6 to part, 12.7 for jaws
    assert "3 in one stick, 150.7 mm" in said  # 3 x (40 + 6) and 12.7


def test_the_casting_s_job_says_that_its_plan_knows_no_boss(tmp_path: Path, disc_file: str) -> None:
    cast = tmp_path / "cast.toml"
    said("--by", "casting", "--boss", "B", "--job", str(cast), job=disc_file)
    comment = " ".join(
        line[2:] for line in cast.read_text(encoding="utf-8").splitlines() if line.startswith("# ")
    )
    assert "the first hold by the boss is not in that plan" in comment
    out = told("--by", "casting", "--boss", "B", job=disc_file)
    assert "the first hold by the boss is not in that plan" in out


def test_jaws_are_told_of_the_rim_only_where_they_go_in() -> None:
    small = """
    units = "inch"
    [work]
    material = "brass"
    bore = "0.187in"
    outside = "1 1/2in"
    length = "1/2in"
    hub = { outside = "1/2in" }
    web = { thickness = "1/8in" }
    rim = { inside = "1 1/4in" }
    """
    made = made_casting(parse_job(small, "small.toml"), CastingAsked(), TABLES)
    assert holds_of(made, TABLES) == ()  # 1 1/4 in is less than the jaws of a chuck
    wide = made_casting(read_job(EXAMPLE), CastingAsked(), TABLES)
    assert all("inside of the rim" in hold for hold in holds_of(wide, TABLES))
    assert len(holds_of(wide, TABLES)) == 2
    narrow = Path(EXAMPLE).read_text(encoding="utf-8").replace('"1 3/4in"', '"3 1/4in"')
    tight = made_casting(parse_job(narrow, "tight.toml"), CastingAsked(), TABLES)
    assert holds_of(tight, TABLES) == ()  # 9/16 in between hub and rim


def test_a_riser_that_finds_no_room_is_said_and_nothing_is_kept_clear(tmp_path: Path) -> None:
    wheel = tmp_path / "wheel.toml"
    text = Path(EXAMPLE).read_text(encoding="utf-8")
    text = text.replace('low = "0.8750in"', 'low = "1.1250in"')
    wheel.write_text(text.replace('high = "0.8758in"', 'high = "1.1258in"'), encoding="utf-8")
    out, numbers = told(job=str(wheel)), said(job=str(wheel))
    assert numbers["cored"] is True
    assert numbers["riser_fits"] is False
    assert "With care: no riser that freezes later than the hub fits" in out
    assert "chills of iron" in out
    assert "edge of the bore" not in out
    assert said()["riser_fits"] is True


def test_a_core_that_is_refused_names_its_option_and_its_reason() -> None:
    pulley = str(ROOT / "examples/twelve/01-beginner-pulley.toml")
    line = refused("make", "blank", pulley, "--by", "casting", "--core", "cored")
    assert "--core: found cored" in line
    assert "thick; below 1/2 in (12.7 mm) it breaks" in line
    assert "times" not in line


def test_a_core_never_comes_out_at_nothing() -> None:
    made = made_casting(disc(bore=5, outside=40, long=12), CastingAsked(), TABLES)
    assert "0 mm" not in made.core_why
    with pytest.raises(RefusedInput, match="takes up the whole of a bore"):
        made_casting(disc(bore=5, outside=40, long=12), CastingAsked(bore="cored"), TABLES)


@pytest.mark.parametrize(
    "outline",
    [
        "{from=0, to=40, outside=50}, {from=15, to=25, outside=260, inside=50}, {from=0, to=30, outside=300, inside=260}",
        "{from=0, to=70, outside=80}, {from=19, to=31, outside=170, inside=80}, {from=0, to=50, outside=200, inside=170}",
    ],
    ids=["slight hub", "stout hub"],
)  # fmt: skip
def test_where_a_plan_grips_the_casting_is_among_what_jaws_could_take(
    outline: str, tmp_path: Path
) -> None:
    job, cast = tmp_path / "wheel.toml", tmp_path / "cast.toml"
    sizes = f'material = "gray iron"\nblank = "casting"\nbore = "25 H7"\noutline = [{outline}]'
    job.write_text(f'units = "mm"\n[work]\n{sizes}\n', encoding="utf-8")
    out = told("--job", str(cast), job=str(job))
    assert "by the hub" in " ".join(ran("plan", str(cast)).out.split())
    assert "jaws could take the hub at face B" in out


@pytest.mark.parametrize(("bore", "past"), [("24.5mm", False), ("15mm", True)])
def test_a_riser_wider_than_the_bore_is_said_to_reach_past_its_edge(bore: str, past: bool) -> None:
    """A solid disc 62 by 8 mm as cast: 31 x 8 / (2 (31 + 8)) is 3.18, and six times that 19.1 mm."""
    made = made_casting(disc("al-cast", f'"{bore}"', 60, 6), CastingAsked(stock=1e-3), TABLES)
    assert made.core is None
    assert (made.mould.riser.diameter > made.wheel.bore.size) is past
    assert ("past the edge of the bore" in " ".join(feeding_words(made, Show("mm")))) is past
