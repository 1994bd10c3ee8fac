"""A bore stated by a class or by two sizes: read, refused, written, planned, said.

H7 at 10 to 18 mm is 0 to +18 um, at 18 to 30 mm 0 to +21 um (ISO 286-1 IT7, checks row 9).
"""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.cli_run import ran
from tests.on_a_mandrel import plan

from borewright.answer.plan import Plan
from borewright.answer.records import Verdict
from borewright.errors import RefusedInput
from borewright.job import Job, parse_job
from borewright.job.parts_file import parse_parts
from borewright.job.write import job_text

UM = 1e-6


def text(bore: str, units: str = "", outside: str = "63mm", mandrel: str = "") -> str:
    head = f'units = "{units}"\n' if units else ""
    held = f'[hold]\nmandrels = ["{mandrel}"]\n' if mandrel else ""
    return f"""{head}[work]
material = "al-6061-t6"
bore = {bore}
outside = "{outside}"
length = "25mm"
{held}"""


def job(bore: str, **how: str) -> Job:
    return parse_job(text(bore, **how), "job.toml")


@pytest.mark.parametrize(
    ("typed", "low", "high"),
    [
        ('"15 H7"', 15.0, 15.018),
        ('"15H7"', 15.0, 15.018),
        ('"15mm H7"', 15.0, 15.018),
        ('"25 H7"', 25.0, 25.021),
        ('"25 H8"', 25.0, 25.033),
        ('"5/8in H7"', 15.875, 15.893),
        ('"5/8 in H7"', 15.875, 15.893),
        ('"1-1/4in H7"', 31.75, 31.775),
        ('"20 G7"', 20.007, 20.028),
        ('{ low = "0.6250in", high = "0.6255in" }', 15.875, 15.8877),
        ('"16.000 to 16.020mm"', 16.0, 16.02),
        ('"0.6250in to 0.6255in"', 15.875, 15.8877),
        ('{ size = "15 H7", made_by = "reamed" }', 15.0, 15.018),
    ],
)
def test_the_size_is_the_middle_of_the_band_and_the_uncertainty_half_of_it(
    typed: str, low: float, high: float
) -> None:
    bore = job(typed).work.bore
    assert bore.limits is not None
    assert (bore.limits.low, bore.limits.high) == pytest.approx((low / 1e3, high / 1e3), abs=1e-12)
    assert bore.size == pytest.approx((low + high) / 2e3, abs=1e-12)
    assert bore.uncertainty == pytest.approx((high - low) / 2e3, abs=1e-12)


@pytest.mark.parametrize(("units", "shown"), [("inch", "inch"), ("mm", "mm"), ("", "mm")])
def test_a_bare_size_before_a_class_is_in_millimetres_in_any_file(units: str, shown: str) -> None:
    read = job('"15 H7"', units=units)
    assert read.units == shown
    assert read.work.bore.size == pytest.approx(0.015009)


def test_an_inch_class_makes_an_inch_job() -> None:
    assert job('"5/8in H7"').units == "inch"
    assert job('{ low = "0.6250in", high = "0.6255in" }').units == "inch"


@pytest.mark.parametrize("typed", ['"16mm"', '"0.6255in"', '"5/8in"', '{ size = "16mm" }'])
def test_a_plain_size_has_no_limits(typed: str) -> None:
    bore = job(typed).work.bore
    assert (bore.limits, bore.uncertainty) == (None, None)


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ('"16 Q7"', "work.bore: found 'Q7'; allowed is 'H7' or one of: F10, F11, F5"),
        ('"16 h7"', "work.bore: found 'h7'; allowed is 'H7'"),
        ('"16 H12"', "work.bore: found 'H12'; allowed is one of: F10"),
        ('"130 H7"', "work.bore: found 130 H7; allowed is a size above zero, up to 120 mm"),
        ('"0.625 H7"', "work.bore: found 0.625, which could be 0.625 mm (0.0246 in) or 0.625 in"),
        ('{ low = "16mm" }', "work.bore: found `low` alone; allowed is both"),
        ('{ high = "16mm" }', "work.bore: found `high` alone; allowed is both"),
        ('{ low = "16mm", high = "15mm" }', "work.bore: found 16.000 mm (0.6299 in) to 15.000"),
        ('{ low = "16mm", high = "16mm" }', "allowed is a smallest size and then a larger one"),
        ('{ low = "16mm", high = "19mm" }', "work.bore: found limits 3 mm"),
        ('"16mm to 26mm"', "work.bore: found limits 10 mm"),
        ('{ size = "16mm", low = "16mm", high = "17mm" }', "found `size` together with `low`"),
        ('{ size = "16 H7", uncertainty = "2um" }', "found `uncertainty` beside the bore's limits"),
        (
            '{ size = "16 H7", readings = [{ depth = "1mm", size = "16mm" }] }',
            "found `readings` beside the bore's limits",
        ),
        ('{ lo = "16mm" }', "[work.bore] lo: found 'lo'"),
        ('"16mm to"', "work.bore: found 16mm to"),
    ],
)
def test_limits_that_cannot_be_are_refused_in_one_sentence(typed: str, says: str) -> None:
    with pytest.raises(RefusedInput) as refused:
        job(typed)
    assert says in str(refused.value)


@given(
    size=st.integers(3, 100),
    code=st.sampled_from(["H6", "H7", "H8", "H9", "G7", "F8"]),
    unit=st.sampled_from(["mm", "/32in"]),
)
def test_a_class_is_written_as_a_class_and_reads_back_as_the_equal_job(
    size: int, code: str, unit: str
) -> None:
    read = job(f'"{size}{unit} {code}"', outside="200mm")
    assert code in job_text(read)
    assert parse_job(job_text(read), "again.toml") == read


@given(low=st.integers(15_000, 16_000), band=st.integers(1, 200))
def test_two_limits_are_written_as_two_and_read_back_as_the_equal_job(low: int, band: int) -> None:
    read = job(f'{{ low = "{low}um", high = "{low + band}um", made_by = "bored" }}')
    assert "low = " in job_text(read)
    assert parse_job(job_text(read), "again.toml") == read


def test_a_list_of_parts_takes_a_class_in_its_bore_column() -> None:
    head = "part,material,outside,length,bore,uncertainty\n"
    found = parse_parts(
        f"{head}a,6061,2in,1in,15 H7,\nb,6061,2in,1in,15 Q7,\nc,6061,2in,1in,15 H7,1um", "parts.csv"
    )
    assert found.parts[0].job.work.bore.size == pytest.approx(0.015009)
    assert [bad.line for bad in found.bad] == [3, 4]
    assert "'Q7'" in found.bad[0].reason


# Planned


def planned(typed: str, **how: str) -> Plan:
    return plan(job(typed, **how))


def bore_of(answer: Plan) -> Any:
    return next(q for q in answer.questions if q.id == "bore")


def test_the_plan_says_back_the_band_of_a_class() -> None:
    said = " ".join(planned('"15 H7"').echo)
    assert "15 H7: 15.000 to 15.018 mm (0.5906 to 0.5913 in) (ISO 286)" in said
    assert "ISO" not in " ".join(planned('{ low = "15mm", high = "15.018mm" }').echo)


def test_h7_is_not_a_mandrel_bore_and_the_plan_says_so_with_the_sizes() -> None:
    """18 um at 1:2000 are 36 mm."""
    answer = planned('"16 H7"', mandrel="16mm")
    question = bore_of(answer)
    assert question.verdict is Verdict.CARE
    assert "16 H7, 16.000 to 16.018 mm" in question.reason
    assert "is not a mandrel bore" in question.reason
    assert "the seat moves 36 mm" in question.reason
    assert "part of that lies inside" in question.reason
    assert answer.verdict is not Verdict.YES


def test_limits_that_the_mandrel_takes_are_a_yes_and_it_is_not_said() -> None:
    question = bore_of(planned('{ low = "16mm", high = "16.006mm" }', mandrel="16mm"))
    assert question.verdict is Verdict.YES
    assert "not a mandrel bore" not in question.reason
    assert "the seat moves 12 mm" in question.reason


def test_the_class_carries_its_source_into_the_plan() -> None:
    figure = next(f for f in bore_of(planned('"16 H7"')).figures if f.name == "bore_half_band")
    assert figure.best == pytest.approx(9 * UM)
    assert figure.sources == ("iso-286", "iso-286-memory")


@pytest.mark.parametrize("typed", ["15 H7 reamed", "15H7", "15 H7, by caliper", "15.0 to 15.018mm"])
def test_ask_takes_a_bore_by_its_limits(typed: str, tmp_path: Any, monkeypatch: Any) -> None:
    monkeypatch.chdir(tmp_path)
    done = ran("ask", stdin=f"{typed}\n63mm\n25mm\nbrass\nbar\n16mm, 15mm\n")
    assert done.code in (0, 3), done.err
    assert "15.000 to 15.018 mm" in done.out
    assert "taken as a guess" not in done.out
    assert (tmp_path / "bored-part.toml").exists()


def test_ask_refuses_an_unknown_class_with_the_known_ones(tmp_path: Any, monkeypatch: Any) -> None:
    monkeypatch.chdir(tmp_path)
    done = ran("ask", stdin="15 Q7 by caliper\n63mm\n25mm\nbrass\nbar\n\n")
    assert (done.code, done.out) == (2, "")
    assert "'Q7'; allowed is 'H7' or one of" in done.err
