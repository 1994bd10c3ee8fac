"""make blank: castings of many wheels, what is refused, cautions, files; and blanks from bar."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.cast_jobs import DISC, EXAMPLE, ROOT, TABLES, disc, disc_in, said, told
from tests.cli_run import ran, refused

from borewright.job import parse_job, read_job
from borewright.making.blank.casting import made_casting
from borewright.making.blank.casting_asked import CastingAsked
from borewright.making.blank.casting_drawn import drawn_casting
from borewright.making.blank.casting_job import casting_job, casting_job_text
from borewright.making.blank.melt import volume_of
from borewright.making.blank.pattern_drawn import drawn_pattern


@pytest.fixture
def disc_file(tmp_path: Path) -> str:
    return disc_in(tmp_path)


def test_both_books_stand_side_by_side_and_the_middle_between_them() -> None:
    numbers, words = said(), told()
    assert numbers["pattern_outside_least_m"] < numbers["pattern_outside_m"]
    assert numbers["pattern_outside_m"] < numbers["pattern_outside_most_m"]
    assert "by 5/32 in/ft" in words
    assert "by 7/32 in/ft" in words
    assert "A shop's own first casting decides." in words


@pytest.mark.parametrize(
    ("typed", "shrinkage"),
    [("3/16in/ft", 1 / 64), ("0.0156in/in", 0.0156), ("1.5%", 0.015), ("0.012", 0.012)],
)
def test_a_shops_own_shrinkage_is_read_as_it_is_said(typed: str, shrinkage: float) -> None:
    numbers = said("--shrinkage", typed)
    assert numbers["shrinkage_m_per_m"] == pytest.approx(shrinkage)
    assert numbers["shrinkage_by"] == "own figure"


def test_a_first_casting_gives_the_shops_own_shrinkage() -> None:
    numbers = said("--pattern-measured", "5.06in", "--casting-measured", "5.00in")
    assert numbers["shrinkage_m_per_m"] == pytest.approx(0.012)
    assert numbers["shrinkage_by"] == "first casting"


def test_a_big_bore_is_cored_under_size_and_a_small_one_is_solid(disc_file: str) -> None:
    numbers = said("--by", "casting", job=disc_file)
    assert numbers["cored"] is True
    left = (40e-3 - numbers["core_diameter_m"]) / 2
    assert numbers["stock_bore_m"] <= left + 1e-4
    assert left < numbers["stock_bore_m"] + 2e-3
    assert numbers["core_box_diameter_m"] > numbers["core_diameter_m"]
    assert said()["cored"] is False
    assert said("--by", "casting", "--core", "solid", job=disc_file)["cored"] is False


def test_iron_gets_more_than_its_skin_on_every_face() -> None:
    skin = TABLES.allowance("skin_depth").high
    for made in (made_casting(disc(outside=o), CastingAsked(), TABLES) for o in (80, 200, 400)):
        assert all(s.taken > skin for s in made.stocks)


def test_the_larger_of_habit_and_standard_is_taken() -> None:
    made = made_casting(disc("al-cast", outside=250), CastingAsked(), TABLES)
    for stock in made.stocks:
        assert stock.said is not None
        assert stock.taken >= max(stock.said.habit, stock.said.standard) - 1e-9


def test_the_pattern_is_the_casting_grown_alike_everywhere_and_solid() -> None:
    made = made_casting(disc(), CastingAsked(boss="none"), TABLES)
    casting, pattern = drawn_casting(made, TABLES), drawn_pattern(made, TABLES)
    assert made.core is not None
    k = 1 + made.shrink.taken
    # One print is straight, the upper one tapers away from the casting.
    size = k * made.core.diameter + 0.4e-3
    prints = [
        s
        for s in pattern.stretches
        if pytest.approx(size) in (s.outside, s.outside if s.outside_end is None else s.outside_end)
    ]
    assert len(prints) == 2
    solid = volume_of([s for s in pattern.stretches if s not in prints])
    bore = math.pi / 4 * made.core.diameter**2 * made.length
    assert solid == pytest.approx(k**3 * (volume_of(casting.stretches) + bore), rel=1e-6)


def test_the_finished_part_lies_whole_within_the_casting() -> None:
    made = made_casting(read_job(EXAMPLE), CastingAsked(), TABLES)
    drawn = drawn_casting(made, TABLES)
    for ring in drawn.phantom:
        assert (
            ring.start >= min(s.start for s in drawn.stretches) + made.stock("face A") - 1e-9
            or ring.start > 0
        )
        assert ring.outside <= made.outside - 2 * made.stock("outside") + 1e-9
    assert max(r.end for r in drawn.phantom) == pytest.approx(made.length - made.stock("face B"))


CASTABLE = (
    "gray-iron-30",
    "al-cast",
    "brass-c464",
    "bronze-pb1",
    "steel-1018",
    "zinc-za-12",
    "mg-az91",
)
ODD = st.tuples(
    st.sampled_from(CASTABLE),
    st.floats(40, 500),
    st.floats(15, 120),
    st.floats(0.1, 0.6),
    st.sampled_from(("inch", "mm")),
)


@settings(max_examples=60, deadline=None)
@given(ODD)
def test_the_casting_of_a_castings_job_is_the_same_casting(
    odd: tuple[str, float, float, float, str],
) -> None:
    material, outside, long, share, units = odd
    sizes = (
        f'outside = "{outside:.3f}mm", length = "{long:.3f}mm", bore = "{share * outside:.3f}mm"'
    )
    job = parse_job(f'units = "{units}"\nwork = {{material = "{material}", {sizes}}}', "job.toml")
    first = made_casting(job, CastingAsked(), TABLES)
    text = casting_job_text(first, job, "cast.toml")
    read = parse_job(text, "cast.toml")
    again = made_casting(read, CastingAsked(), TABLES)
    assert again.pieces == first.pieces
    assert again.stretches == first.stretches
    assert again.melt == first.melt
    assert casting_job(again, read) == read


@settings(max_examples=60, deadline=None)
@given(ODD)
def test_metal_is_left_on_every_face_and_no_casting_is_lighter_than_its_part(
    odd: tuple[str, float, float, float, str],
) -> None:
    material, outside, long, share, _ = odd
    made = made_casting(
        disc(material, f"{share * outside:.3f}", outside, long), CastingAsked(), TABLES
    )
    part = math.pi / 4 * (outside**2 - (share * outside) ** 2) * long * 1e-9
    assert made.volume > part
    assert made.outside > outside * 1e-3
    assert made.length > long * 1e-3
    if made.core:
        assert made.core.diameter < share * outside * 1e-3


@pytest.mark.parametrize("what", ["keyway", "cross hole"])
def test_what_is_cut_and_not_cast_is_said_and_left_out(what: str, tmp_path: Path) -> None:
    extra = {
        "keyway": 'keyway = {width = "10mm", depth = "3mm"}',
        "cross hole": 'cross_hole = {diameter = "6mm", at = "20mm"}',
    }[what]
    path = tmp_path / "job.toml"
    sizes = 'material = "gray iron"\nbore = "40mm"\noutside = "160mm"\nlength = "60mm"\nblank = "casting"'
    path.write_text(f'units = "mm"\n[work]\n{sizes}\n{extra}\n', encoding="utf-8")
    assert what in told(job=str(path))
    cast = tmp_path / "cast.toml"
    said("--job", str(cast), job=str(path))
    work = read_job(cast).work
    assert work.keyway is None
    assert work.cross_hole is None


@pytest.mark.parametrize(
    ("material", "words"),
    [
        ("al-cast", "magnesium among aluminium scrap"),
        ("mg-az91", "Magnesium burns in air once molten"),
        ("brass-c360", "brings fever the next night"),
        ("brass-c360", "carries lead: its fume"),
        ("zinc-za-12", "brings fever the next night"),
        ("gray-iron-30", "Molten metal on concrete bursts it"),
    ],
)
def test_what_hurts_with_this_metal_is_said(material: str, words: str, tmp_path: Path) -> None:
    path = tmp_path / "job.toml"
    text = DISC.replace("MATERIAL", material).replace("BORE", '"20mm"').replace("OUTSIDE", "100")
    path.write_text(text.replace("LONG", "30"), encoding="utf-8")
    out = told("--by", "casting", job=str(path))
    assert words in out
    assert out.index("Local codes and licensed practice come first") < out.index("Molten metal on")


def test_iron_is_told_nothing_of_magnesium_zinc_or_lead(disc_file: str) -> None:
    out = told("--by", "casting", job=disc_file)
    assert "vinegar" not in out
    assert "fever" not in out
    assert "carries lead" not in out


def test_nothing_says_that_a_casting_is_sound() -> None:
    assert "nothing on this sheet says that it is" in told()


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (("--shrinkage", "12%"), "0 to 5%"),
        (
            ("--shrinkage", "1%", "--pattern-measured", "5in", "--casting-measured", "4.9in"),
            "one of the two",
        ),
        (("--pattern-measured", "5in"), "both, or neither"),
        (("--pattern-measured", "4.9in", "--casting-measured", "5in"), "that of the casting up"),
        (("--stock", "0.2mm"), "more than the skin"),
        (("--scrap", "100%"), "0 to below 1"),
        (("--scrap", "1.5"), "up to 1"),
        (("--sure", "100%"), "above 0 and below 1"),
        (("--bars", "3m"), "none, or --by bar"),
        (("--by", "bar", "--boss", "A"), "none, or --by casting"),
        (("--by", "bar", "--job", "x.toml"), "none, or --by casting"),
        (("--by", "bar", "--bars", "3m", "--bar-length", "3m"), "one of them"),
    ],
)
def test_what_makes_no_sense_is_refused_in_one_sentence(
    options: tuple[str, ...], words: str
) -> None:
    assert words in refused("make", "blank", EXAMPLE, *options)


def test_a_material_that_is_not_cast_is_refused_with_those_that_are(tmp_path: Path) -> None:
    path = tmp_path / "job.toml"
    path.write_text(
        'work = {material = "acetal", bore = "10mm", outside = "40mm", length = "10mm"}'
    )
    assert "gray-iron" in refused("make", "blank", str(path), "--by", "casting")


def test_blank_goes_by_the_job_and_else_by_its_shape(tmp_path: Path, disc_file: str) -> None:
    assert said()["by"] == "casting"
    assert said(job=disc_file)["by"] == "bar"
    wheel = tmp_path / "wheel.toml"
    text = Path(EXAMPLE).read_text(encoding="utf-8").replace('blank = "casting"\n', "")
    wheel.write_text(text, encoding="utf-8")
    assert said(job=str(wheel))["by"] == "casting"


def test_too_few_bars_is_computed_and_no(disc_file: str) -> None:
    done = ran("make", "blank", disc_file, "--by", "bar", "--bars", "20mm")
    assert done.code == 3


def test_the_files_are_written_alike_each_time(tmp_path: Path) -> None:
    names = ("papers.pdf", "drawn.svg", "cast.toml")
    kept = []
    for turn in ("a", "b"):
        (tmp_path / turn).mkdir()
        pdf, svg, toml = (str(tmp_path / turn / name) for name in names)
        assert (
            ran("make", "blank", EXAMPLE, "--out", pdf, "--drawing", svg, "--job", toml).code == 0
        )
        kept.append([p.read_bytes() for p in sorted((tmp_path / turn).iterdir())])
    assert kept[0] == kept[1]
    assert len(kept[0]) == 4


def test_surer_or_more_scrap_pours_more() -> None:
    usual = said()["castings_to_pour"]
    assert said("--scrap", "40%")["castings_to_pour"] > usual
    assert said("--sure", "99.9%")["castings_to_pour"] > usual
    assert said("--scrap", "0")["castings_to_pour"] == 3


def test_bar_is_in_one_length_only_where_one_bar_gives_it(disc_file: str) -> None:
    assert "in one length" in told("--by", "bar", job=disc_file)
    pulley = str(ROOT / "examples/twelve/06-bronze-bush.toml")
    out = told("--by", "bar", "--bars", "3 x 120mm", job=pulley)
    assert "in one length" not in out
    assert "3 bars, of which" in out


def test_a_bar_much_thicker_than_needed_is_remarked_on() -> None:
    bush = str(ROOT / "examples/twelve/06-bronze-bush.toml")
    assert "32 mm bar would do" in told("--bar-size", "36mm", job=bush)
    assert "bar would do" not in told("--bar-size", "32mm", job=bush)
