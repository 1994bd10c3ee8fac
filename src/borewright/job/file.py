"""Reading a job file: TOML text to a `Job`, or one refusal that says file, place and what is wrong.

job = read_job("wheel.toml")
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from borewright.job.records import Job
from borewright.job.toml_text import load_text, parse_tables
from borewright.job.typed import Reader, Value
from borewright.quantities.read import System, length_system

WHAT = "job file"


def read_job(path: str | Path) -> Job:
    """The job of a file. UnreadableFile, UnknownName, UnreadableQuantity or RefusedInput else."""
    return parse_job(load_text(Path(path), WHAT), str(path))


def parse_job(text: str, where: str) -> Job:
    """The job of a TOML text; `where` is the file's name in refusals.

    >>> job = parse_job('''
    ... [work]
    ... material = "gray-iron-30"
    ... bore = "5/8in"
    ... outside = "3in"
    ... length = "3/4in"
    ... ''', "wheel.toml")
    >>> job.units, job.work.bore.size, job.work.outside
    ('inch', 0.015875, 0.0762)
    """
    return job_of(parse_tables(text, where, WHAT), where)


def job_of(tables: Mapping[str, Any], where: str) -> Job:
    """The job of tables as TOML gives them; refusals as in `parse_job`."""
    # pydantic is heavy, and `fit` and `--version` reach this room without needing a file
    from borewright.job.build_cuts import build_cut
    from borewright.job.build_shop import build_job_shelf
    from borewright.job.build_work import bore_as_typed, build_work
    from borewright.job.form import check_form
    from borewright.job.schema import JobTable

    table = check_form(tables, JobTable, where)
    reader = Reader(where, table.units)
    work = build_work(table.work, reader)
    return Job(
        title=table.title,
        work=work,
        units=table.units or _family(bore_as_typed(table.work.bore)),
        shelf=build_job_shelf(table.hold, table.machine, reader),
        use=table.hold.use,
        lubrication=table.hold.lubrication,
        driven_by=table.hold.driven_by,
        pressed_before=table.hold.pressed_before,
        cuts=tuple(build_cut(cut, n, reader) for n, cut in enumerate(table.cut, 1)),
    )


def _family(typed: Value | None) -> System:
    return length_system(str(typed)) or "inch"
