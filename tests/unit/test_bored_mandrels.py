"""A bored mandrel on the shelf, in a job file, in a spreadsheet and in `fit`: read, used, refused."""

from __future__ import annotations

import json

import pytest
from tests.cli_run import FIT, ran, words
from tests.unit.job_refused import refusal
from tests.unit.job_texts import WHEEL

from borewright.holding.taper.mandrels import resolve
from borewright.holding.taper.plain_taper import holds
from borewright.job import Job, Mandrel, parse_job, parse_shelf
from borewright.job.csv_shelf import read_entries
from borewright.job.csv_table import parse_csv
from borewright.job.write import job_text
from borewright.job.write_shelf import shelf_text
from borewright.quantities.show import Show
from borewright.reference.library import Tables
from borewright.service.planned import plan
from borewright.service.shelf_words import mandrel_words


def job(hole: str) -> Job:
    bored = f', hole = "{hole}"' if hole else ""
    return parse_job(f'{WHEEL}[hold]\nmandrels = [{{size = "16mm"{bored}}}]\n', "job.toml")


def mandrel(hole: str) -> Mandrel:
    return resolve(job(hole).shelf.mandrels[0], Tables(), "16 mm mandrel").mandrel


def test_a_hole_is_read_and_written_back() -> None:
    assert job("").shelf.mandrels[0].hole is None
    assert job("6mm").shelf.mandrels[0].hole == 0.006
    assert parse_job(job_text(job("6mm")), "written") == job("6mm")
    shelf = parse_shelf('[[mandrel]]\nsize = "16mm"\nhole = "6mm"\n', "shelf.toml")
    assert parse_shelf(shelf_text(shelf, "mm"), "written") == shelf
    assert "bored 6 mm (0.24 in) through" in mandrel_words(shelf.mandrels[0], Show("mm"))


def test_a_spreadsheet_s_column_of_holes_is_read() -> None:
    table = parse_csv("Size (mm),Through hole (mm)\n16,6\n18,\n20,17\n", "tools.csv")
    read = read_entries(table, "mandrels", None, None)
    assert [m.hole for m in read.entries] == [0.006, None]  # type: ignore[union-attr]
    assert [bad.line for bad in read.bad] == [4]
    assert "a hole below 0.8 of the smallest ground diameter, 16 mm" in read.bad[0].reason


@pytest.mark.parametrize(
    ("mandrel", "says"),
    [
        ('size = "16mm", hole = "12.8mm"', "found a hole of 12.8 mm (0.50 in); allowed is a hole"),
        ('size = "16mm", hole = "20mm"', "0.8 of the smallest ground diameter, 12.8 mm (0.50 in)"),
        ('size = "16mm", hole = "-1mm"', "hold.mandrels[1].hole: found -1mm; allowed is"),
        (
            'size = "16mm", hole = "12.78mm", at = [["0mm", "15.96mm"], ["90mm", "16.01mm"]]',
            "smallest ground diameter, 12.8 mm (0.50 in): a thin tube is another thing",
        ),
    ],
)
def test_a_hole_that_leaves_a_thin_tube_is_refused(mandrel: str, says: str) -> None:
    assert says in refusal(f"{WHEEL}[hold]\nmandrels = [{{{mandrel}}}]\n")


def test_a_bored_mandrel_grips_less_and_is_named_so_in_the_plan() -> None:
    solid, bored = plan(job("")), plan(job("9mm"))
    assert any("bored 9 mm (0.35 in) through" in line for line in bored.have_ready)
    assert not any("bored" in line for line in solid.have_ready)
    assert bored.layout is not None
    travel = bored.layout.travel
    holds_ = [holds(job(hole), mandrel(hole), Tables())[0] for hole in ("", "9mm")]
    assert holds_[1].likely_force(travel, 0.0) < holds_[0].likely_force(travel, 0.0)


def test_a_bored_mandrel_bends_more() -> None:
    """Deflection at 1 N, of mandrel, hub and soft centers together."""
    bent = [
        next(f.best for q in plan(job(hole)).questions for f in q.figures
             if f.name == "deflection_per_force")
        for hole in ("", "9mm")
    ]  # fmt: skip
    assert bent[0] < bent[1] < 1.5 * bent[0]


def fitted(**changes: str | None) -> dict:
    done = ran("fit", *words(FIT, **changes), "--json")
    assert done.code == 0, done.err
    return json.loads(done.out)


@pytest.mark.parametrize("model", ["rings", "contact"])
def test_fit_takes_the_mandrel_s_own_bore(model: str) -> None:
    solid, bored = fitted(model=model), fitted(model=model, mandrel_bore="9mm")
    assert bored["touch_position_m"] == solid["touch_position_m"]
    for name in ("normal_force_N", "largest_tension_Pa", "push_on_force_N"):
        assert bored[name] < solid[name]
    assert fitted(model=model, mandrel_bore="0mm") == solid


def test_rings_lose_by_the_hole_what_lame_says() -> None:
    d, out, hole = 0.01801, 0.040, 0.009
    k2, h2 = (d / out) ** 2, (hole / d) ** 2
    ring = ((1 + k2) / (1 - k2) + 0.26) / 100e9
    solid, hollow = ring + (1 - 0.29) / 207e9, ring + ((1 + h2) / (1 - h2) - 0.29) / 207e9
    one, other = (fitted(model="rings", mandrel_bore=b, roughness="0um") for b in ("0mm", "9mm"))
    assert other["normal_force_N"] / one["normal_force_N"] == pytest.approx(
        solid / hollow, rel=1e-9
    )


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        (
            "14.4mm",
            "--mandrel-bore: found a hole of 14.4 mm (0.57 in); allowed is a hole below 0.8",
        ),
        (
            "18mm",
            "of the smallest ground diameter, 14.4 mm (0.57 in): a thin tube is another thing",
        ),
        ("-1mm", "--mandrel-bore: found -1mm; allowed is a length of zero or more"),
    ],
)
def test_fit_refuses_a_thin_tube(typed: str, says: str) -> None:
    done = ran("fit", *words(FIT, mandrel_bore=typed))
    assert (done.code, done.out) == (2, "")
    assert says in done.err
