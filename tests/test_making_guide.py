"""The guide to making runs as it is printed, and names every thing that `make` makes."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest
from tests.test_readme import pattern, run

from borewright.cli.commands.make import THINGS

ROOT = Path(__file__).resolve().parents[1]
GUIDE = (ROOT / "docs" / "making.md").read_text(encoding="utf-8")


def blocks() -> list[tuple[str, tuple[tuple[str, str], ...]]]:
    """Each console block with its commands and with the lines shown under them."""
    found = []
    for block in re.findall(r"```console\n(.*?)```", GUIDE, re.S):
        commands: list[list[str]] = []
        for line in block.splitlines():
            if line.startswith("$ "):
                commands.append([line[2:], ""])
            else:
                commands[-1][1] += f"{line}\n"
        found.append((commands[0][0][:50], tuple((c, shown) for c, shown in commands)))
    return found


@pytest.mark.parametrize("commands", [c for _, c in blocks()], ids=[n for n, _ in blocks()])
def test_a_block_of_the_guide_prints_what_it_shows(
    commands: tuple[tuple[str, str], ...], tmp_path: Path
) -> None:
    shutil.copytree(ROOT / "examples", tmp_path / "examples")
    for command, shown in commands:
        printed = run(command, tmp_path).rstrip("\n")
        assert re.fullmatch(pattern(shown.splitlines()), printed, re.S), printed


def test_the_guide_has_a_command_for_every_thing() -> None:
    for thing in THINGS:
        assert f"borewright make {thing}" in GUIDE, thing
