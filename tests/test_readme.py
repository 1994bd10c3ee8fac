"""The README's commands run and print what it shows; `...` stands for lines left out."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def sessions() -> list[tuple[str, list[str]]]:
    """Each command of a console block with the lines shown under it."""
    found: list[tuple[str, list[str]]] = []
    for block in re.findall(r"```console\n(.*?)```", README, re.S):
        for line in block.splitlines():
            if line.startswith("$ "):
                found.append((line[2:], []))
            else:
                found[-1][1].append(line)
    return found


def run(command: str, folder: Path) -> str:
    path = f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}"
    done = subprocess.run(
        ["bash", "-c", command],
        cwd=folder,
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, "PATH": path, "PYTHONIOENCODING": "utf-8"},
    )
    assert done.returncode in (0, 3), done.stderr
    return done.stdout


def pattern(shown: list[str]) -> str:
    """The shown lines as a regular expression: `...` is anything."""
    text = "\n".join(shown)
    return "".join(
        ".*" if part == "..." else re.escape(part) for part in re.split(r"(\.\.\.)", text)
    )


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    shutil.copytree(ROOT / "examples", tmp_path / "examples")
    return tmp_path


@pytest.mark.parametrize(("command", "shown"), sessions(), ids=[c[:40] for c, _ in sessions()])
def test_a_readme_command_prints_what_the_readme_shows(
    command: str, shown: list[str], copy: Path
) -> None:
    assert re.fullmatch(pattern(shown), run(command, copy).rstrip("\n"), re.S)


def test_the_readme_s_python_runs(copy: Path) -> None:
    code = re.findall(r"```python\n(.*?)```", README, re.S)
    done = subprocess.run(
        [sys.executable, "-c", code[0]], cwd=copy, capture_output=True, text=True, check=True
    )
    assert done.stdout.startswith(("yes", "with care", "no"))


def test_make_demo_prints_the_verdict_and_writes_the_sheet() -> None:
    """The recipe as the README gives it; the environment it builds first is the one we run in."""
    sheet = ROOT / "out" / "hollow-brook-drive-wheel.pdf"
    sheet.unlink(missing_ok=True)
    done = subprocess.run(["make", "demo"], cwd=ROOT, capture_output=True, text=True, check=True)
    assert "\nYes: press it on" in done.stdout
    assert sheet.read_bytes().startswith(b"%PDF")


def test_continuous_integration_calls_make_test() -> None:
    assert "\nmake test\n" in (ROOT / ".ci" / "run").read_text(encoding="utf-8")
    assert "\ntest: " in (ROOT / "Makefile").read_text(encoding="utf-8")


def test_the_readme_s_picture_is_the_one_the_command_draws(copy: Path) -> None:
    command = next(c for c, _ in sessions() if "--drawing" in c)
    run(command, copy)
    drawn = (copy / "wheel.svg").read_text(encoding="utf-8")
    assert drawn == (ROOT / "docs" / "hollow-brook-drive-wheel.svg").read_text(encoding="utf-8")
