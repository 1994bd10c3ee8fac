"""make mandrel: what it says, what it writes, what it refuses, and that a plan can try it."""

from __future__ import annotations

import io
import json
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader
from tests.cli_run import ran, refused
from tests.drawn_parts import measured, read_dxf

from borewright.job import parse_shelf
from borewright.reference.library import Tables

ROOT = Path(__file__).parents[2]
WHEEL = ROOT / "examples" / "hollow-brook-drive-wheel.toml"
INCH = 0.0254
SIZE = ("make", "mandrel", "--size", "5/8in")
BORE = ("make", "mandrel", "--bore", "16 H7", "--length", "30mm")


def said(*arguments: str) -> dict[str, Any]:
    done = ran(*arguments, "--json")
    assert done.code == 0, done.err
    found: dict[str, Any] = json.loads(done.out)
    return found


# What it says


def test_the_limits_on_the_drawing_are_those_of_the_json(tmp_path: Path) -> None:
    name = tmp_path / "m.dxf"
    numbers = said(*SIZE, "--drawing", str(name))
    found = {text: value for value, text in measured(read_dxf(name.read_text(encoding="utf-8")))}
    (at_a,) = [text for text in found if text.endswith("at A")]
    low, high = (float(v) for v in at_a.removeprefix("Ø").removesuffix(" at A").split(" to "))
    assert low * INCH == pytest.approx(numbers["a_smallest_m"], abs=1e-9)
    assert high * INCH == pytest.approx(numbers["a_largest_m"], abs=1e-9)
    assert found["4"] == pytest.approx(numbers["ground_length_m"] / INCH, abs=1e-6)
    assert found["5"] == pytest.approx(numbers["overall_length_m"] / INCH, abs=1e-6)


def test_the_route_of_a_hard_mandrel_laps_its_centers_after_hardening_and_before_grinding() -> None:
    text = ran(*SIZE).out
    order = [
        text.index(words) for words in (". Harden.", ". Temper.", ". Lap or regrind", ". Grind to")
    ]
    assert order == sorted(order)
    assert "Set the tailstock over" not in text


def test_without_a_grinder_the_tailstock_is_set_over_by_the_whole_length() -> None:
    text = ran(*SIZE, "--no-grinder").out
    assert "By 0.0013 in (32 µm)" in text
    assert "indicator on the tailstock barrel" in text.replace("\n   ", " ").lower()
    assert "emery" in text
    assert "Harden." not in text


def test_both_figures_of_the_grinding_stock_are_said() -> None:
    text = " ".join(ran(*SIZE).out.split())
    assert "The old figure, for work that is hardened, leaves 0.025 in (0.64 mm)" in text
    assert "0.015 in (0.37 mm) here, and is taken" in text


@pytest.mark.parametrize("steel", Tables().table("mandrel_steels").column("id"))
def test_every_steel_has_a_route_with_the_cautions_of_its_heat(steel: str) -> None:
    hard = Tables().mandrel_steel(steel).hard
    text = " ".join(ran(*SIZE, "--steel", steel).out.split())
    assert ("face shield" in text) == hard
    assert ("Harden." in text) == hard
    assert "ring it before it is mounted" in text


def test_a_case_deeper_than_what_is_ground_off_says_what_stays() -> None:
    text = " ".join(ran(*SIZE, "--steel", "steel-1018-case").out.split())
    assert "of hard skin stays" in text


@pytest.mark.parametrize(
    ("size", "center"), [("16mm", "B 2.5"), ("25mm", "B 4"), ("5/8in", "#14"), ("1in", "#17")]
)
def test_centers_are_of_the_series_of_the_units_and_fit_the_end(size: str, center: str) -> None:
    """0.6 of the end: 8.4 mm of 14 takes an 8 mm bell, 13.2 of 22 one of 12.5; 0.32 in of 17/32 takes
    #14's cone of 1/4, 0.54 of 29/32 takes #17's of 1/2."""
    assert said("make", "mandrel", "--size", size)["center"] == center


def test_the_chart_names_its_sources() -> None:
    text = " ".join(ran(*SIZE).out.split())
    assert "Griswold, Amateur Work, vol. 4" in text
    assert "1/2 in 4 1/2 in" in text


def test_flats_on_both_ends_are_drawn_and_said() -> None:
    assert "on the large end only" in " ".join(ran(*SIZE).out.split())
    assert "on both ends" in " ".join(ran(*SIZE, "--flats", "both").out.split())


# What it takes


def test_a_class_is_taken_whole_at_any_limit() -> None:
    taken = said(*BORE)["bores_taken_m"]
    assert taken["low"] <= 0.016
    assert taken["high"] >= 0.016018


def test_a_class_too_wide_for_the_lathe_is_a_no_with_its_reason_and_writes_nothing(
    tmp_path: Path,
) -> None:
    out = tmp_path / "m.pdf"
    done = ran(*BORE[:-3], "16 H10", "--between-centers", "150mm", "--out", str(out))
    assert done.code == 3
    assert done.out.startswith("No: ")
    assert not out.exists()


def test_a_job_gives_its_bore_its_length_and_its_lathe(tmp_path: Path) -> None:
    numbers = said("make", "mandrel", str(WHEEL))
    assert numbers["bore_length_m"] == pytest.approx(1.125 * INCH)
    wanted, taken = numbers["bores_wanted_m"], numbers["bores_taken_m"]
    assert taken["low"] <= wanted["low"] < 0.6251 * INCH < wanted["high"] <= taken["high"]


# A plan tries it


def test_a_plan_tries_it_before_it_is_made_and_says_that_it_is_not(tmp_path: Path) -> None:
    shelf = tmp_path / "try.toml"
    numbers = said("make", "mandrel", str(WHEEL), "--try-shelf", str(shelf))
    (note,) = parse_shelf(shelf.read_text(encoding="utf-8"), "try.toml").mandrels
    assert note.small_end == pytest.approx(numbers["small_end_m"], abs=1e-12)
    plan = ran("plan", str(WHEEL), "--shelf", str(shelf))
    assert plan.code == 0, plan.err
    assert "to be made" in plan.out
    mandrel = said("plan", str(WHEEL), "--shelf", str(shelf), "--use", note.name)
    assert mandrel["verdict"] in ("yes", "with care")
    assert mandrel["chosen"]["tool"] == note.name


def test_the_rest_of_the_shelf_goes_with_it(tmp_path: Path) -> None:
    shelf, old = tmp_path / "try.toml", ROOT / "examples" / "hollow-brook-shelf.toml"
    said(*SIZE, "--shelf", str(old), "--try-shelf", str(shelf))
    before = parse_shelf(old.read_text(encoding="utf-8"), "old")
    after = parse_shelf(shelf.read_text(encoding="utf-8"), "new")
    assert after.mandrels[:-1] == before.mandrels
    assert after.machine == before.machine
    assert "to be made" in after.mandrels[-1].name


# Papers


def pages(data: bytes) -> list[str]:
    return [page.extract_text() for page in PdfReader(io.BytesIO(data)).pages]


def test_the_papers_are_drawing_strip_route_acceptance_and_numbers(tmp_path: Path) -> None:
    out = tmp_path / "m.pdf"
    assert ran(*SIZE, "--out", str(out)).code == 0
    text = pages(out.read_bytes())
    assert "scale" in text[0]
    assert "third angle" in text[0]
    assert any("Hold a rule to these lines" in page for page in text)
    for title in ("Route", "Acceptance", "Where the numbers come from"):
        assert any(page.startswith(title) for page in text), title


def test_the_same_question_gives_the_same_bytes(tmp_path: Path) -> None:
    names = [tmp_path / f"{k}.pdf" for k in (1, 2)]
    for name in names:
        ran(*SIZE, "--out", str(name), "--date", "2026-11-29")
    assert names[0].read_bytes() == names[1].read_bytes()


# What it refuses


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("--size", "5/8in", "--bore", "16mm"), "one of them"),
        ((), "one of them"),
        (("--size", "5/8in", "--no-grinder", "--steel", "o1"), "steel-4140"),
        (("--size", "5/8in", "--steel", "cheese"), "steel"),
        (("--size", "5/8in", "--drawing", "m.bmp"), ".svg, .dxf, .pdf"),
        (("--size", "5/8in", "--out", "m.svg"), ".pdf"),
        (
            ("--size", "5/8in", "--overall-length", "3in", "--ground-length", "4in"),
            "overall length",
        ),
        (("--size", "0.625"), "0.625"),
        (("--size", "5/8in", "--taper", "0"), "taper"),
    ],
)
def test_what_cannot_be_is_refused_in_one_sentence(arguments: tuple[str, ...], words: str) -> None:
    assert words in refused("make", "mandrel", *arguments)
