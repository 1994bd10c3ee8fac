"""A plan's bench sheet, drawing and charts, written whole or not at all."""

from __future__ import annotations

import os
from collections.abc import Mapping
from pathlib import Path
from tempfile import NamedTemporaryFile
from typing import TYPE_CHECKING

from borewright.errors import RefusedInput, UnreadableFile

if TYPE_CHECKING:
    from borewright.answer.plan import Plan


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


def sheet_bytes(
    plan: Plan, *, picture: str | None = None, paper: str | None = None, date: str | None = None
) -> bytes:
    """The plan's bench sheet as PDF; `picture` is its drawing where that is at hand already.

    Without a picture where the plan has nothing to draw.
    """
    from borewright.report.bench_sheet import bench_sheet
    from borewright.service.charts_drawn import charts_in_rows

    drawn = picture or (drawing_text(plan) if is_drawn(plan) else "")
    return bench_sheet(plan, drawn, charts=charts_in_rows(plan), paper=paper, date=date)


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


def write_into(
    folder: str | None,
    inside: Mapping[str, bytes],
    beside: Mapping[str, bytes],
    read: tuple[str | None, ...] = (),
) -> None:
    """Write the files `inside` a folder, made if it is not there, and those `beside`: all or none.

    `read` are the files the answer was made from. Raises what `write_all` raises, and UnreadableFile
    where something else stands under the folder's name or it cannot be made.
    """
    made = None if folder is None or not inside else _made(folder)
    try:
        within = {str(Path(folder or "") / name): text for name, text in inside.items()}
        for name in within.keys() & beside.keys():
            raise RefusedInput(name, "the same file twice", "a different name for each file")
        write_all({**beside, **within}, read)
    except BaseException:
        if made is not None:
            made.rmdir()
        raise


def _made(folder: str) -> Path | None:
    """The folder where it had to be made, None where it was there."""
    if not folder.strip():
        raise UnreadableFile("folder for the charts", "an empty name", "the name of a folder")
    place = Path(folder)
    try:
        if place.is_dir():
            return None
        if place.exists():
            found = "a file" if place.is_file() else "something that is no folder"
            raise UnreadableFile(folder, found, "a folder to write the charts into, or a new name")
        place.mkdir()
    except (OSError, ValueError) as trouble:
        if isinstance(trouble, UnreadableFile):
            raise
        why = getattr(trouble, "strerror", None) or "a name that cannot be used"
        raise UnreadableFile(folder[:60], why, "a folder that is there or can be made") from None
    return place


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
