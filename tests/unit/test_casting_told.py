"""What the sheets of a casting say: stock, faces, metals, grooves, sizes, heats."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.cast_jobs import EXAMPLE, TABLES, disc, disc_in, said, told

from borewright.answer.papers import Grid
from borewright.errors import RefusedInput
from borewright.job import parse_job, read_job
from borewright.job.records import Job
from borewright.making.blank.care import casting_cautions
from borewright.making.blank.casting import made_casting
from borewright.making.blank.casting_asked import CastingAsked
from borewright.making.blank.casting_figures import casting_figures
from borewright.making.blank.casting_papers import casting_papers
from borewright.making.blank.pattern_papers import sizes_of
from borewright.making.blank.stock import lower_face


@pytest.fixture
def disc_file(tmp_path: Path) -> str:
    return disc_in(tmp_path)


def test_what_was_compared_is_said_of_a_bore_drilled_sooner_than_cored() -> None:
    made = made_casting(disc(bore='"25.4mm"'), CastingAsked(), TABLES)
    assert made.core_why.startswith("the bore's smallest, 25.388 mm")


def test_faces_without_stock_are_said_to_stay_as_cast() -> None:
    out = told()
    assert out.count("stays as cast") == 2  # both faces of the web; those of the rim are faced
    assert "the job's outline" in out


@pytest.mark.parametrize(("job", "less"), [(disc(outside=200), True), (read_job(EXAMPLE), False)])
def test_the_lower_face_would_do_with_less_only_where_it_would(job: Job, less: bool) -> None:
    """Iron at 200 mm: 3/16 in above, 4 mm below. Aluminium at 5 in: the standard asks the same of both."""
    made = made_casting(job, CastingAsked(), TABLES)
    lower = lower_face(job, made.wheel, TABLES)
    assert (lower < made.stock("face A") - 1e-9) is less
    words = str(casting_papers(made, lower, TABLES))
    assert ("the one that lies down would do with" in words) is less


def test_stock_that_is_stated_is_called_so_and_warned_of_below_the_standard() -> None:
    out = told("--stock", "1mm")
    assert "The stock stated is taken" in out
    assert "The larger of the two" not in out
    assert "below the standard" in out
    assert "With care: the stock stated is below" in out
    assert "below the standard" not in told("--stock", "4mm")


@pytest.mark.parametrize(
    ("material", "headline"),
    [
        ("al-6061-t6", "is no alloy for casting"),
        ("brass-c360", "is no alloy for casting"),
        ("steel-1018", "is work for a foundry"),
        ("ductile-iron", "is work for a foundry"),
        ("mg-az91", "is work for a foundry"),
        ("gray-iron-30", ""),
        ("al-cast", ""),
        ("bronze-pb1", ""),
    ],
)
def test_what_a_small_shop_does_not_cast_is_said_at_once(material: str, headline: str) -> None:
    job = disc(material, bore=20, outside=100, long=30)
    made = made_casting(job, CastingAsked(), TABLES)
    said = casting_papers(made, 0.0, TABLES).headline
    assert said.startswith("With care: ") is bool(headline)
    assert headline in said
    if "foundry" in headline:
        ids = [c.id for c in casting_cautions(made, TABLES).cautions]
        assert ids[1] in ("foundry-steel", "foundry-ductile", "magnesium-melt")


def test_magnesium_is_told_nothing_of_green_sand() -> None:
    for material, told_of in (("mg-az91", False), ("al-cast", True)):
        made = made_casting(disc(material, bore=100, outside=160, long=20), CastingAsked(), TABLES)
        ids = [c.id for c in casting_cautions(made, TABLES).cautions]
        assert ("green-sand" in ids) is told_of
        assert (made.sand_hole > 0) is told_of
        assert ("how damp" in str(casting_papers(made, 0.0, TABLES))) is told_of


@pytest.mark.parametrize(("bottom", "cuts"), [("138mm", True), ("141mm", False)])
def test_a_groove_through_the_rim_is_refused(bottom: str, cuts: bool) -> None:
    text = f"""
    units = "mm"
    [work]
    material = "gray iron"
    bore = 25
    outside = 160
    length = 40
    hub = {{ outside = 50 }}
    web = {{ thickness = 10 }}
    rim = {{ inside = 140 }}
    finished = {{ outside = 160, grooves = [{{ from = 4, to = 9, bottom = "{bottom}" }}] }}
    """
    job = parse_job(text, "groove.toml")
    if cuts:
        with pytest.raises(RefusedInput, match="right through its metal"):
            made_casting(job, CastingAsked(), TABLES)
    else:
        assert made_casting(job, CastingAsked(), TABLES).wheel.not_cast == ("grooves",)


def test_a_groove_over_the_web_may_go_deeper_than_the_rim() -> None:
    text = """
    units = "mm"
    [work]
    material = "gray iron"
    bore = 25
    outside = 160
    length = 40
    hub = { outside = 50 }
    web = { thickness = 10 }
    rim = { inside = 140 }
    finished = { outside = 160, grooves = [{ from = 17, to = 23, bottom = 130 }] }
    """
    assert made_casting(parse_job(text, "groove.toml"), CastingAsked(), TABLES).boss is None


def test_sizes_are_named_by_ring_and_stand_there_once() -> None:
    made = made_casting(read_job(EXAMPLE), CastingAsked(), TABLES)
    names = [name for name, _ in sizes_of(made)]
    assert names == [
        "outside", "length", "outside of the hub", "face A to the web", "thickness of the web", "inside of the rim",
    ]  # fmt: skip
    brass = made_casting(disc("brass", bore=20, outside=60, long=20), CastingAsked(), TABLES)
    grid = next(
        b for b in casting_papers(brass, 0.0, TABLES).sheets[0].blocks if isinstance(b, Grid)
    )
    assert len(set(grid.columns)) == len(grid.columns)


def test_the_hole_as_cast_stands_in_the_sizes_and_in_the_figures() -> None:
    """100 H7 less twice 4 is 92, a size of core box: cored as the box, or left open for sand."""
    job = disc(bore='"100 H7"', outside=160, long=30)
    for asked, name in (
        (CastingAsked(), "hole_in_sand"),
        (CastingAsked(bore="cored"), "core_diameter"),
    ):
        made = made_casting(job, asked, TABLES)
        found = {f.name: f.best for f in casting_figures(made, TABLES)}
        assert found[name] == pytest.approx(0.092)
        assert 0.092 in [round(size, 9) for _, size in sizes_of(made)]


def test_spares_say_that_one_heat_fails_together_and_heats_are_counted(disc_file: str) -> None:
    out = told("--by", "casting", job=disc_file)
    assert "castings of one heat fail together" in out
    assert "more than a crucible" in out  # 20 kg of iron
    assert said("--by", "casting", job=disc_file)["heats"] is None
    assert said()["heats"] == 1
