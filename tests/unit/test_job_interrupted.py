"""Keyways, cross holes, spokes and flaws in a job file: read, written again, or refused in one sentence."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.unit.job_refused import changed, refusal
from tests.unit.job_texts import SMALL, WHEEL

from borewright.job import CrossHole, Keyway, Piece, Spokes, parse_job
from borewright.job.web import gripping, metal_share, web_of
from borewright.job.write import job_text

WEB = 'web = {thickness = "6mm"}\n'
SPOKED = changed(WHEEL, WEB, 'spokes = {number = 5, width = "8mm", thickness = "6mm"}\n')
KEYED = f'{WHEEL}keyway = {{width = "5mm", depth = "2mm"}}\n'
HOLED = f'{WHEEL}cross_hole = {{diameter = "4mm", at = "10mm"}}\n'


def test_what_interrupts_the_metal_is_read_in_si() -> None:
    assert parse_job(KEYED, "job.toml").work.keyway == Keyway(0.005, 0.002)
    assert parse_job(HOLED, "job.toml").work.cross_hole == CrossHole(0.004, 0.010)
    assert parse_job(SPOKED, "job.toml").work.spokes == Spokes(5, 0.008, 0.006)
    assert parse_job(f'{SMALL}flaws = "seen"\n', "job.toml").work.flaws == "seen"
    assert parse_job(SMALL, "job.toml").work.flaws == "unknown"


@pytest.mark.parametrize("text", [SPOKED, KEYED, HOLED, f'{SMALL}flaws = "suspected"\n'])
def test_it_survives_writing_and_reading(text: str) -> None:
    job = parse_job(text, "job.toml")
    assert parse_job(job_text(job), "again.toml") == job


def test_spokes_stand_where_the_web_says_or_in_the_middle_of_the_rim() -> None:
    placed = changed(
        WHEEL, WEB, 'web = {from = "2mm", to = "8mm"}\nspokes = {number = 4, width = "9mm"}\n'
    )
    assert [p.start for p in parse_job(placed, "job.toml").work.pieces] == [0.0, 0.002, 0.0]
    assert parse_job(placed, "job.toml").work.spokes == Spokes(4, 0.009, 0.006)
    assert parse_job(SPOKED, "job.toml").work.pieces == parse_job(WHEEL, "job.toml").work.pieces


def test_a_spoke_is_no_ring_and_a_web_is() -> None:
    webbed, spoked = (parse_job(text, "job.toml").work for text in (WHEEL, SPOKED))
    assert len(gripping(webbed)) == 3
    assert [p.outside for p in gripping(spoked)] == [0.030, 0.080]


def test_spokes_fill_the_share_of_their_ring_that_their_width_gives() -> None:
    # five of 8 mm by 17.5 mm in a ring from 30 to 65 mm: 700 mm² of 2611.4 mm²
    work = parse_job(SPOKED, "job.toml").work
    assert metal_share(work.pieces[1], work) == pytest.approx(700 / 2611.4, rel=1e-4)
    assert metal_share(work.pieces[0], work) == 1.0


def test_where_spokes_are_stated_they_are_the_web_and_not_a_thinner_flange() -> None:
    work = parse_job(SPOKED, "job.toml").work
    flange = Piece(0.0, 0.002, 0.040, 0.030)
    web = web_of(replace(work, pieces=(*work.pieces, flange)))
    assert web is not None
    assert web.outer == 0.065


def test_a_web_is_found_from_its_rings_and_a_plain_wheel_has_none() -> None:
    web = web_of(parse_job(WHEEL, "job.toml").work)
    assert web is not None
    assert (web.inner, web.outer) == (0.030, 0.065)
    assert web.thickness == pytest.approx(0.006)
    assert web_of(parse_job(SMALL, "job.toml").work) is None


@pytest.mark.parametrize(
    ("text", "old", "new", "says"),
    [
        (KEYED, 'width = "5mm"', 'width = "16.01mm"', "work.keyway.width: found 16.01 mm"),
        (KEYED, 'depth = "2mm"', 'depth = "7mm"', "work.keyway.depth: found 7 mm"),
        (KEYED, 'depth = "2mm"', 'depth = "0mm"', "work.keyway.depth: found 0mm"),
        (KEYED, ', depth = "2mm"', "", "work.keyway.depth: found nothing; allowed is a value here"),
        (KEYED, 'depth = "2mm"', 'deep = "2mm"', "[work.keyway] deep: found 'deep'"),
        (HOLED, '"4mm"', '"17mm"', "work.cross_hole.diameter: found 17 mm"),
        (HOLED, 'at = "10mm"', 'at = "19mm"', "work.cross_hole.at: found 19 mm"),
        (SPOKED, "number = 5", "number = 1", "work.spokes.number: found 1; allowed is 2 or more"),
        (SPOKED, "number = 5", "number = 61", "work.spokes.number: found 61; allowed is 60 or"),
        (SPOKED, 'width = "8mm"', 'width = "20mm"', "work.spokes.width: found 20 mm"),
        (SPOKED, ', thickness = "6mm"', "", "work.spokes: found no thickness; allowed is"),
        (SPOKED, '"6mm"', '"21mm"', "work.spokes.thickness: found 21 mm"),
        (SPOKED, 'rim = {inside = "65mm"}\n', "", "work: found `spokes` and no `rim`"),
        (SPOKED, 'hub = {outside = "30mm"}\n', "", "work: found `spokes` and no `hub`"),
        (
            SPOKED,
            "spokes",
            f"{WEB.replace('6', '5')}spokes",
            "work.spokes.thickness: found 6 mm (0.24 in); allowed is that of their ring, 5 mm",
        ),
        (SMALL, "[work]", "[work]\nflaws = 'maybe'", "work.flaws: found 'maybe'; allowed is"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused(text: str, old: str, new: str, says: str) -> None:
    assert refusal(changed(text, old, new)).startswith(f"job.toml: {says}")


def test_spokes_in_an_outline_without_a_ring_for_them_are_refused() -> None:
    text = (
        '[work]\nmaterial = "brass-c360"\nbore = "16mm"\nspokes = {number = 4, width = "9mm"}\n'
        'outline = [{from = "0mm", to = "9mm", outside = "40mm"}]\n'
    )
    assert refusal(text).startswith("job.toml: work.spokes: found no ring between hub and rim")
