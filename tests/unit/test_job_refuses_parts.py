"""Rings, wheels, mandrels and lists that cannot be: one sentence with file and place."""

from __future__ import annotations

import pytest
from tests.unit.job_refused import changed, refusal
from tests.unit.job_texts import FULL, SHELF, SMALL, WHEEL

from borewright.errors import RefusedInput
from borewright.job import parse_job, parse_shelf


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('length = "20mm"\n', "", "work: found no `length` and no `outline`"),
        ('outside = "80mm"\n', "", "work: found no `outside` and no `outline`"),
        ('outside = "80mm"', 'outside = "16mm"', "work.rim.inside: found 65 mm"),
        ('web = {thickness = "6mm"}\n', "", "work: found no `web`; allowed is a `web` together"),
        ('inside = "65mm"', 'inside = "80mm"', "work.rim.inside: found 80 mm"),
        ('outside = "30mm"', 'outside = "65mm"', "work.hub.outside: found 65 mm"),
        ('outside = "30mm"', 'outside = "16.01mm"', "work ring 1: found outside 16.01 mm"),
        ('thickness = "6mm"', 'thickness = "21mm"', "work.web.thickness: found 21 mm"),
        ('thickness = "6mm"', "", "work.web: found no thickness; allowed is `thickness`, or"),
        ('thickness = "6mm"', 'thickness = "6mm", to = "9mm"', "work.web: found both a thickness"),
        ('thickness = "6mm"', 'from = "9mm", to = "9mm"', "work.web: found 9 to 9 mm"),
        ('inside = "65mm"', 'inside = "65mm", to = "21mm"', "work.rim: found 0 to 21 mm"),
        ('outside = "30mm"', 'outside = "30mm", from = "25mm"', "work.hub: found 25 to 20 mm"),
        (
            'hub = {outside = "30mm"}\nweb = {thickness = "6mm"}\nrim = {inside = "65mm"}',
            'hub = {outside = "30mm", to = "5mm"}\nweb = {from = "8mm", to = "9mm"}\n'
            'rim = {inside = "65mm"}',
            "work: found 2 of 3 rings not joined to the first",
        ),
        (
            'hub = {outside = "30mm"}\nweb = {thickness = "6mm"}\nrim = {inside = "65mm"}',
            'hub = {outside = "30mm", to = "15mm"}\nweb = {thickness = "6mm"}\n'
            'rim = {inside = "65mm", to = "15mm"}',
            "work: found hub, web and rim that end at 15 mm",
        ),
        ("[work]", "[work]\noutline = []", "work.outline: found a list of 0; allowed is at least"),
        (
            "[work]",
            "[work]\noutline = [{from = '0mm', to = '20mm', outside = '80mm'}]",
            "work: found `outline` together with `outside`, `length`, `hub`, `web`, `rim`",
        ),
        ('bore = "16.01mm"', "bore = {}", "work.bore: found no size; allowed is a `size`, or"),
        (
            'bore = "16.01mm"',
            'bore = {readings = [{depth = "21mm", size = "16mm"}]}',
            "work: found a bore reading at depth 21 mm (0.83 in); allowed is a depth within",
        ),
        (
            'bore = "16.01mm"',
            'bore = {size = "16mm", readings = [{depth = "1mm", size = "0.016mm"}]}',
            "work: found a bore reading of 0.016 mm",
        ),
        ("[work]", "[work]\nfinished = {outside = '81mm'}", "work.finished.outside: found 81 mm"),
        (
            "[work]",
            "machine = {between_centers = '1m', between_centres = '1m'}\n[work]",
            "machine: found both `between_centers` and `between_centres`",
        ),
    ],
)
def test_a_part_that_cannot_be_is_refused(old: str, new: str, says: str) -> None:
    assert refusal(changed(WHEEL, old, new)).startswith(f"job.toml: {says}")


def test_a_web_alone_is_refused() -> None:
    text = f'{SMALL}web = {{thickness = "1/4in"}}\n'
    assert "work: found a `web` alone; allowed is a `web` together with" in refusal(text)


def outline(*rings: str) -> str:
    rows = ", ".join(f"{{{ring}}}" for ring in rings)
    work = f'[work]\nmaterial = "brass-c360"\nbore = 16\noutline = [{rows}]\n'
    return f'units = "mm"\n{work}'


@pytest.mark.parametrize(
    ("rings", "says"),
    [
        (
            ["from = 1, to = 9, outside = 40"],
            "work.outline: found a first face at 1 mm",
        ),
        (["from = 9, to = 9, outside = 40"], "work.outline ring 1: found 9 to 9 mm"),
        (["from = 9, to = 3, outside = 40"], "work.outline ring 1: found 9 to 3 mm"),
        (["from = 0, to = 9, outside = 16"], "work.outline ring 1: found outside 16 mm"),
        (
            ["from = 0, to = 9, outside = 40, inside = 15"],
            "work.outline ring 1: found inside 15 mm",
        ),
        (
            ["from = 0, to = 9, outside = 40, inside = 40"],
            "work.outline ring 1: found inside 40 mm",
        ),
        (
            ["from = 0, to = 9, outside = 40, inside = 20"],
            "work.outline: found no ring that reaches",
        ),
        (
            ["from = 0, to = 9, outside = 40", "from = 8, to = 12, outside = 30"],
            "work.outline: found rings 1 and 2 in the same place",
        ),
        (
            ["from = 0, to = 9, outside = 40", "from = 0, to = 9, outside = 60, inside = 39"],
            "work.outline: found rings 1 and 2 in the same place",
        ),
        (
            ["from = 0, to = 9, outside = 40", "from = 10, to = 12, outside = 30"],
            "work.outline: found 1 of 2 rings not joined to the first",
        ),
        (
            ["from = 0, to = 9, outside = 40", "from = 0, to = 9, outside = 60, inside = 41"],
            "work.outline: found 1 of 2 rings not joined to the first",
        ),
        (
            ["from = 0, to = 9, outside = 40", "from = 9, to = 12, outside = 60, inside = 40"],
            "work.outline: found 1 of 2 rings not joined to the first",
        ),
    ],
)
def test_rings_that_make_no_part_are_refused(rings: list[str], says: str) -> None:
    assert refusal(outline(*rings)).startswith(f"job.toml: {says}")


def test_rings_that_meet_within_the_rounding_of_inch_and_metric_are_one_part() -> None:
    rings = ["from = 0, to = '1/2in', outside = 40", "from = 12.7, to = 20, outside = 30"]
    assert len(parse_job(outline(*rings), "job.toml").work.pieces) == 2


@pytest.mark.parametrize(
    ("text", "place"),
    [
        (outline(*["from = 0, to = 9, outside = 40"] * 201), "work.outline"),
        (
            changed(SMALL, '"0.5005in"', f"{{readings = [{'{depth = 0, size = 1},' * 201}]}}"),
            "work.bore.readings",
        ),
        (f"{SMALL}[hold]\nmandrels = [{'1,' * 201}]", "hold.mandrels"),
        (f"{SMALL}[machine]\nspeeds = [{'1,' * 201}]", "machine.speeds"),
        (f"{SMALL}[machine]\nfeeds = [{'1,' * 201}]", "machine.feeds"),
    ],
)
def test_more_than_200_of_anything_is_refused(text: str, place: str) -> None:
    says = f"job.toml: {place}: found a list of 201; allowed is at most 200 entries"
    assert refusal(text) == says


def test_more_cuts_than_one_sheet_shows_are_refused() -> None:
    says = "job.toml: cut: found a list of 13; allowed is at most 6 entries"
    assert refusal(SMALL + "[[cut]]\n" * 13) == says


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('size = "18mm"', 'size = "18in"', "hold.mandrels[1]: found an end of 17.985 mm"),
        ('"18.04mm"', '"17.98mm"', "hold.mandrels[1]: found a small end of 17.985 mm"),
        ('"150mm"', '"100mm"', "hold.mandrels[1]: found a ground length of 110 mm"),
    ],
)
def test_a_mandrel_that_cannot_be_is_refused(old: str, new: str, says: str) -> None:
    assert refusal(changed(FULL, old, new)).startswith(f"job.toml: {says}")


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('name = "long one"', 'nam = "long one"', "shelf.toml: [mandrel[2]] nam: found 'nam'"),
        ('size = "16mm"', 'size = "16N"', "shelf.toml: mandrel[2].size: found 16N, which is a for"),
        ("power = 1.5", 'power = "1.5"\nforce = 2', "shelf.toml: [machine] force: found 'force'"),
        ('force = "5kN"', 'force = "5bar"', "shelf.toml: press.force: found 5bar, which is a pres"),
    ],
)
def test_a_shelf_file_is_refused_in_the_same_way(old: str, new: str, says: str) -> None:
    with pytest.raises(RefusedInput) as caught:
        parse_shelf(changed(SHELF, old, new), "shelf.toml")
    assert str(caught.value).startswith(says)
