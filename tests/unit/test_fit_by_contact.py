"""`fit --model contact`: the same keys, near the rings on a plain hub, away from them where they are weak."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from tests.cli_run import FIT, ran, words

from borewright.shapes import store
from borewright.shapes.find import forget


@pytest.fixture(autouse=True)
def fresh(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(store.SETTING, str(tmp_path))
    forget()


def fitted(model: str, **changes: str | None) -> dict:
    done = ran("fit", *words(FIT, model=model, **changes), "--json")
    assert done.code == 0, done.err
    return json.loads(done.out)


def test_the_keys_are_the_same_and_a_plain_hub_is_held_alike() -> None:
    """Physics notes: rings are within half a percent of the force on a plain hub pressed full-length."""
    rings, contact = (fitted(m, travel="36mm", roughness="0um") for m in ("rings", "contact"))
    assert rings.keys() == contact.keys()
    assert contact["normal_force_N"] == pytest.approx(rings["normal_force_N"], rel=2e-2)
    assert contact["touch_position_m"] == rings["touch_position_m"]


def test_part_engaged_contact_ends_before_the_overlap_does() -> None:
    rings, contact = (fitted(m, travel="15mm", roughness="0um") for m in ("rings", "contact"))
    assert 0.7 < contact["contact_length_m"] / rings["contact_length_m"] < 0.97


def test_a_flange_holds_more_than_rings_say() -> None:
    outline = "0,30mm,24mm; 0,6mm,150mm,24mm"
    changes = {"outline": outline, "outside": None, "length": None, "travel": "36mm"}
    rings, contact = (fitted(m, roughness="0um", **changes) for m in ("rings", "contact"))
    assert contact["normal_force_N"] > rings["normal_force_N"]


def test_a_push_found_by_contact_is_the_push_of_its_travel() -> None:
    pressed = fitted("contact", travel=None, push="1.5kN")
    assert pressed["push_on_force_N"] == pytest.approx(1500, rel=1e-3)


def test_more_travel_never_grips_less() -> None:
    forces = [fitted("contact", travel=f"{t}mm")["normal_force_N"] for t in (10, 15, 20, 30, 40)]
    assert forces == sorted(forces)


def test_the_same_input_gives_the_same_bytes_built_or_found() -> None:
    first, second = (ran("fit", *words(FIT, model="contact"), "--json").out for _ in range(2))
    forget()
    assert first == second == ran("fit", *words(FIT, model="contact"), "--json").out


@pytest.mark.parametrize(
    "outline", ["0,10mm,40mm; 20mm,30mm,40mm", "0,10mm,40mm; 10mm,20mm,60mm,40mm"]
)
def test_an_outline_in_pieces_is_refused_in_one_line(outline: str) -> None:
    changes = {"outline": outline, "outside": None, "length": None, "model": "contact"}
    done = ran("fit", *words(FIT, **changes))
    assert (done.code, done.out) == (2, "")
    assert len(done.error_lines) == 1


def test_a_wall_thinner_than_a_sliver_is_refused_and_a_hair_of_a_step_is_healed_and_said() -> None:
    changes = {"outside": None, "length": None, "model": "contact"}
    done = ran("fit", *words(FIT, outline="0,30mm,18.02mm", **changes))
    assert (done.code, done.out) == (2, "")
    assert "sliver" in done.err
    healed = fitted("contact", outline="0,30mm,40mm; 30mm,30.001mm,60mm", outside=None, length=None)
    assert any(taken["what"] == "outline" for taken in healed["assumed"])
