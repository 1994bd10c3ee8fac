"""One page set by Typst from a template and words: same words, same bytes.

Its font is Source Sans Pro from the package font-source-sans-pro; system fonts are ignored and no
clock is read. The template marks its number of pages as `<pages>`.
"""

from __future__ import annotations

import json
from bisect import bisect_left
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from functools import lru_cache
from pathlib import Path
from shutil import copy
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING, Any

from borewright.report.bench_sheet import FACES

if TYPE_CHECKING:
    from typst import Compiler

Words = dict[str, Any]


def first_on_one_page(template: Path, attempts: Sequence[Words]) -> bytes | None:
    """The first of these words, ordered from most room to least, that fills one page only.

    None where none does. What fits once is taken to fit from there on.
    """
    pages: dict[int, bytes] = {}
    with compiler(template) as typst:

        def fits(k: int) -> bool:
            page = typst.compile(format="pdf", sys_inputs={"data": as_json(attempts[k])})
            assert isinstance(page, bytes)
            pages[k] = page
            return bool(typst.query("<pages>", field="value", one=True) == "1")

        first = bisect_left(range(len(attempts)), True, key=fits)
    return pages[first] if first < len(attempts) else None


def as_json(words: Words) -> str:
    """The words as JSON, with ? for a letter that the font has not: a gap would go unseen."""
    written = json.dumps(words, ensure_ascii=False, sort_keys=True)
    letters = _letters()
    strange = {ord(c): "?" for c in set(written) if ord(c) not in letters}
    return written.translate(strange)


@lru_cache(maxsize=1)
def _letters() -> frozenset[int]:
    # Only a page needs to know the font.
    from font_source_sans_pro import font_files_ttf
    from fontTools.ttLib import TTFont

    with TTFont(font_files_ttf[FACES[0]], lazy=True) as font:
        return frozenset(font.getBestCmap())


@contextmanager
def compiler(template: Path) -> Iterator[Compiler]:
    """Typst for a template, with just the faces used, copied: a folder's order must not matter."""
    # Typst is large and only a page needs it.
    from font_source_sans_pro import font_files_ttf
    from typst import Compiler

    with TemporaryDirectory() as folder:
        for face in FACES:
            copy(font_files_ttf[face], folder)
        yield Compiler(str(template), font_paths=[folder])
