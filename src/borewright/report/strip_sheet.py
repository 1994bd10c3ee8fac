"""The paper strip as a PDF page at exactly full size: same strip, same bytes."""

from __future__ import annotations

import json
from pathlib import Path
from shutil import copy
from tempfile import TemporaryDirectory

from borewright.report.bench_sheet import FACES

TEMPLATE = Path(__file__).with_name("strip_sheet.typ")


def strip_sheet(picture: str, title: str, width_mm: float, height_mm: float) -> bytes:
    """One page, `width_mm` by `height_mm`, filled by an SVG picture of that very size."""
    # Typst and the font are large and only a printed page needs them.
    from font_source_sans_pro import font_files_ttf
    from typst import Compiler

    data = {"title": title, "picture": picture, "width_mm": width_mm, "height_mm": height_mm}
    with TemporaryDirectory() as folder:
        for face in FACES:
            copy(font_files_ttf[face], folder)
        compiler = Compiler(str(TEMPLATE), font_paths=[folder], ignore_system_fonts=True)
        inputs = {"data": json.dumps(data, sort_keys=True)}
        page = compiler.compile(format="pdf", sys_inputs=inputs)
    assert isinstance(page, bytes)
    return page
