"""A thousand job files, valid and not: an answer or one line that says what is wrong, never more."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest
from tests.cli_run import Ran, ran
from tests.unit.fuzz_jobs import fuzzed_job

JOBS = 1000
LOT = 100
PRINTED = 20
"""Every so many jobs, the sheet and the drawing are made as well: they cost most of the time."""
MANDREL_ONLY = 2
"""Every so many jobs, a mandrel is insisted on: with every way open hardly any is a no."""
LEAST_VALID = 0.30


def planned(number: int) -> Ran:
    """The plan of one fuzzed job in the current folder."""
    Path("job.toml").write_bytes(fuzzed_job(number))
    extra = [[], ["--json"], ["--explain"]][number % 3]
    if number % MANDREL_ONLY == 0:
        extra = [*extra, "--use", "plain-taper"]
    if number % PRINTED == 0:
        extra = [*extra, "--sheet", "sheet.pdf", "--drawing", "drawing.svg"]
    return ran("plan", "job.toml", *extra)


def keeps_the_contract(done: Ran) -> bool:
    if done.code == 2:
        one_line = len(done.error_lines) == 1 and done.err.startswith("borewright: ")
        return one_line and done.out == "" and done.error_lines[0].isprintable()
    return done.code in (0, 3) and done.out != "" and "Traceback" not in done.err


@pytest.mark.parametrize("start", range(0, JOBS, LOT))
def test_every_job_is_answered_or_refused_in_one_line(
    start: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    exits: Counter[int] = Counter()
    for number in range(start, start + LOT):
        done = planned(number)
        assert keeps_the_contract(done), (number, done)
        exits[done.code] += 1
    shares = {code: f"{exits[code] / LOT:.0%}" for code in (0, 2, 3)}
    print(f"jobs {start} to {start + LOT - 1}: exits {shares}")
    assert (exits[0] + exits[3]) / LOT >= LEAST_VALID, exits
    assert min(exits[0], exits[2], exits[3]) > 0, exits


def test_the_same_number_makes_the_same_job() -> None:
    assert [fuzzed_job(n) for n in range(20)] == [fuzzed_job(n) for n in range(20)]
    assert len({fuzzed_job(n) for n in range(JOBS)}) > JOBS * 0.9
