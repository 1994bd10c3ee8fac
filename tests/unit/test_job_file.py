"""A job file becomes the job it states."""

from __future__ import annotations

import json
import subprocess
import sys
import tomllib
from dataclasses import replace
from pathlib import Path

import jsonschema
import pytest
from tests.unit.job_texts import FULL, SHELF, SMALL, VALID, WHEEL

from borewright.job import (
    Bore,
    BoreReading,
    CutWish,
    Finished,
    Job,
    Machine,
    MandrelNote,
    Piece,
    Shelf,
    Work,
    merge_shelf,
    parse_job,
    parse_shelf,
    read_job,
    read_shelf,
)
from borewright.job.schema import job_schema

ROOT = Path(__file__).parents[2]


def test_the_smallest_job_leaves_the_rest_unstated() -> None:
    job = parse_job(SMALL, "job.toml")
    work = Work("al-6061-t6", (Piece(0.0, 0.01905, 0.0762),), Bore(0.0127127))
    assert job == Job(title="", work=work, units="inch")


def test_every_key_arrives_in_its_field() -> None:
    job = parse_job(FULL, "job.toml")
    assert job.title == "Cider mill line-shaft pulley"
    assert job.units == "mm"
    readings = (BoreReading(0.0, 0.018012), BoreReading(0.015, 0.018006, "across the keyway"))
    assert job.work.bore == Bore(0.01801, 4e-6, "bore gauge", "reamer", readings)
    assert job.work.pieces == (
        Piece(0.0, 0.03, 0.032),
        Piece(0.01, 0.02, 0.09, 0.032),
        Piece(0.0, 0.03, 0.11, 0.09),
    )
    assert job.work.finished == Finished(0.108, 5e-5)
    assert (job.work.blank, job.work.quantity) == ("casting", 4)
    assert job.shelf.machine == Machine(
        name="the small lathe",
        speeds=(100 / 60, 2.0),
        feeds=(1e-4, 0.0001016),
        swing_over_cross_slide=0.12,
        between_centers=0.5,
        power=550.0,
    )
    assert job.shelf.mandrels == (
        MandrelNote(0.018, "the marked one", 0.017985, 0.01804, 0.0005, 0.11, 0.15),
        MandrelNote(0.0127),
    )
    assert (job.shelf.press, job.shelf.press_force) == ("arbor press", 9806.65)
    assert (job.shelf.stated, job.use, job.lubrication) == (True, "plain taper mandrel", "dry")
    assert job.pressed_before
    turn, face = job.cuts
    assert turn == CutWish("turn", 0.0005, 1e-4, 0.5, None, turn.edge_angle, 0.0004)
    assert turn.edge_angle == pytest.approx(1.5707963267948966)
    assert face == CutWish("face", spindle_speed=2.0)


def test_hub_web_and_rim_become_rings_with_the_web_in_the_middle() -> None:
    pieces = parse_job(WHEEL, "job.toml").work.pieces
    assert pieces[0] == Piece(0.0, 0.02, 0.03)
    assert (pieces[1].start, pieces[1].end) == pytest.approx((0.007, 0.013))
    assert (pieces[1].inside, pieces[1].outside) == (0.03, 0.065)
    assert pieces[2] == Piece(0.0, 0.02, 0.08, 0.065)


def test_the_web_is_centred_on_a_rim_that_is_shorter_than_the_hub() -> None:
    text = WHEEL.replace('inside = "65mm"', 'inside = "65mm", from = "4mm", to = "12mm"')
    web = parse_job(text, "job.toml").work.pieces[1]
    assert (web.start, web.end) == pytest.approx((0.005, 0.011))


def test_a_web_as_thick_as_the_rim_begins_exactly_at_face_a() -> None:
    text = WHEEL.replace('"20mm"', '"0.3in"').replace('"6mm"', '"0.3in"')
    assert parse_job(text, "job.toml").work.pieces[1].start == 0.0


@pytest.mark.parametrize(
    ("without", "rings"),
    [("hub", [(None, 0.065), (0.065, 0.08)]), ("rim", [(None, 0.03), (0.03, 0.08)])],
)
def test_a_plate_wheel_may_lack_hub_or_rim(without: str, rings: list[tuple[float, float]]) -> None:
    text = "\n".join(line for line in WHEEL.splitlines() if not line.startswith(without))
    if without == "hub":
        text = text.replace('thickness = "6mm"', 'from = "0mm", to = "20mm"')
    pieces = parse_job(text, "job.toml").work.pieces
    assert [(p.inside, p.outside) for p in pieces] == rings


def test_without_a_size_the_smallest_reading_is_the_bore() -> None:
    text = SMALL.replace(
        'bore = "0.5005in"',
        "bore = {readings = [{depth = 0, size = 0.501}, {depth = 0.5, size = 0.5003}]}",
    )
    assert parse_job('units = "inch"\n' + text, "job.toml").work.bore.size == 0.5003 * 0.0254


@pytest.mark.parametrize(
    ("bore", "units"),
    [("0.5005in", "inch"), ("1/2in", "inch"), ("12.71mm", "mm"), ("1.271cm", "mm")],
)
def test_without_units_the_bore_as_typed_says_what_is_shown_first(bore: str, units: str) -> None:
    assert parse_job(SMALL.replace("0.5005in", bore), "job.toml").units == units


def test_stated_units_win_over_the_bore_as_typed() -> None:
    assert parse_job('units = "mm"\n' + SMALL, "job.toml").units == "mm"


def test_bare_numbers_follow_the_units_of_the_file() -> None:
    bare = '[work]\nmaterial = "brass-c360"\nbore = 16\noutside = 40.0\nlength = 25\n'
    bare += "[machine]\nspeeds = [100, 120]\nfeeds = [0.1]\npower = 0.5\n"
    job = parse_job('units = "mm"\n' + bare, "job.toml")
    assert (job.work.bore.size, job.work.outside, job.work.length) == (0.016, 0.04, 0.025)
    assert job.shelf.machine.speeds[1] == 2.0
    assert job.shelf.machine.feeds == (1e-4,)
    assert job.shelf.machine.power == 500.0


@pytest.mark.parametrize(("word", "stated"), [("none", True), ("unknown", False)])
def test_none_on_the_shelf_is_not_the_same_as_unknown(word: str, stated: bool) -> None:
    job = parse_job(f'{SMALL}\n[hold]\nmandrels = "{word}"', "job.toml")
    assert job.shelf == Shelf(stated=stated)


def test_centre_is_read_in_both_spellings() -> None:
    jobs = [
        parse_job(f'{SMALL}\n[machine]\nbetween_{word} = "500mm"', "job.toml")
        for word in ("centers", "centres")
    ]
    assert jobs[0] == jobs[1]
    assert jobs[0].shelf.machine.between_centers == 0.5


def test_a_file_is_read_with_a_byte_order_mark_and_any_line_ends(tmp_path: Path) -> None:
    path = tmp_path / "job.toml"
    path.write_bytes(b"\xef\xbb\xbf" + SMALL.replace("\n", "\r\n").encode())
    assert read_job(path) == read_job(str(path)) == parse_job(SMALL, "job.toml")


def test_a_shelf_file_is_read(tmp_path: Path) -> None:
    path = tmp_path / "shelf.toml"
    path.write_text(SHELF, encoding="utf-8")
    shelf = read_shelf(path)
    assert [m.nominal for m in shelf.mandrels] == [0.0127, 0.016]
    assert (shelf.press, shelf.machine.name) == ("bench press", "the larger lathe")
    assert shelf.press_force == 5000.0
    assert shelf.stated


def test_what_the_job_states_stands_over_the_shelf() -> None:
    shelf = parse_shelf(SHELF, "shelf.toml")
    bare = merge_shelf(parse_job(SMALL, "job.toml"), shelf)
    assert bare.shelf == shelf
    full = parse_job(FULL, "job.toml")
    insisted = replace(full.shelf, lathe_wished=True, press_wished=True)
    assert merge_shelf(full, shelf).shelf == insisted
    none = parse_job(f'{SMALL}\n[hold]\nmandrels = "none"', "job.toml")
    assert merge_shelf(none, shelf).shelf.mandrels == ()
    assert merge_shelf(none, shelf).shelf.press == "bench press"


def test_a_shelf_file_may_say_none_or_list_sizes() -> None:
    assert parse_shelf('mandrel = "none"', "s.toml") == Shelf(stated=True)
    assert parse_shelf("", "s.toml") == Shelf()
    assert len(parse_shelf('units = "inch"\nmandrel = [0.5, "16mm"]', "s.toml").mandrels) == 2


@pytest.mark.parametrize("text", VALID.values(), ids=VALID.keys())
def test_a_valid_job_validates_against_the_schema(text: str) -> None:
    assert parse_job(text, "job.toml").work.pieces
    jsonschema.Draft202012Validator(job_schema()).validate(tomllib.loads(text))


def test_the_schema_refuses_what_the_reader_refuses_by_form() -> None:
    validator = jsonschema.Draft202012Validator(job_schema())
    for wrong in (
        "title = 3",
        "[work]\nbor = 3",
        f"{SMALL}\nquantity = 0",
        f"{SMALL}\nblank = 'x'",
    ):
        assert not validator.is_valid(tomllib.loads(wrong))


def test_the_published_schema_is_up_to_date() -> None:
    published = ROOT / "docs" / "schemas" / "job.schema.json"
    assert json.loads(published.read_text(encoding="utf-8")) == job_schema()


def test_the_room_loads_neither_pydantic_nor_numpy_before_a_file_is_read() -> None:
    code = "import borewright.job, borewright.quantities, sys; print(*sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert not {"pydantic", "numpy", "pint", "tomli_w"} & set(done.stdout.split())
