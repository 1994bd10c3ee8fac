"""The benchmarks run, so that they cannot rot. Nothing is asserted about how long they take."""

from __future__ import annotations

import pytest
from bench import contact, heat, parts, passes, ways
from bench.ccx_mesh import Ladder, Mesh, Run
from bench.startup import BARE, Line, measure, table


def test_the_start_up_bench_times_every_command() -> None:
    lines = measure(repeats=1)
    assert lines[0].name == BARE
    assert lines[0].ratio == 1
    assert all(line.seconds > 0 for line in lines)
    assert [line.limit for line in lines if line.limit] == [5, 25, 150, 60, 60]


def test_its_table_marks_what_is_over_and_only_that() -> None:
    rows = table([Line("slow", 0.6, 6.0, 5), Line("quick", 0.4, 4.0, 5), Line("free", 9, 90, None)])
    assert [line.endswith("over") for line in rows.splitlines()] == [False, True, False, False]


def test_the_bench_of_many_parts_runs() -> None:
    assert parts.seconds(5) > 0


def test_the_bench_of_passes_runs_and_trying_all_finds_the_same_times(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert passes.main() in (0, 1)
    assert "least time differs: 0" in capsys.readouterr().out


def test_the_bench_of_heat_runs_and_both_routes_end_as_warm(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert heat.main(rounds=1, repeats=1) in (0, 1)
    assert "with its waits" in capsys.readouterr().out
    trial = heat.trial_named("aluminium")
    closed = heat.heat_run(trial).cuts[-1].after[:, 0]
    assert heat.integrated(trial) == pytest.approx(closed, rel=1e-9)


def test_the_bench_of_every_way_runs() -> None:
    assert min(ways.one_part(1)) > 0
    assert min(ways.many_parts(2, 1)) > 0


def test_the_bench_against_calculix_runs_on_one_small_fit(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    name = "thin bush"
    monkeypatch.setattr(contact, "FIXED", {name: contact.FIXED[name]})
    for repeats in ("ROUNDS", "BUILDS", "REPEATS"):
        monkeypatch.setattr(contact, repeats, 1)
    assert contact.main(Ladder(sizes=(45, 32), refined=8)) in (0, 1)
    said = capsys.readouterr().out
    for line in (name, "median", "limits", BARE, "fit, new shape", "fit, known shape"):
        assert f"\n{line}" in said


def test_its_table_marks_the_fits_and_the_median_that_are_over_and_only_those() -> None:
    mesh = Run(Mesh(8, 1.0, None), 800, 0.3, {})

    def fit(ccx: float, known: float, memory: float) -> contact.Row:
        return contact.Row("a fit", mesh, ccx, ccx, contact.Ours(0.05, 1e-4, ccx / known, memory))

    good = fit(0.3, 9000, 1e8)
    bad = [fit(0.1, 9000, 1e8), fit(0.3, 900, 1e8), fit(0.3, 9000, 3e8)]
    over = [line.endswith("over") for line in contact.table([good, *bad]).splitlines()[1:-1]]
    assert over == [False, True, True, True, False]
    assert contact.table([fit(0.2, 9000, 1e8)]).splitlines()[2].endswith("over")
