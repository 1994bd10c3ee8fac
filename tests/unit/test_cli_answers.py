"""What the command line prints when it can answer: exit codes 0 and 3, and the keys of its JSON."""

from __future__ import annotations

import json
from math import isfinite
from pathlib import Path

import pytest
from tests.cli_run import CUT, FIT, Ran, ran, words

ROOT = Path(__file__).parents[2]
JOB = str(ROOT / "examples" / "hollow-brook-drive-wheel.toml")
SHELF = str(ROOT / "examples" / "hollow-brook-shelf.toml")

FIT_KEYS = [
    "touch_position_m",
    "seat_position_m",
    "large_end_to_face_m",
    "travel_m",
    "contact_length_m",
    "normal_force_N",
    "mean_pressure_Pa",
    "largest_bore_tension_Pa",
    "largest_tension_Pa",
    "push_on_force_N",
    "push_off_force_N",
    "slip_torque_Nm",
    "outside_growth_m",
    "bore_window_m",
    "assumed",
]
CUT_KEYS = [
    "cutting_force_N",
    "feed_force_N",
    "passive_force_N",
    "torque_Nm",
    "power_W",
    "cutting_speed_m_per_s",
    "spindle_speed_rev_per_s",
    "removal_rate_m3_per_s",
    "axial_force_N",
    "radial_force_N",
    "chip_thickness_m",
    "chip_width_m",
    "specific_energy_Pa",
    "rake_factor",
    "wear_factor",
    "tool_factor",
    "knock_factor",
    "assumed",
]
NO = {
    "falls through": ({"bore": "18.3mm"}, "falls through"),
    "pressed past the large end": ({"travel": "80mm"}, "past the large end"),
    "a bore below the small end": ({"bore": "17.9mm"}, "does not go on"),
    "a bore of the small end itself": ({"bore": "17.99mm"}, "does not go on"),
    "loose where it is put": ({"travel": None, "position": "35mm"}, "it is loose there"),
    "over the small end": ({"travel": None, "position": "25mm"}, "hangs over the small end"),
    "a push never reached": ({"travel": None, "push": "900kN"}, "that push is not reached"),
    "no travel at all": ({"travel": "0mm"}, "it is loose there"),
}
"""Bore 18.01 on a small end of 17.99 at 1:2000 touches at 40 mm; the ground length is 110 mm."""
ANSWERED = {
    "fit by travel": ["fit", *words(FIT)],
    "fit by position": ["fit", *words(FIT, travel=None, position="65mm")],
    "fit by push": ["fit", *words(FIT, travel=None, push="1.5kN")],
    "fit without a material": [
        "fit",
        *words(FIT, material=None, friction="0.12", work_modulus="100GPa", work_poisson="0.26"),
    ],
    "fit of an outline": [
        "fit",
        *words(FIT, outside=None, length=None, outline="0,30mm,40mm;10mm,20mm,90mm,40mm"),
    ],
    "cut by surface speed": ["cut", *words(CUT)],
    "cut by spindle speed": ["cut", *words(CUT, speed="150rpm")],
    "plan": ["plan", JOB, "--shelf", SHELF],
    "plan, explained": ["plan", JOB, "--shelf", SHELF, "--explain"],
    "plan on the usual shelf": ["plan", JOB],
    "tables": ["reference"],
    "one table": ["reference", "friction"],
    "version": ["--version"],
    "help": ["--help"],
    "help of fit": ["fit", "--help"],
}


def json_of(done: Ran) -> dict[str, object]:
    answer: dict[str, object] = json.loads(done.out)
    return answer


@pytest.mark.parametrize("asked", ANSWERED.values(), ids=ANSWERED)
def test_it_answers(asked: list[str]) -> None:
    done = ran(*asked)
    assert (done.code, done.err) == (0, "")
    assert done.out.endswith("\n")
    assert done.out.strip()


@pytest.mark.parametrize("command", ["fit", "cut", "plan", "friction", "tables"])
def test_it_answers_with_one_json_object(command: str) -> None:
    asked = {
        "fit": ["fit", *words(FIT)],
        "cut": ["cut", *words(CUT)],
        "plan": ["plan", JOB, "--shelf", SHELF],
        "friction": ["reference", "friction"],
        "tables": ["reference"],
    }[command]
    done = ran(*asked, "--json")
    assert done.code == 0
    assert done.out.isascii()
    assert isinstance(json_of(done), dict)


@pytest.mark.parametrize(("changes", "says"), NO.values(), ids=NO)
def test_fit_says_no_in_words_and_everything_in_json(
    changes: dict[str, str | None], says: str
) -> None:
    done = ran("fit", *words(FIT, **changes))
    assert done.code == 3
    assert len(done.error_lines) == 1
    assert done.err.startswith("borewright: no: ")
    assert says in done.err
    assert "takes bores of" in done.out
    assert ("It bears on" in done.out) == (
        json.loads(ran("fit", *words(FIT, **changes), "--json").out)["contact_length_m"] > 0
    )
    machine = ran("fit", *words(FIT, **changes), "--json")
    assert (machine.code, machine.err) == (3, done.err)
    assert list(json_of(machine)) == FIT_KEYS


def test_plan_says_no_and_still_says_everything() -> None:
    """The workshop's 3/4 in mandrel does not go into a 5/8 in bore."""
    asked = ["plan", JOB, "--shelf", SHELF, "--use", "the 3/4 in mandrel"]
    done, machine = ran(*asked), ran(*asked, "--json")
    assert (done.code, machine.code) == (3, 3)
    assert json_of(machine)["verdict"] == "no"
    assert "\nNo" in f"\n{done.out}"
    assert json_of(machine)["candidates"]


@pytest.mark.parametrize(
    ("asked", "keys"),
    [(["fit", *words(FIT)], FIT_KEYS), (["cut", *words(CUT)], CUT_KEYS)],
    ids=["fit", "cut"],
)
def test_every_key_is_one_plain_number(asked: list[str], keys: list[str]) -> None:
    answer = json_of(ran(*asked, "--json"))
    assert list(answer) == keys
    numbers = {k: v for k, v in answer.items() if k not in ("bore_window_m", "assumed")}
    assert all(type(v) is float and isfinite(v) for v in numbers.values()), numbers


def test_the_bore_window_is_a_low_and_a_high() -> None:
    window = json_of(ran("fit", *words(FIT), "--json"))["bore_window_m"]
    assert isinstance(window, dict)
    assert list(window) == ["low", "high"]
    assert window["low"] < window["high"]


def test_what_is_given_is_not_assumed() -> None:
    everything = words(
        FIT,
        friction="0.12",
        roughness="8um",
        work_modulus="100GPa",
        work_poisson="0.26",
        mandrel_modulus="207GPa",
        mandrel_poisson="0.29",
    )
    assert json_of(ran("fit", *everything, "--json"))["assumed"] == []


GAPS = ("taper", "small_end", "ground_length")


@pytest.mark.parametrize("gap", GAPS)
def test_what_is_not_given_is_assumed_with_its_source(gap: str) -> None:
    answer = json_of(ran("fit", *words(FIT, **{gap: None}), "--json"))
    assumed = answer["assumed"]
    assert isinstance(assumed, list)
    entry = {taken["what"]: taken for taken in assumed}[gap]
    assert list(entry) == ["what", "taken", "unit", "source"]
    assert entry["taken"] > 0
    assert entry["source"]
    assert not {g for g in GAPS if g != gap} & {taken["what"] for taken in assumed}


def test_position_and_travel_say_the_same_thing() -> None:
    travelled = json_of(ran("fit", *words(FIT), "--json"))
    placed = json_of(ran("fit", *words(FIT, travel=None, position="65mm"), "--json"))
    assert placed["normal_force_N"] == pytest.approx(travelled["normal_force_N"], rel=1e-9)


@pytest.mark.parametrize("encoding", ["ascii", "latin-1", "cp1252"])
@pytest.mark.parametrize("asked", ANSWERED.values(), ids=ANSWERED)
def test_a_terminal_that_is_not_utf8_gets_ascii(asked: list[str], encoding: str) -> None:
    done = ran(*asked, encoding=encoding)
    assert done.code == 0
    assert done.out.isascii()


def test_a_utf8_terminal_gets_the_real_signs() -> None:
    assert not ran("cut", *words(CUT)).out.isascii()


def test_ask_answers_when_nobody_knows(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    done = ran("ask", stdin="\n" * 6)
    assert done.code in (0, 3)
    assert done.err == ""
    assert "not stated" in done.out
    assert sorted(p.name for p in tmp_path.iterdir()) == ["bored-part.pdf", "bored-part.toml"]


def test_ask_writes_a_job_that_plan_reads_alike(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    answers = "0.501in by caliper\n2in\n3/4in\naluminium\nbar\n1/2in, 5/8in\n"
    asked = ran("ask", "--job", "hub.toml", "--sheet", "hub.pdf", stdin=answers)
    planned = ran("plan", "hub.toml")
    assert planned.code == asked.code
    assert planned.out.strip() in asked.out
    assert (tmp_path / "hub.pdf").read_bytes().startswith(b"%PDF-")


def test_ask_never_writes_over_a_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    for _ in range(2):
        ran("ask", stdin="16.01mm\n60mm\n20mm\nbrass\nbar\n16mm\n")
    assert sorted(p.name for p in tmp_path.glob("*.toml")) == [
        "bored-part-2.toml",
        "bored-part.toml",
    ]


def test_json_stays_json_on_a_terminal_that_is_not_utf8(tmp_path: Path) -> None:
    """The ASCII stand-in of a curly quote is a straight one, which would end a JSON string."""
    job = tmp_path / "quoted.toml"
    text = Path(JOB).read_text(encoding="utf-8")
    title = "The “big” wheel, 16 mm × 30°"
    job.write_text(text.replace("Cider mill drive wheel", title), encoding="utf-8")
    assert json_of(ran("plan", str(job), "--json", encoding="ascii"))["title"] == title
