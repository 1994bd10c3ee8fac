"""A plan's bench sheet and drawing, written whole or not at all."""

from __future__ import annotations

import os
from collections.abc import Mapping
from pathlib import Path
from tempfile import NamedTemporaryFile
from typing import TYPE_CHECKING

from borewright.errors import RefusedInput, UnreadableFile

if TYPE_CHECKING:
    from borewright.answer.plan import Plan
    from borewright.report.sheet_cutting import ChartPicture


def is_drawn(plan: Plan) -> bool:
    """Whether a plan has anything to draw: work on a mandrel, or held in another way."""
    return plan.layout is not None or plan.held is not None


def drawing_text(plan: Plan) -> str:
    """The plan's drawing as SVG text. RefusedInput where the plan has nothing to draw."""
    from borewright.drawing.sheet_layout import draw_plan
    from borewright.drawing.svg import svg

    if not is_drawn(plan):
        raise RefusedInput(
            "drawing", "a plan that holds the work on nothing", "a plan that holds it on something"
        )
    return svg(draw_plan(plan))


def chart_texts(plan: Plan) -> dict[str, str]:
    """The charts of a plan as SVG text, by the name of their file; empty where there are none."""
    if plan.schedule is None:
        return {}
    from borewright.drawing.line_chart import line_chart
    from borewright.drawing.svg import svg
    from borewright.report.words import show_for

    charts, show = plan.schedule.charts, show_for(plan)
    return {f"{chart.id}.svg": svg(line_chart(chart, show)) for chart in charts}


def _charts_in_rows(plan: Plan) -> list[list[ChartPicture]]:
    """The same for the sheet: two side by side are each half as wide."""
    if plan.schedule is None or not plan.schedule.charts:
        return []
    from borewright.drawing.line_chart import HALF, WIDE, in_rows, line_chart
    from borewright.drawing.svg import svg
    from borewright.report.sheet_cutting import ChartPicture
    from borewright.report.words import show_for

    show, rows = show_for(plan), []
    for charts in in_rows(plan.schedule.charts):
        width = WIDE if len(charts) == 1 else HALF
        drawn = [line_chart(chart, show, width) for chart in charts]
        rows.append([ChartPicture(svg(scene), width, scene.description) for scene in drawn])
    return rows


def sheet_bytes(
    plan: Plan, *, picture: str | None = None, paper: str | None = None, date: str | None = None
) -> bytes:
    """The plan's bench sheet as PDF; `picture` is its drawing where that is at hand already.

    Without a picture where the plan has nothing to draw.
    """
    from borewright.report.bench_sheet import bench_sheet

    drawn = picture or (drawing_text(plan) if is_drawn(plan) else "")
    return bench_sheet(plan, drawn, charts=_charts_in_rows(plan), paper=paper, date=date)


def write_all(files: Mapping[str, bytes], read: tuple[str | None, ...] = ()) -> None:
    """Write several files, all or none: each under a temporary name beside its place, then renamed.

    `read` are the files the answer was made from, which must not be written over. RefusedInput for
    two names of one file, UnreadableFile for a place that cannot be written or is no plain file.
    """
    targets = [_target(name) for name in files]
    _check_apart(targets, [Path(r).resolve() for r in read if r])
    waiting: list[tuple[str, Path]] = []
    try:
        for target, content in zip(targets, files.values(), strict=True):
            waiting.append((_beside(target, content), target))
    except OSError as trouble:
        for name, _ in waiting:
            Path(name).unlink(missing_ok=True)
        why = trouble.strerror or "no way to write it"
        raise UnreadableFile(str(target), why, "a place to write") from None
    for name, target in waiting:
        os.replace(name, target)


def _target(name: str) -> Path:
    """Where a name leads, links followed; UnreadableFile where no plain file can stand."""
    if not name.strip():
        raise UnreadableFile("file to write", "an empty name", "the name of a file")
    try:
        target = Path(name).resolve()
        if target.exists() and not target.is_file():
            raise UnreadableFile(
                name, "something that is not a plain file", "a plain file, or a new name"
            )
    except (OSError, ValueError) as trouble:
        if isinstance(trouble, UnreadableFile):
            raise
        raise UnreadableFile(
            name[:60], "a name that cannot be used", "the name of a file"
        ) from None
    return target


def _check_apart(targets: list[Path], read: list[Path]) -> None:
    for k, target in enumerate(targets):
        if target in targets[:k] or target in read:
            allowed = "a different name for each file that is read or written"
            raise RefusedInput(str(target.name), "the same file twice", allowed)


def _beside(target: Path, content: bytes) -> str:
    """The name of a finished temporary file beside the target, with the mode a new file gets."""
    with NamedTemporaryFile(dir=target.parent, prefix=".", delete=False) as out:
        try:
            out.write(content)
            os.chmod(out.name, 0o666 & ~_umask())
        except OSError:
            Path(out.name).unlink(missing_ok=True)
            raise
    return out.name


def _umask() -> int:
    now = os.umask(0o077)
    os.umask(now)
    return now


def write_new(stem: str, files: Mapping[str, bytes]) -> list[str]:
    """Write new files of one stem, by ending, under the first number that no file here has."""
    names = free_names(stem, *files)
    try:
        write_all(dict(zip(names, files.values(), strict=True)))
    except BaseException:
        for name in names:
            Path(name).unlink(missing_ok=True)
        raise
    return names


def free_names(stem: str, *endings: str) -> list[str]:
    """Names with these endings and one number that no file here has; each is taken at once, empty."""
    number = 1
    while True:
        tail = "" if number == 1 else f"-{number}"
        names = [f"{stem}{tail}{ending}" for ending in endings]
        if _taken(names):
            return names
        number += 1


def _taken(names: list[str]) -> bool:
    """Make every one of these files, or none."""
    made: list[str] = []
    for name in names:
        try:
            os.close(os.open(name, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o666))
        except FileExistsError:
            for mine in made:
                Path(mine).unlink(missing_ok=True)
            return False
        except OSError as trouble:
            raise UnreadableFile(
                name, trouble.strerror or "no way to write it", "a place to write"
            ) from None
        made.append(name)
    return True
