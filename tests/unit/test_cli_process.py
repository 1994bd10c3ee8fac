"""What only a whole process shows: closed pipes, ASCII locales, equal bytes, what is imported."""

from __future__ import annotations

import os
import subprocess
import sys
from hashlib import sha256
from pathlib import Path

import pytest
from tests.cli_run import FIT, words

ROOT = Path(__file__).parents[2]
JOB = str(ROOT / "examples" / "hollow-brook-drive-wheel.toml")
SHELF = str(ROOT / "examples" / "hollow-brook-shelf.toml")
PLAN = ["plan", JOB, "--shelf", SHELF]
HEAVY = {"numpy", "pydantic", "typst", "fontTools"}
LISTS_MODULES = (
    "import sys; sys.argv[0] = 'borewright'; from borewright.__main__ import main; code = main();"
    "print('\\n' + ' '.join({name.split('.')[0] for name in sys.modules})); sys.exit(code)"
)


def process(*arguments: str, **environment: str) -> subprocess.CompletedProcess[bytes]:
    """`borewright ARGUMENTS` in its own process."""
    return subprocess.run(
        [sys.executable, "-m", "borewright", *arguments],
        env={**os.environ, **environment},
        capture_output=True,
        check=False,
    )


def imported_by(*arguments: str, code: int) -> set[str]:
    """Top-level modules in memory once `borewright ARGUMENTS` is done."""
    done = subprocess.run(
        [sys.executable, "-c", LISTS_MODULES, *arguments],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == code, done.stderr
    return set(done.stdout.splitlines()[-1].split())


@pytest.mark.parametrize(
    "asked",
    [["reference", "materials"], PLAN, [*PLAN, "--json"], ["fit", *words(FIT)], ["--help"]],
    ids=["reference", "plan", "plan as JSON", "fit", "help"],
)
def test_a_closed_pipe_leaves_no_traceback(asked: list[str]) -> None:
    """The reading end is closed before a word is written, which `| head -1` does by luck."""
    reading, writing = os.pipe()
    os.close(reading)
    with os.fdopen(writing, "wb") as pipe:
        done = subprocess.run(
            [sys.executable, "-m", "borewright", *asked],
            stdout=pipe,
            stderr=subprocess.PIPE,
            check=False,
        )
    assert done.stderr == b""
    assert done.returncode == 0


@pytest.mark.parametrize(
    "environment",
    [{"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}, {"PYTHONIOENCODING": "ascii"}],
    ids=["the C locale", "an ASCII terminal"],
)
def test_it_speaks_ascii_where_it_must(environment: dict[str, str]) -> None:
    done = process(*PLAN, **environment)
    assert (done.returncode, done.stderr) == (0, b"")
    assert done.stdout.isascii()
    assert len(done.stdout.splitlines()) > 20


def test_a_refusal_is_ascii_where_it_must_be() -> None:
    done = process("fit", "--bore", "18µµ", PYTHONIOENCODING="ascii")
    assert (done.returncode, done.stdout) == (2, b"")
    assert done.stderr.isascii()
    assert len(done.stderr.splitlines()) == 1


def _bytes_of_a_plan(folder: Path, seed: str) -> dict[str, str]:
    sheet, drawing = folder / f"{seed}.pdf", folder / f"{seed}.svg"
    asked = [*PLAN, "--json", "--sheet", str(sheet), "--drawing", str(drawing)]
    done = process(*asked, PYTHONHASHSEED=seed)
    assert done.returncode == 0, done.stderr
    made = {"json": done.stdout, "pdf": sheet.read_bytes(), "svg": drawing.read_bytes()}
    return {kind: sha256(content).hexdigest() for kind, content in made.items()}


def test_the_same_job_gives_the_same_bytes_in_another_process(tmp_path: Path) -> None:
    assert _bytes_of_a_plan(tmp_path, "1") == _bytes_of_a_plan(tmp_path, "2")


def test_the_same_fit_gives_the_same_bytes_in_another_process() -> None:
    first, second = (process("fit", *words(FIT), "--json", PYTHONHASHSEED=s) for s in "12")
    assert first.stdout
    assert first.stdout == second.stdout


@pytest.mark.parametrize(
    ("asked", "code"),
    [
        (["--version"], 0),
        (["fit"], 2),
        (["fit", "--bore", "18"], 2),
        (["cut"], 2),
        (["cut", "--diameter", "2"], 2),
        (["plan"], 2),
        (["fitt"], 2),
        (["--help"], 0),
    ],
    ids=lambda part: " ".join(part) if isinstance(part, list) else None,
)
def test_a_bare_refusal_loads_nothing_heavy(asked: list[str], code: int) -> None:
    assert not HEAVY & imported_by(*asked, code=code)


def test_a_fit_needs_numpy_and_no_pydantic() -> None:
    loaded = imported_by("fit", *words(FIT), code=0)
    assert "numpy" in loaded
    assert not {"pydantic", "typst", "fontTools", "rich"} & loaded


def test_a_cut_needs_no_pydantic() -> None:
    from tests.cli_run import CUT

    assert not {"pydantic", "typst", "fontTools", "rich"} & imported_by("cut", *words(CUT), code=0)


def test_the_module_and_the_script_say_the_same() -> None:
    script = Path(sys.executable).with_name("borewright")
    said = subprocess.run([script, "--version"], capture_output=True, check=True).stdout
    assert said == process("--version").stdout
    assert said.startswith(b"borewright ")
