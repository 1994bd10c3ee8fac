"""A key or a value that a job file cannot have: one sentence with file, place and a way out."""

from __future__ import annotations

import pytest
from tests.unit.job_refused import changed, refusal
from tests.unit.job_texts import FULL, SMALL, WHEEL

from borewright.errors import UnknownName, UnreadableQuantity


@pytest.mark.parametrize(
    ("old", "new", "place", "nearest"),
    [
        ("[work]", "titel = 'x'\n[work]", "job.toml: titel", "title"),
        ("bore =", "bor =", "job.toml: [work] bor", "bore"),
        ('bore = "16.01mm"', 'bore = {sise = "16mm"}', "job.toml: [work.bore] sise", "size"),
        ('thickness = "6mm"', 'thicknes = "6mm"', "job.toml: [work.web] thicknes", "thickness"),
        ('inside = "65mm"', 'insid = "65mm"', "job.toml: [work.rim] insid", "inside"),
        ("hub = {outside", "hub = {outsid", "job.toml: [work.hub] outsid", "outside"),
        ("[work]", "[machine]\nspeed = []\n[work]", "job.toml: [machine] speed", "speeds"),
        ("[work]", "[hold]\nuses = 'any'\n[work]", "job.toml: [hold] uses", "use"),
        ("[work]", "[[cut]]\nfeeed = '1mm'\n[work]", "job.toml: [cut[1]] feeed", "feed"),
        ("[work]", "[hold]\nmandrels = [{siz = 1}]\n[work]", "[hold.mandrels[1]] siz", "size"),
        (
            'bore = "16.01mm"',
            'bore = {readings = [{dept = 0, size = "16mm"}]}',
            "job.toml: [work.bore.readings[1]] dept",
            "depth",
        ),
    ],
)
def test_an_unknown_key_is_named_with_the_nearest(
    old: str, new: str, place: str, nearest: str
) -> None:
    message = refusal(changed(WHEEL, old, new), UnknownName)
    assert place in message
    assert f"allowed is '{nearest}' or one of: " in message


def test_a_very_long_unknown_key_is_cut_short() -> None:
    assert len(refusal(f"{'k' * 5000} = 1", UnknownName)) < 300


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('bore = "16.01mm"\n', "", "work.bore: found nothing; allowed is a value here"),
        ('material = "gray-iron-30"\n', "", "work.material: found nothing"),
        ('"gray-iron-30"', "30", "work.material: found 30; allowed is one line of text"),
        (
            '"gray-iron-30"',
            '"two\\nlines"',
            "work.material: found 'two lines'; allowed is one line",
        ),
        ('"gray-iron-30"', f'"{"x" * 201}"', "work.material: found 'xxx"),
        ('length = "20mm"', "length = true", "work.length: found true; allowed is a number with"),
        ('length = "20mm"', "length = []", "work.length: found a list of 0; allowed is a number"),
        ('length = "20mm"', "length = 1979-05-27", "work.length: found 1979-05-27; allowed is"),
        ('bore = "16.01mm"', "bore = [1]", "work.bore: found a list of 1; allowed is a number"),
        ('hub = {outside = "30mm"}', 'hub = "30mm"', "work.hub: found '30mm'; allowed is a table"),
        ("[work]", "[work]\nblank = 'forged'", "work.blank: found 'forged'; allowed is 'bar', "),
        ("[work]", "[work]\nquantity = 0", "work.quantity: found 0; allowed is 1 or more"),
        ("[work]", "[work]\nquantity = 10001", "work.quantity: found 10001; allowed is 10000 or"),
        ("[work]", "[work]\nquantity = 2.5", "work.quantity: found 2.5; allowed is a whole number"),
        ("[work]", "[work]\nquantity = '2'", "work.quantity: found '2'; allowed is a whole number"),
        ("[work]", "units = 'cm'\n[work]", "units: found 'cm'; allowed is 'inch' or 'mm'"),
        ("[work]", "cut = 3\n[work]", "cut: found 3; allowed is a list in square brackets"),
        ("[work]", "machine = 3\n[work]", "machine: found 3; allowed is a table of keys"),
        ("[work]", "hold = {mandrels = 'some'}\n[work]", "hold.mandrels: found 'some'; allowed is"),
        ("[work]", "hold = {lubrication = 'wet'}\n[work]", "hold.lubrication: found 'wet'; allow"),
        (
            "[work]",
            "[[cut]]\nkind = 'bore'\n[work]",
            "cut[1].kind: found 'bore'; allowed is 'turn'",
        ),
    ],
)
def test_a_value_of_the_wrong_kind_is_refused_where_it_stands(
    old: str, new: str, says: str
) -> None:
    assert refusal(changed(WHEEL, old, new)).startswith(f"job.toml: {says}")


def test_no_work_at_all_is_refused() -> None:
    assert refusal("").startswith("job.toml: work: found nothing; allowed is a value here")


@pytest.mark.parametrize(
    ("old", "new", "place"),
    [
        ('size = "18.01mm"', 'size = "18,01mm"', "work.bore.size: found 18,01mm, which could be"),
        ('uncertainty = "4um"', 'uncertainty = "?"', "work.bore.uncertainty: found ?"),
        ('size = "18.006mm"', 'size = "x"', "work.bore.readings[2].size: found x"),
        ('depth = "15mm"', 'depth = "-1mm"', "work.bore.readings[2].depth: found -1mm"),
        ('to = "20mm"', 'to = "2 0mm"', "work.outline[2].to: found 2 0mm"),
        ('from = "10mm"', "from = nan", "work.outline[2].from: found nan"),
        ('outside = "90mm"', "outside = inf", "work.outline[2].outside: found inf"),
        ('inside = "32mm"', 'inside = "0mm"', "work.outline[2].inside: found 0mm"),
        ('outside = "108mm"', 'outside = "a"', "work.finished.outside: found a"),
        ('tolerance = "0.05mm"', 'tolerance = "a"', "work.finished.tolerance: found a"),
        ('"2 rev/s"', '"30m/min"', "machine.speeds[2]: found 30m/min, which is a cutting speed"),
        ('"0.004in"', '"0.004N"', "machine.feeds[2]: found 0.004N, which is a force"),
        ('"120mm"', '"a"', "machine.swing_over_cross_slide: found a"),
        ('"500mm"', '"a"', "machine.between_centres: found a"),
        ('"550W"', '"550N"', "machine.power: found 550N, which is a force"),
        ('"1000kgf"', '"1000kg"', "hold.press_force: found 1000kg, which is a mass"),
        ('"1/2in"', '"1/0in"', "hold.mandrels[2]: found 1/0in"),
        ('size = "18mm"', 'size = "a"', "hold.mandrels[1].size: found a"),
        ('small_end = "17.985mm"', 'small_end = "a"', "hold.mandrels[1].small_end: found a"),
        ('large_end = "18.04mm"', 'large_end = "a"', "hold.mandrels[1].large_end: found a"),
        ('"1:2000"', '"1:0"', "hold.mandrels[1].taper: found 1:0"),
        ('ground_length = "110mm"', 'ground_length = "a"', "hold.mandrels[1].ground_length: found"),
        ('"150mm"', '"a"', "hold.mandrels[1].overall_length: found a"),
        ('depth = "0.5mm"', 'depth = "0mm"', "cut[1].depth: found 0mm"),
        ('"0.1mm/rev"', '"1m"', "cut[1].feed: found 1m"),
        ('"30m/min"', '"30"', "cut[1].speed: found 30, which could be 30 rpm or 30 ft/min"),
        ('"90deg"', '"90"', "cut[1].edge_angle: found 90, which could be 90 deg"),
        ('nose_radius = "0.4mm"', 'nose_radius = "a"', "cut[1].nose_radius: found a"),
        ('to = "20mm"', f"to = 0x{'f' * 6000}", "work.outline[2].to: found a number of more than"),
    ],
)
def test_a_quantity_that_does_not_read_is_refused_where_it_stands(
    old: str, new: str, place: str
) -> None:
    message = refusal(changed(FULL, old, new), UnreadableQuantity)
    assert message.startswith(f"job.toml: {place}")


@pytest.mark.parametrize("typed", ["3.0", "3", '"3"'])
def test_a_bare_number_without_units_shows_both_readings(typed: str) -> None:
    message = refusal(changed(SMALL, '"3in"', typed), UnreadableQuantity)
    assert "work.outside: found 3" in message
    assert 'or units = "inch" or "mm" in the file' in message
