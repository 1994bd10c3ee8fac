"""The printed papers of what is to be made: page sizes, marks at full size, words, blanks."""

from __future__ import annotations

import io
import subprocess
from pathlib import Path

import numpy as np
import pytest
from pypdf import PdfReader
from tests.cli_run import ran
from tests.tools import system_tool

POINT = 25.4 / 72
PER_MM = 20
"""Pixels in a mm of the rendered page."""
PIXEL = 1.5 / PER_MM
"""mm: where a thin line begins is known to a pixel and a half."""


def papers(folder: Path, *more: str) -> Path:
    out = folder / "m.pdf"
    done = ran("make", "mandrel", "--bore", "16 H7", "--length", "30mm", "--out", str(out), *more)
    assert done.code == 0, done.err
    return out


def rendered(pdf: Path) -> np.ndarray:
    """The first page in gray, (rows, columns), 0 for black."""
    made = subprocess.run(
        [
            system_tool("pdftoppm"),
            "-gray",
            "-r",
            f"{25.4 * PER_MM}",
            "-f",
            "1",
            "-l",
            "1",
            str(pdf),
        ],
        capture_output=True,
        check=True,
    ).stdout
    _, size, _, pixels = made.split(b"\n", 3)
    width, height = (int(v) for v in size.split())
    return np.frombuffer(pixels, dtype=np.uint8).reshape(height, width)


@pytest.mark.parametrize(("paper", "size"), [("a4", (297.0, 210.0)), ("letter", (279.4, 215.9))])
def test_the_drawing_fills_a_level_page_of_its_paper(
    tmp_path: Path, paper: str, size: tuple[float, float]
) -> None:
    page = PdfReader(papers(tmp_path, "--paper", paper)).pages[0]
    found = float(page.mediabox.width) * POINT, float(page.mediabox.height) * POINT
    assert found == pytest.approx(size, abs=0.01)


def test_the_mark_of_50_mm_is_50_mm_on_paper(tmp_path: Path) -> None:
    """Measured on the rendered page: its two end ticks, the outermost dark columns of its strip."""
    page = rendered(papers(tmp_path))
    height = page.shape[0] / PER_MM
    # The mark's line is 11 mm over the page's foot and starts 13 mm from its left edge.
    row = round((height - 8.0 - 3.0 + 1.2) * PER_MM)
    dark = np.flatnonzero(page[row, : 80 * PER_MM] < 128) / PER_MM
    ticks = dark[dark > 10.0]
    assert ticks[0] == pytest.approx(13.0, abs=0.25)
    second = ticks[(ticks > 40.0) & (ticks < 70.0)]
    assert second.mean() - ticks[ticks < 20.0].mean() == pytest.approx(50.0, abs=PIXEL)


def test_the_diameter_is_drawn_to_its_scale(tmp_path: Path) -> None:
    """A 16 mm mandrel at the scale that its block states, measured between its outlines."""
    pdf = papers(tmp_path)
    text = PdfReader(pdf).pages[0].extract_text()
    scale = 2.0 if "2:1" in text else 1.0
    page = rendered(pdf)
    dark = (page[12 * PER_MM : 150 * PER_MM] < 128).sum(axis=1)
    long = np.flatnonzero(dark > 60 * PER_MM)
    lines = np.split(long, np.flatnonzero(np.diff(long) > 1) + 1)
    # Outlines are half a millimetre thick, dimension lines half of that.
    thick = [line.mean() / PER_MM for line in lines if len(line) >= 0.4 * PER_MM]
    assert len(thick) == 2
    assert thick[1] - thick[0] == pytest.approx(16.0 * scale, abs=0.1 * scale)


def test_every_sheet_has_its_title_and_the_date_asked_for(tmp_path: Path) -> None:
    reader = PdfReader(papers(tmp_path, "--date", "29 Nov 2026"))
    texts = [page.extract_text() for page in reader.pages]
    assert any(t.startswith("Route") for t in texts)
    assert any(t.startswith("Acceptance") for t in texts)
    assert all("29 Nov 2026" in t for t in texts if t.startswith(("Route", "Acceptance")))


def test_words_that_no_font_has_do_not_break_a_page(tmp_path: Path) -> None:
    job = tmp_path / "job.toml"
    job.write_text(
        'title = "\\u78e8 #panic($x$) *b*"\nunits = "mm"\n'
        'work = {material = "steel-1018", bore = "16 H7", outside = 60, length = 30}\n',
        encoding="utf-8",
    )
    out = tmp_path / "m.pdf"
    done = ran("make", "mandrel", str(job), "--out", str(out))
    assert done.code == 0, done.err
    texts = [page.extract_text() for page in PdfReader(io.BytesIO(out.read_bytes())).pages]
    assert any("#panic($x$) *b*" in t for t in texts)
