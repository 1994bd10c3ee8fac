"""What the house takes in and lets out: system packages, pinned versions, words that must not stand."""

from __future__ import annotations

import ast
import re
import tomllib

import pytest
from tests.house_files import ROOT, text_files
from tests.tools import PACKAGES

# Packages


def tools_called() -> set[str]:
    """Names that tests and benchmarks give to `system_tool`."""
    found: set[str] = set()
    for folder in ("tests", "bench"):
        for path in (ROOT / folder).rglob("*.py"):
            for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
                if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "system_tool":
                    (name,) = node.args
                    assert isinstance(name, ast.Constant), f"{path.name}: name the tool in place"
                    found.add(str(name.value))
    return found


def listed_packages() -> list[str]:
    lines = (ROOT / "system-packages.txt").read_text(encoding="utf-8").splitlines()
    return [line for line in lines if line and not line.startswith("#")]


def test_the_system_packages_are_what_the_set_up_and_the_tests_call() -> None:
    set_up = {"python3-venv"}
    makefile = (ROOT / "Makefile").read_text(encoding="utf-8")
    assert all(package in makefile for package in set_up)
    assert tools_called() == set(PACKAGES)
    assert sorted(listed_packages()) == sorted(set_up | set(PACKAGES.values()))


def test_the_constraints_are_plain_names_and_versions() -> None:
    text = (ROOT / "constraints.txt").read_text(encoding="utf-8")
    pins = [line for line in text.splitlines() if line and not line.startswith("#")]
    assert pins
    assert [p for p in pins if not re.fullmatch(r"[A-Za-z0-9._-]+==[A-Za-z0-9.!+]+", p)] == []
    names = [re.sub(r"[-_.]+", "-", pin.split("==")[0]).lower() for pin in pins]
    assert len(set(names)) == len(names)


def test_everything_the_project_needs_is_pinned() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    needed = [
        *project["dependencies"],
        *(p for extra in project["optional-dependencies"].values() for p in extra),
    ]
    plain = {re.sub(r"[-_.]+", "-", re.split(r"[<>=\[;~! ]", n)[0]).lower() for n in needed}
    pins = (ROOT / "constraints.txt").read_text(encoding="utf-8")
    pinned = {re.sub(r"[-_.]+", "-", line.split("==")[0]).lower() for line in pins.splitlines()}
    assert plain - pinned == set()


# Words

MUST_NOT_STAND = {
    "a place on one machine": r"/(work|farm|root|opt|tmp)/|/bash_job[s]|file[:]//",
    "a package registry": r"py[p]i[.]o|pythonh[o]sted|np[m]js[.]|de[b][.]debian",
    "an index option": r"(extra-)?inde[x]-url|fin[d]-links",
    "a word of nobody's business": r"see[d] document|transcrip[t]",
}


@pytest.mark.parametrize("pattern", MUST_NOT_STAND.values(), ids=MUST_NOT_STAND)
def test_no_file_holds(pattern: str) -> None:
    found = [
        f"{path.relative_to(ROOT)}:{number}: {line[:80]}"
        for path in text_files()
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1)
        if re.search(pattern, line, re.IGNORECASE)
    ]
    assert found == []


def test_the_patterns_find_what_they_are_for() -> None:
    samples = ["/" + "root/x", "py" + "pi.org", "--find" + "-links", "the Seed" + " document"]
    for sample, pattern in zip(samples, MUST_NOT_STAND.values(), strict=True):
        assert re.search(pattern, sample, re.IGNORECASE), sample
