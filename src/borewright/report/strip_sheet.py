"""A drawing that fills its page: the paper strip as PDF at exactly full size, a picture as PNG.

Same drawing, same bytes.
"""

from __future__ import annotations

import json
from pathlib import Path
from shutil import copy
from tempfile import TemporaryDirectory
from typing import Literal

from borewright.report.bench_sheet import FACES

TEMPLATE = Path(__file__).with_name("strip_sheet.typ")

PIXELS_PER_INCH = 254.0
"""Of an image: ten pixels for each mm of paper."""


def strip_sheet(picture: str, title: str, width_mm: float, height_mm: float) -> bytes:
    """One PDF page, `width_mm` by `height_mm`, filled by an SVG picture of that very size."""
    return _filled(picture, title, (width_mm, height_mm), "pdf")


def picture_png(picture: str, title: str, width_mm: float, height_mm: float) -> bytes:
    """The same as one PNG image."""
    return _filled(picture, title, (width_mm, height_mm), "png")


def _filled(
    picture: str, title: str, size: tuple[float, float], form: Literal["pdf", "png"]
) -> bytes:
    # Typst and the font are large and only a page or an image needs them.
    from font_source_sans_pro import font_files_ttf
    from typst import Compiler

    data = {"title": title, "picture": picture, "width_mm": size[0], "height_mm": size[1]}
    with TemporaryDirectory() as folder:
        for face in FACES:
            copy(font_files_ttf[face], folder)
        compiler = Compiler(str(TEMPLATE), font_paths=[folder], ignore_system_fonts=True)
        inputs = {"data": json.dumps(data, sort_keys=True)}
        page = compiler.compile(format=form, ppi=PIXELS_PER_INCH, sys_inputs=inputs)
    assert isinstance(page, bytes)
    return page
