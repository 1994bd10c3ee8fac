"""A plan's bench sheet and drawing, written whole or not at all."""

from __future__ import annotations

import os
from pathlib import Path
from tempfile import NamedTemporaryFile
from typing import TYPE_CHECKING

from borewright.errors import RefusedInput, UnreadableFile

if TYPE_CHECKING:
    from borewright.answer.records import Plan


def drawing_text(plan: Plan) -> str:
    """The plan's drawing as SVG text. RefusedInput where the plan has nothing to draw."""
    from borewright.drawing.sheet_layout import draw_plan
    from borewright.drawing.svg import svg

    if plan.layout is None:
        raise RefusedInput(
            "drawing", "a plan with no mandrel in it", "a plan that holds the work on something"
        )
    return svg(draw_plan(plan))


def sheet_bytes(
    plan: Plan, *, picture: str | None = None, paper: str | None = None, date: str | None = None
) -> bytes:
    """The plan's bench sheet as PDF; `picture` is its drawing where that is at hand already.

    Without a picture where the plan has nothing to draw.
    """
    from borewright.report.bench_sheet import bench_sheet

    drawn = picture or (drawing_text(plan) if plan.layout is not None else "")
    return bench_sheet(plan, drawn, paper=paper, date=date)


def write_whole(path: str | Path, content: bytes) -> None:
    """Write a file under a temporary name beside it, then rename. UnreadableFile where it cannot."""
    target = Path(path)
    try:
        with NamedTemporaryFile(dir=target.parent, prefix=".", delete=False) as out:
            out.write(content)
        os.chmod(out.name, 0o644)
        os.replace(out.name, target)
    except OSError as trouble:
        _forget(out.name) if "out" in locals() else None
        raise UnreadableFile(
            str(path), trouble.strerror or "no way to write it", "a place to write"
        ) from None


def _forget(name: str) -> None:
    Path(name).unlink(missing_ok=True)
