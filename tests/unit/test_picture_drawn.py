"""The picture of the pressed joint read back from its SVG: places, bands, tints, words."""

from __future__ import annotations

import math
import re
import xml.etree.ElementTree as ET
from dataclasses import replace
from itertools import combinations, pairwise

import pytest
from tests.jobs_made import turning, wheel_job

from borewright.answer.pressed import Pictured, PressedPicture
from borewright.drawing.measure import text_box
from borewright.drawing.pressed_sheet import draw_pressed
from borewright.drawing.scene import Scene, Text
from borewright.drawing.svg import svg
from borewright.job.records import BoreReading, Job, MandrelNote, Piece
from borewright.service.picture import picture

SVG = "{http://www.w3.org/2000/svg}"
MPA, PSI = 1e6, 6894.757293168
FLANGED = (Piece(0.0, 0.010, 0.300), Piece(0.010, 0.040, 0.036))


def long_hub() -> Job:
    """A plain hub three times as thick as its bore, gripped all along it."""
    return wheel_job(outside=0.048, length=0.030, material="gray-iron-30")


def flanged_disc() -> Job:
    job = wheel_job(material="gray-iron-30")
    return replace(job, work=replace(job.work, pieces=FLANGED))


def thin_bush() -> Job:
    return wheel_job(outside=0.0195, length=0.035, material="bronze-sae-660")


def inch_wheel() -> Job:
    return replace(wheel_job(), units="inch")


def bell_mouthed() -> Job:
    readings = (BoreReading(0.002, 0.016006), BoreReading(0.023, 0.016016))
    return wheel_job(readings=readings)


JOBS = (long_hub, flanged_disc, thin_bush, inch_wheel, bell_mouthed)


class Read:
    """One picture: its record, its scene and its SVG."""

    def __init__(self, job: Job) -> None:
        found = picture(job)
        assert found.picture is not None
        assert found.shape is not None
        self.told: PressedPicture = found.picture
        self.found: Pictured = found
        self.scene: Scene = draw_pressed(found.picture, found.shape)
        self.text = svg(self.scene)
        self.root = ET.fromstring(self.text)

    def named(self, name: str) -> list[ET.Element]:
        return [e for e in self.root.iter() if e.get("data-name") == name]

    def fact(self, name: str) -> float:
        return float(self.root.get(f"data-{name}", "nan"))

    def points(self, name: str) -> list[list[tuple[float, float]]]:
        return [
            [(float(x), float(y)) for x, y in (p.split(",") for p in e.get("points", "").split())]
            for e in self.named(name)
        ]

    def z(self, x: float) -> float:
        """Depth (m) behind the leading face of a place on paper."""
        return (x - self.fact("left")) / self.fact("scale") / 1000 + self.fact("start-mm") / 1000

    def r(self, y: float) -> float:
        """Radius (m) of a height on paper."""
        return self.told.bore / 2 + (self.fact("bore-line") - y) / self.fact("scale") / 1000


@pytest.fixture(scope="module")
def read() -> dict[str, Read]:
    return {job.__name__: Read(job()) for job in JOBS}


@pytest.fixture(params=[job.__name__ for job in JOBS])
def one(request: pytest.FixtureRequest, read: dict[str, Read]) -> Read:
    return read[request.param]


PAPER = 1e-3
"""Coordinates are written to 0.0001 mm; ten of them for two roundings and a division."""


def test_the_chart_s_points_are_the_pressures_at_the_drawn_scale(one: Read) -> None:
    for name, value in (("pressure", "pressure"), ("pressure-eased", "pressure_eased")):
        drawn = [point for run in one.points(name) for point in run]
        assert len(drawn) == len(one.told.pressure)
        for (x, y), strip in zip(drawn, one.told.pressure, strict=True):
            height = (one.fact("chart-base") - y) / one.fact("chart-mm-per-mpa")
            assert height == pytest.approx(getattr(strip, value) / MPA, abs=1e-3)
            assert 1000 * one.z(x) == pytest.approx(1000 * strip.z, abs=PAPER)


def test_the_numbers_of_the_chart_stand_at_their_own_pressure(one: Read) -> None:
    size = PSI if one.told.units == "inch" else MPA
    marks = [float(e.get("y1", "nan")) for e in one.named("chart-mark")]
    numbers = [float((e.text or "").replace(",", "")) for e in one.named("chart-number")]
    assert len(numbers) >= 3
    assert numbers[0] == 0
    for y, number in zip(marks, numbers, strict=True):
        pressure = (one.fact("chart-base") - y) / one.fact("chart-mm-per-mpa") * MPA
        assert pressure == pytest.approx(number * size, abs=1e-3 * max(numbers) * size)


def test_contact_ends_where_the_numbers_say(one: Read) -> None:
    """The far arrow of the dimension; the work bears from the leading face on in all of these."""
    (line,) = one.named("contact")
    ends = sorted(float(line.get(k, "nan")) for k in ("x1", "x2"))
    assert 1000 * one.z(ends[0]) == pytest.approx(1000 * one.told.contact_from, abs=PAPER)
    assert 1000 * one.z(ends[1]) == pytest.approx(1000 * one.told.contact_to, abs=PAPER)


def test_the_pressure_adds_up_to_the_normal_force(one: Read) -> None:
    """N = pi d (sum of p h), from the JSON's own strips."""
    told = one.told
    for name, force in (
        ("pressure", told.normal_force),
        ("pressure_eased", told.normal_force_eased),
    ):
        total = sum(getattr(s, name) * s.length for s in told.pressure)
        assert math.pi * told.bore * total == pytest.approx(force, rel=1e-9)


def test_at_mid_length_of_a_plain_hub_the_bands_end_where_lame_says(read: dict[str, Read]) -> None:
    """Lame with the pressure at mid-length, read from the chart: 1.5 % of the radius.

    The pressure falls along a line there, and its slope adds nothing at the middle by symmetry;
    the rise at the ends, a radius away, is what is left.
    """
    one, middle, outer = read["long_hub"], 0.015, 0.024
    nearest = min(one.told.pressure, key=lambda s: abs(s.z - middle))
    inner = one.told.bore / 2
    k2 = (inner / outer) ** 2
    checked = 0
    for band in one.told.bands[1:]:
        share = (band.low or 0.0) * (1 - k2) / (nearest.pressure * k2) - 1
        wanted = outer / math.sqrt(share) if share > 0 else math.inf
        if not inner * 1.03 < wanted < outer * 0.97:
            continue
        (line,) = one.points(f"band-{band.number}-from")
        radius = one.r(crossing(line, one.fact("left") + 1000 * middle * one.fact("scale")))
        assert radius == pytest.approx(wanted, rel=0.015)
        checked += 1
    assert checked >= 2


def crossing(line: list[tuple[float, float]], x: float) -> float:
    for (x1, y1), (x2, y2) in pairwise(line):
        if min(x1, x2) <= x <= max(x1, x2) and x1 != x2:
            return y1 + (y2 - y1) * (x - x1) / (x2 - x1)
    raise AssertionError("the line does not reach there")


def test_every_band_has_its_number_in_the_section_and_its_row(one: Read) -> None:
    numbers = {e.text for e in one.named("band-number")}
    assert numbers == {str(band.number) for band in one.told.bands}
    for band in one.told.bands:
        assert len(one.named(f"band-{band.number}")) == 1
        assert len(one.named(f"row-{band.number}")) == 3
        assert len(one.named(f"swatch-{band.number}")) == 1


def test_tints_are_grays_that_darken_with_the_tension_and_match_the_table(one: Read) -> None:
    fills = [one.named(f"band-{b.number}")[0].get("fill", "") for b in one.told.bands]
    swatches = [one.named(f"swatch-{b.number}")[0].get("fill", "") for b in one.told.bands]
    assert fills == swatches
    grays = [int(fill[1:3], 16) for fill in fills]
    assert grays == sorted(set(grays), reverse=True)
    assert min(grays) >= 128
    colours = set(re.findall(r'(?:fill|stroke)="([^"]+)"', one.text))
    assert all(c in ("none", "white", "black") or re.fullmatch(r"#(..)\1\1", c) for c in colours)


def test_bands_meet_end_to_end_and_end_at_the_largest(one: Read) -> None:
    bands = one.told.bands
    assert bands[0].low is None
    assert [b.high for b in bands[:-1]] == [b.low for b in bands[1:]]
    assert bands[-1].high == one.told.largest.tension
    for band in bands:
        assert band.share_high == pytest.approx(band.high / one.told.strength)
    size = PSI if one.told.units == "inch" else MPA
    for band in bands[1:]:
        figure = f"{(band.low or 0) / size:.3g}"
        assert float(figure) * size == pytest.approx(band.low, rel=1e-6)


def test_the_spot_is_at_the_place_of_the_largest_tension(one: Read) -> None:
    (spot,) = one.named("largest-tension")
    assert one.z(float(spot.get("cx", "nan"))) == pytest.approx(one.told.largest.z, abs=1e-6)
    assert one.r(float(spot.get("cy", "nan"))) == pytest.approx(one.told.largest.r, abs=1e-6)


def test_no_words_run_into_each_other_or_off_the_picture(one: Read) -> None:
    texts = [item for item in one.scene.items if isinstance(item, Text)]
    boxes = [(t.text, text_box(t)) for t in texts]
    for (_, a), (_, b) in combinations(boxes, 2):
        assert not a.overlaps(b), boxes
    for words, box in boxes:
        assert box.left >= 0, words
        assert box.right <= one.scene.width, words
        assert box.top >= 0, words
        assert box.bottom <= one.scene.height, words


def test_letters_are_large_enough_for_a_phone(one: Read) -> None:
    """10 pixels for the letter at 380 pixels of width."""
    sizes = [t.size for t in one.scene.items if isinstance(t, Text)]
    assert min(sizes) * 380 / one.scene.width >= 10


def test_the_faces_are_lettered_leading_at_the_left(one: Read) -> None:
    (near,), (far,) = one.named("face-leading"), one.named("face-far")
    assert near.text == one.told.leading_face
    assert {near.text, far.text} == {"A", "B"}
    assert float(near.get("x", "nan")) < float(far.get("x", "nan"))


def test_a_large_disc_is_broken_off_and_says_so(read: dict[str, Read]) -> None:
    disc = read["flanged_disc"]
    assert len(disc.named("break-line")) >= 1
    assert any(n.startswith("Broken off at ") for n in disc.told.notes)
    assert read["long_hub"].found.shape is not None
    assert not any(n.startswith("Broken off") for n in read["long_hub"].told.notes)


def test_the_mandrel_lies_on_the_bore_where_it_presses_and_under_it_beyond(
    read: dict[str, Read],
) -> None:
    bush = read["thin_bush"]
    (surface,) = bush.points("mandrel-surface")
    end = bush.fact("left") + 1000 * bush.told.contact_to * bush.fact("scale")
    line = bush.fact("bore-line")
    right = bush.fact("left") + 1000 * bush.told.work_length * bush.fact("scale")
    within = [y for x, y in surface if bush.fact("left") <= x <= end - 1]
    beyond = [y for x, y in surface if x > right]
    assert bush.told.contact_to < bush.told.work_length
    assert all(y == pytest.approx(line, abs=0.02) for y in within)
    assert all(y > line + 0.5 for y in beyond)
    assert surface[0][1] < line - 0.3


def test_the_same_job_gives_the_same_bytes() -> None:
    assert Read(thin_bush()).text == Read(thin_bush()).text


def test_a_no_is_drawn_and_says_no() -> None:
    heavy = wheel_job(outside=0.3, mandrels=(MandrelNote(0.016),), cuts=turning(4e-3, 0.5e-3))
    one = Read(heavy)
    assert one.found.verdict.value == "no"
    words = " ".join(e.text or "" for e in one.root.iter(f"{SVG}text"))
    assert "No, not on" in words
    assert "Drawn as if pressed on" in words
    assert "do not press it like this" in words
    assert "Stop the press" not in words


def test_a_recess_in_the_bore_has_no_curve_across_it() -> None:
    job = wheel_job(outside=0.03)
    recessed = (
        Piece(0.0, 0.008, 0.030),
        Piece(0.008, 0.017, 0.030, 0.020),
        Piece(0.017, 0.025, 0.030),
    )
    one = Read(replace(job, work=replace(job.work, pieces=recessed)))
    runs = one.points("pressure")
    assert len(runs) == 2
    assert one.z(runs[0][-1][0]) < 0.008 < 0.017 < one.z(runs[1][0][0])
    assert (one.named("contact-words")[0].text or "").startswith("first to last contact")
