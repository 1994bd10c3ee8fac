"""`borewright picture`: exit codes, files, JSON, sentences; and what is left out of the work."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest
from tests.cli_run import ran
from tests.house_files import ROOT
from tests.jobs_made import wheel_job

from borewright.errors import RefusedInput
from borewright.holding.taper.drawn_state import drawn_state
from borewright.holding.taper.plain_taper import holds
from borewright.holding.taper.taper_contact import pieces_joined
from borewright.job.interrupted import Spokes
from borewright.job.records import Mandrel, MandrelNote, Piece
from borewright.planning.shop.names import material_taken
from borewright.reference.library import tables
from borewright.service.picture import picture, picture_bytes, picture_in_words

WHEEL = str(ROOT / "examples" / "hollow-brook-drive-wheel.toml")
SHELF = str(ROOT / "examples" / "hollow-brook-shelf.toml")
RING = str(ROOT / "examples" / "twelve" / "07-thin-ring.toml")
PNG = b"\x89PNG\r\n\x1a\n"


def mandrel_16() -> Mandrel:
    return Mandrel("16 mm", 0.016, 0.01599, 0.0005, 0.1, 0.14, 0.012, 0.02)


def test_it_says_in_one_sentence_what_it_shows_and_where_the_highest_tension_is() -> None:
    done = ran("picture", WHEEL, "--shelf", SHELF)
    assert done.code == 0
    assert done.err == ""
    assert done.out.count("\n") == 1
    assert done.out.startswith("Pressure along the bore and tension in the section of the work")
    assert "the highest tension, " in done.out
    assert done.out.endswith("from face B.\n")


@pytest.mark.parametrize(("name", "start"), [("a.svg", b"<svg "), ("a.PNG", PNG)])
def test_it_writes_the_kind_that_the_ending_names_always_alike(
    name: str, start: bytes, tmp_path: Path
) -> None:
    contents = []
    for _ in range(2):
        assert ran("picture", WHEEL, "--shelf", SHELF, "--out", str(tmp_path / name)).code == 0
        contents.append((tmp_path / name).read_bytes())
    assert contents[0].startswith(start)
    assert contents[0] == contents[1]


def test_a_png_is_as_large_as_its_drawing(tmp_path: Path) -> None:
    """Ten pixels for each mm: width and height stand in the header of every PNG."""
    for name in ("a.svg", "a.png"):
        ran("picture", WHEEL, "--shelf", SHELF, "--out", str(tmp_path / name))
    width, height = (int.from_bytes((tmp_path / "a.png").read_bytes()[k : k + 4]) for k in (16, 20))
    drawn = (tmp_path / "a.svg").read_text(encoding="utf-8")
    box = [float(v) for v in drawn.split('viewBox="')[1].split('"')[0].split()]
    assert (width, height) == pytest.approx((10 * box[2], 10 * box[3]), abs=1)


@pytest.mark.parametrize("name", ["a.pdf", "a", "svg", ".svg.txt", ""])
def test_another_ending_is_refused_before_anything_is_worked_out(name: str) -> None:
    done = ran("picture", "no-such-file.toml", "--out", name)
    assert (done.code, done.out) == (2, "")
    assert done.error_lines == [
        f"borewright: --out: found {name!r}; allowed is a name that ends in .svg or .png"
    ]


def test_the_job_file_is_not_written_over(tmp_path: Path) -> None:
    job = tmp_path / "job.svg"
    job.write_text(Path(WHEEL).read_text(encoding="utf-8"), encoding="utf-8")
    done = ran("picture", str(job), "--out", str(job))
    assert (done.code, done.out) == (2, "")
    assert "the same file twice" in done.err


def test_what_the_job_file_refuses_is_refused_with_its_name(tmp_path: Path) -> None:
    job = tmp_path / "job.toml"
    text = Path(WHEEL).read_text(encoding="utf-8")
    job.write_text(text.replace("al-6061-t6", "al-6061-t7"), encoding="utf-8")
    done = ran("picture", str(job))
    assert (done.code, done.out, len(done.error_lines)) == (2, "", 1)
    assert f"{job}: work.material" in done.err


def test_without_a_mandrel_there_is_no_picture_and_a_sentence(tmp_path: Path) -> None:
    out = tmp_path / "a.svg"
    done = ran("picture", RING, "--out", str(out))
    assert done.code == 3
    assert done.out.startswith(
        "No picture: there is no mandrel on the shelf that this bore fits. No: "
    )
    assert done.error_lines == [
        "borewright: no picture was written: there is no mandrel on the shelf that this bore fits"
    ]
    assert not out.exists()


def test_the_object_has_the_same_keys_with_and_without_a_picture() -> None:
    held, not_held = (
        json.loads(ran("picture", *job, "--json").out)
        for job in ((WHEEL, "--shelf", SHELF), (RING,))
    )
    assert list(held) == list(not_held) == ["verdict", "headline", "why_no_picture", "picture"]
    assert not_held["picture"] is None
    assert (held["verdict"], not_held["verdict"]) == ("yes", "no")


def test_the_object_holds_pressures_bands_and_the_largest_place() -> None:
    told = json.loads(ran("picture", WHEEL, "--shelf", SHELF, "--json").out)["picture"]
    assert set(told["pressure"][0]) == {"z_m", "length_m", "pressure_Pa", "pressure_eased_Pa"}
    assert set(told["bands"][0]) == {"number", "low_Pa", "high_Pa", "share_low", "share_high"}
    assert set(told["largest"]) == {"z_m", "r_m", "tension_Pa", "share"}
    assert told["leading_face"] == "B"
    assert told["contact_to_m"] == pytest.approx(1.125 * 0.0254)
    printed = {caution["id"] for caution in told["cautions"]}
    assert printed == {"local-codes", "press-stand-clear"}


def test_the_plan_s_hold_and_travel_are_drawn() -> None:
    told = json.loads(ran("picture", WHEEL, "--shelf", SHELF, "--json").out)["picture"]
    planned = json.loads(ran("plan", WHEEL, "--shelf", SHELF, "--json").out)
    assert told["mandrel"] == planned["layout"]["mandrel_name"]
    assert told["travel_m"] == planned["layout"]["travel_m"]
    assert told["leading_face"] == planned["layout"]["leading_face"]
    assert told["headline"] == planned["headline"]


def test_brittle_work_carries_the_caution_to_stand_clear() -> None:
    found = picture(wheel_job(material="gray-iron-30"))
    assert found.picture is not None
    assert "press-brittle" in {c.id for c in found.picture.cautions}
    assert found.picture.strength_kind == "tensile"
    assert found.picture.stop_push > 0


def test_a_bore_too_large_for_every_mandrel_has_no_picture() -> None:
    found = picture(wheel_job(bore=0.0163))
    assert found.picture is None
    assert found.verdict.value == "no"
    assert picture_in_words(found).startswith("No picture: the likely bore would not sit on ")
    with pytest.raises(RefusedInput, match="would not sit on the ground length of 16 mm mandrel"):
        picture_bytes(found, "a.svg")


SPOKED = (
    Piece(0.0, 0.030, 0.040),
    Piece(0.005, 0.020, 0.150, 0.040),
    Piece(0.0, 0.025, 0.180, 0.150),
)


def test_spokes_and_the_rim_they_carry_are_left_out_and_said() -> None:
    job = wheel_job(material="gray-iron-30")
    work = replace(job.work, pieces=SPOKED, spokes=Spokes(5, 0.020, 0.015))
    found = picture(replace(job, work=work))
    assert found.picture is not None
    assert found.shape is not None
    drawn = [r for ring in found.shape.tints[0].outlines for _, r in ring]
    assert max(drawn) == pytest.approx(0.020)
    assert any(note.startswith("Spokes and the rim") for note in found.picture.notes)


def test_a_web_that_is_whole_carries_its_rim_into_the_picture() -> None:
    job = wheel_job(material="gray-iron-30")
    whole = pieces_joined(replace(job.work, pieces=SPOKED), "A")
    assert len(whole) == 3


def test_the_other_face_leading_mirrors_the_work() -> None:
    job = wheel_job(material="gray-iron-30")
    flanged = (Piece(0.0, 0.010, 0.080), Piece(0.010, 0.030, 0.030))
    job = material_taken(replace(job, work=replace(job.work, pieces=flanged)), tables())[0]
    ahead, behind = holds(job, mandrel_16(), tables())
    turned = replace(
        job,
        work=replace(job.work, pieces=(Piece(0.0, 0.020, 0.030), Piece(0.020, 0.030, 0.080))),
    )
    other = holds(turned, mandrel_16(), tables())[0]
    one, two = drawn_state(job, behind, 0.02), drawn_state(turned, other, 0.02)
    assert one.tight == pytest.approx(two.tight, rel=1e-6)
    there = drawn_state(job, ahead, 0.02)
    assert there.tight.max() != pytest.approx(one.tight.max(), rel=1e-3)


def test_more_travel_presses_harder_and_no_travel_not_at_all() -> None:
    job = wheel_job()
    (hold,) = holds(job, mandrel_16(), tables())
    forces = [
        state.joined.normal_force(state.tight)
        for state in (drawn_state(job, hold, travel) for travel in (0.0, 0.01, 0.02, 0.04))
    ]
    assert forces[0] == pytest.approx(0.0, abs=1e-6)
    assert forces == sorted(set(forces))
    loose = drawn_state(job, hold, -0.01)
    assert loose.contact == (0.0, 0.0)
    assert (loose.gap > 0).all()


def test_flattened_peaks_leave_less_pressure_everywhere() -> None:
    found = picture(wheel_job(mandrels=(MandrelNote(0.016),)))
    assert found.picture is not None
    assert found.picture.normal_force_eased < found.picture.normal_force
    inner = found.picture.pressure[2:-2]
    assert all(s.pressure_eased < s.pressure for s in inner)
