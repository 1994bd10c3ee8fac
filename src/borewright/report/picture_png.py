"""A drawing as a PNG: same drawing, same bytes."""

from __future__ import annotations

import json
from shutil import copy
from tempfile import TemporaryDirectory

from borewright.report.bench_sheet import FACES
from borewright.report.strip_sheet import TEMPLATE

PIXELS_PER_INCH = 254.0
"""Ten pixels for each mm of paper."""


def picture_png(picture: str, title: str, width_mm: float, height_mm: float) -> bytes:
    """One image filled by an SVG picture of that very size."""
    # Typst and the font are large and only an image needs them.
    from font_source_sans_pro import font_files_ttf
    from typst import Compiler

    data = {"title": title, "picture": picture, "width_mm": width_mm, "height_mm": height_mm}
    with TemporaryDirectory() as folder:
        for face in FACES:
            copy(font_files_ttf[face], folder)
        compiler = Compiler(str(TEMPLATE), font_paths=[folder], ignore_system_fonts=True)
        inputs = {"data": json.dumps(data, sort_keys=True)}
        image = compiler.compile(format="png", ppi=PIXELS_PER_INCH, sys_inputs=inputs)
    assert isinstance(image, bytes)
    return image
