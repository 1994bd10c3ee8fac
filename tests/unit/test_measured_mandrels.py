"""A mandrel measured at stations: read, refused, turned round, and used by the plan as measured."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.jobs_made import turning, wheel_job
from tests.on_a_mandrel import plan

from borewright.answer.plan import Plan
from borewright.errors import RefusedInput
from borewright.holding.taper.mandrels import resolve
from borewright.holding.taper.measured_mandrel import (
    USUAL_UNCERTAINTY,
    diameter_of,
    flats_of,
    window_of,
)
from borewright.job import MandrelNote, Shelf, parse_job, parse_shelf
from borewright.job.write import job_text
from borewright.quantities import Show
from borewright.reference.library import Tables
from borewright.service.shelf_doubts import shelf_doubts

TABLES = Tables()
SHELF = """units = "inch"
[[mandrel]]
size = "5/8in"
name = "worn"
ground_length = "4 1/4in"
overall_length = "5 1/2in"
at = [["1/4in", "0.6247in"], ["3in", "0.6260in"]]
uncertainty = "0.0001in"
"""
INCH = 0.0254


def note_of(text: str) -> MandrelNote:
    return parse_shelf(text, "shelf.toml").mandrels[0]


def test_stations_are_read_as_typed() -> None:
    note = note_of(SHELF)
    assert note.stations == (
        (pytest.approx(0.25 * INCH), pytest.approx(0.6247 * INCH)),
        (pytest.approx(3 * INCH), pytest.approx(0.6260 * INCH)),
    )
    assert note.station_uncertainty == pytest.approx(0.0001 * INCH)


def test_a_bare_number_reads_in_the_file_s_units() -> None:
    typed = '[["1/4in", "0.6247in"], ["3in", "0.6260in"]]'
    assert note_of(SHELF.replace(typed, "[[0.25, 0.6247], [3, 0.626]]")) == note_of(SHELF)


@pytest.mark.parametrize(
    ("right", "wrong", "says"),
    [
        (', ["3in", "0.6260in"]', "", "mandrel[1].at: found 1 station; allowed is two or more"),
        ('"3in", ', '"0.25in", ', "mandrel[1].at: found 6.35 mm (1/4 in) twice"),
        ('"0.6260in"', '"0.726in"', "mandrel[1].at: found a diameter of"),
        ('"3in", ', '"4.3in", ', "mandrel[1].at: found a station at 109.22 mm (4.30 in)"),
        ('"0.6260in"', '"a"', "mandrel[1].at[2][2]: found a"),
        ('"3in", ', '"-3in", ', "mandrel[1].at[2][1]: found -3in"),
        ('["3in", "0.6260in"]', '["3in"]', "found a list of 1; allowed is a place and the diam"),
        ('["3in", "0.6260in"]', '"3in"', "found '3in'; allowed is a place and the diameter"),
        ("at =", 'small_end = "0.6246in"\nat =', "mandrel[1]: found both `at` and `small_end`"),
        ("at =", 'taper = "1:2000"\nat =', "mandrel[1]: found both `at` and `taper`"),
        ('at = [["1/4in", "0.6247in"], ["3in", "0.6260in"]]', "", "uncertainty: found no diameters"),
    ],
    ids=[
        "one station", "a place twice", "far from the size", "beyond the ground length", "no size",
        "below zero", "half a pair", "no pair", "an end beside it", "a taper beside it",
        "uncertainty alone",
    ],
)  # fmt: skip
def test_stations_that_cannot_be_are_refused(right: str, wrong: str, says: str) -> None:
    assert right in SHELF
    with pytest.raises(RefusedInput) as refused:
        parse_shelf(SHELF.replace(right, wrong), "shelf.toml")
    assert says in str(refused.value)
    assert str(refused.value).startswith("shelf.toml: ")


STATIONS = st.lists(
    st.tuples(st.integers(0, 4000), st.integers(0, 20)), min_size=2, max_size=6,
    unique_by=lambda pair: pair[0],
).map(lambda pairs: ", ".join(f'["{x / 1000}in", "{(6240 + d) / 10000:.4f}in"]' for x, d in pairs))  # fmt: skip


@given(stations=STATIONS, stated=st.booleans())
def test_a_job_with_stations_is_written_and_reads_back_as_the_equal_job(
    stations: str, stated: bool
) -> None:
    more = ', uncertainty = "0.05thou"' if stated else ""
    text = f"""[work]
material = "al-6061-t6"
bore = "5/8in"
outside = "3in"
length = "1in"
[hold]
mandrels = [{{size = "5/8in", at = [{stations}]{more}}}]
"""
    job = parse_job(text, "job.toml")
    assert len(job.shelf.mandrels[0].stations) == stations.count("[")
    assert parse_job(job_text(job), "job.toml") == job


# Resolved


def note(*stations: tuple[float, float], ground: float | None = 0.1) -> MandrelNote:
    return MandrelNote(0.016, ground_length=ground, stations=stations)


STRAIGHT = ((0.01, 0.015985), (0.09, 0.016025))


def test_two_stations_are_the_straight_mandrel_of_their_taper() -> None:
    found = resolve(note(*STRAIGHT), TABLES, "m").mandrel
    stated = MandrelNote(0.016, small_end=0.01598, taper=0.0005, ground_length=0.1)
    straight = resolve(stated, TABLES, "m").mandrel
    assert found.small_end == pytest.approx(straight.small_end, abs=1e-12)
    assert found.taper == pytest.approx(straight.taper, rel=1e-9)
    assert window_of(found, 0.03, 0.025) == pytest.approx(window_of(straight, 0.03, 0.025))


def test_measured_from_its_large_end_it_is_turned_round() -> None:
    turned = resolve(note(*((0.1 - x, d) for x, d in STRAIGHT)), TABLES, "m").mandrel
    assert turned.stations == tuple((pytest.approx(x), d) for x, d in STRAIGHT)


def test_what_is_not_stated_of_it_is_said() -> None:
    resolved = resolve(note(*STRAIGHT, ground=None), TABLES, "m")
    said = {a.what for a in resolved.assumed}
    assert said == {"ground length of m", "diameters of m"}
    assert resolved.mandrel.station_uncertainty == USUAL_UNCERTAINTY
    assert resolved.mandrel.ground_length == TABLES.mandrel_row(0.016).ground_length


def test_a_station_farther_than_the_table_s_ground_length_lengthens_it() -> None:
    far = TABLES.mandrel_row(0.016).ground_length + 0.02
    found = resolve(note((0.01, 0.015985), (far, 0.01603), ground=None), TABLES, "m").mandrel
    assert found.ground_length == far
    assert found.overall_length >= far


def test_a_parallel_one_is_refused_by_name() -> None:
    with pytest.raises(RefusedInput, match="mandrel 'm': found 2 diameters that show no taper"):
        resolve(note((0.01, 0.016), (0.09, 0.016)), TABLES, "m")


WORN = ((0.0, 0.01598), (0.03, 0.015995), (0.06, 0.015995), (0.1, 0.01603))


def test_a_worn_one_keeps_its_own_diameters_and_knows_its_flat() -> None:
    worn = resolve(note(*WORN), TABLES, "m").mandrel
    assert diameter_of(worn, 0.045) == pytest.approx(0.015995)
    assert diameter_of(worn, 0.08) == pytest.approx(0.0160125)
    assert flats_of(worn) == ((0.03, 0.06),)


# Planned


def planned(bore: float, *stations: tuple[float, float]) -> Plan:
    job = wheel_job(bore=bore, mandrels=(note(*stations),), cuts=turning(), uncertainty=1e-6)
    return plan(job, source_tables=TABLES)


def seat_of(answer: Plan) -> str:
    return next(q.reason for q in answer.questions if q.id == "seat")


def figure(answer: Plan, name: str) -> float:
    return next(f.best for q in answer.questions for f in q.figures if f.name == name)


def test_the_plan_says_where_nothing_stops_the_work() -> None:
    assert "flat" not in seat_of(planned(0.015992, *STRAIGHT))
    said = seat_of(planned(0.015992, *WORN))
    assert "The mandrel is flat" in said
    assert "travel has no stop" in said


def test_a_flat_that_the_work_never_reaches_is_not_spoken_of() -> None:
    assert "flat" not in seat_of(planned(0.016005, *WORN))


def test_the_plan_s_touch_and_window_are_those_of_the_worn_mandrel() -> None:
    """By hand: 16.0125 mm stands half way between 60 mm (15.995) and 100 mm (16.030)."""
    assert figure(planned(0.0160125, *WORN), "touch_position") == pytest.approx(0.08, abs=1e-9)
    answer = planned(0.016, *WORN)
    travel, dog = figure(answer, "travel"), TABLES.allowance("dog_clearance").best
    last = 0.1 - travel - dog
    by_hand = 0.015995 + max(0.0, (last - 0.06) / 0.04) * 35e-6
    assert figure(answer, "bore_window_high") == pytest.approx(by_hand, abs=1e-9)


def test_a_straight_mandrel_measured_at_three_places_plans_as_the_straight_one() -> None:
    three = planned(0.016, (0.05, 0.016005), *STRAIGHT)
    two = planned(0.016, *STRAIGHT)
    assert three.verdict is two.verdict
    assert three.headline == two.headline
    for name in ("touch_position", "seat_position", "contact_length", "bore_window_low"):
        assert figure(three, name) == pytest.approx(figure(two, name), rel=1e-6)
    margins = ({q.id: q.margin for q in answer.questions} for answer in (three, two))
    assert next(margins) == pytest.approx(next(margins), rel=1e-6)


# Not straight


BENT = ((0.0, 0.01598), (0.03, 0.015987), (0.06, 0.01601), (0.1, 0.01603))
"""8 µm under a 1:2000 taper at 30 mm; 5.5 µm under the nearest straight one. Grows all along."""


def test_the_plan_says_that_a_worn_mandrel_is_not_straight_where_the_work_sits() -> None:
    """Bent at 30 mm: covered by a bore of 15.995, not by one of 16.015 that stops past 60."""
    assert "The mandrel is not straight: " in seat_of(planned(0.015995, *BENT))
    assert "worn or scored there" in seat_of(planned(0.015995, *BENT))
    beyond = planned(0.01602, *BENT)
    assert "not straight" not in seat_of(beyond)
    assert any("not straight" in note for note in beyond.notes)
    assert not any("not straight" in note for note in planned(0.015995, *BENT).notes)


def test_of_a_straight_mandrel_it_is_not_said() -> None:
    three = planned(0.016, (0.05, 0.016005), *STRAIGHT)
    assert "not straight" not in " ".join([seat_of(three), *three.notes])
    within = planned(0.016, (0.05, 0.016007), *STRAIGHT)
    assert "not straight" not in " ".join([seat_of(within), *within.notes])


def test_a_flat_that_the_work_never_reaches_is_a_note() -> None:
    answer = planned(0.016005, *WORN)
    assert "flat" not in seat_of(answer)
    assert any("The mandrel is flat" in note for note in answer.notes)


def test_the_plan_says_that_a_mandrel_is_parallel_as_far_as_its_readings_tell() -> None:
    said = seat_of(planned(0.016002, (0.01, 0.016), (0.09, 0.016004)))
    assert "The mandrel is parallel as far as these readings tell" in said
    assert "parallel" not in seat_of(planned(0.016, *STRAIGHT))


def checked(*stations: tuple[float, float]) -> list[str]:
    shelf = Shelf((note(*stations),), stated=True)
    return [str(doubt) for doubt in shelf_doubts(shelf, TABLES, Show("mm"))]


def test_the_shelf_check_says_what_is_worn_flat_or_parallel_and_nothing_of_a_straight_one() -> None:
    assert checked((0.05, 0.016005), *STRAIGHT) == []
    assert checked(*STRAIGHT) == []
    (bent,) = checked(*BENT)
    assert bent.startswith("mandrel 1: it is not straight: 70 mm (2.76 in) from the large end")
    assert any("it is flat 40 to 70 mm" in doubt for doubt in checked(*WORN))
    (parallel,) = checked((0.01, 0.016), (0.09, 0.016004))
    assert "parallel as far as these readings tell" in parallel
