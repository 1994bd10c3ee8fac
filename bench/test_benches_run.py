"""The benchmarks run, so that they cannot rot. Nothing is asserted about how long they take."""

from __future__ import annotations

from bench import parts
from bench.startup import BARE, Line, measure, table


def test_the_start_up_bench_times_every_command() -> None:
    lines = measure(repeats=1)
    assert lines[0].name == BARE
    assert lines[0].ratio == 1
    assert all(line.seconds > 0 for line in lines)
    assert [line.limit for line in lines if line.limit] == [5, 25, 60, 40]


def test_its_table_marks_what_is_over_and_only_that() -> None:
    rows = table([Line("slow", 0.6, 6.0, 5), Line("quick", 0.4, 4.0, 5), Line("free", 9, 90, None)])
    assert [line.endswith("over") for line in rows.splitlines()] == [False, True, False, False]


def test_the_bench_of_many_parts_runs() -> None:
    assert parts.seconds(5) > 0
