"""The wheel on its own: built, installed into an empty environment, run elsewhere with no network."""

from __future__ import annotations

import json
import os
import shutil
import site
import subprocess
import sys
import venv
from pathlib import Path

import pytest
from tests.tools import system_tool

ROOT = Path(__file__).parents[1]
NOWHERE = "http://127.0.0.1:9"
"""The discard port: a proxy that nobody answers."""


def call(*words: str | Path, **how: object) -> str:
    done = subprocess.run(words, capture_output=True, text=True, check=False, **how)  # type: ignore[call-overload]
    assert done.returncode == 0, f"{words}\n{done.stdout}\n{done.stderr}"
    return str(done.stdout)


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Built from the checkout, with the build back end of this environment."""
    folder = tmp_path_factory.mktemp("wheel")
    call(
        sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", folder, ROOT
    )  # fmt: skip
    (built,) = folder.glob("*.whl")
    return built


@pytest.fixture(scope="module")
def bin_folder(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An environment with the wheel, and this environment's libraries but not its borewright.

    A folder named in a .pth file is searched, but its own .pth files are not read: so the editable
    checkout stays out.
    """
    home = tmp_path_factory.mktemp("environment")
    venv.create(home, with_pip=False)
    python = home / "bin" / "python"
    call(
        sys.executable, "-m", "pip", "--disable-pip-version-check", "--python", python,
        "install", "--quiet", "--no-index", "--no-deps", wheel,
    )  # fmt: skip
    (packages,) = home.glob("lib/python3*/site-packages")
    (packages / "libraries.pth").write_text("\n".join(site.getsitepackages()), encoding="utf-8")
    return home / "bin"


@pytest.fixture
def elsewhere(tmp_path: Path) -> dict[str, object]:
    """Another folder, a home that nobody can write in (a file), the C locale, no way out."""
    home, here = tmp_path / "home", tmp_path / "here"
    home.touch()
    here.mkdir()
    environment = {
        "PATH": os.environ["PATH"],
        "HOME": str(home),
        "LC_ALL": "C",
        "PYTHONCOERCECLOCALE": "0",
        "PYTHONUTF8": "0",
        **dict.fromkeys(("http_proxy", "https_proxy", "HTTP_PROXY", "HTTPS_PROXY"), NOWHERE),
    }
    return {"cwd": here, "env": environment}


def offline() -> list[str]:
    """The words that cut a program off the network where that is permitted.

    Where it is not, the dead proxies of `elsewhere` are all there is: a program that opens a socket
    of its own would then get through unseen.
    """
    unshare = shutil.which("unshare")
    for words in ([unshare, "--net"], [unshare, "--net", "--map-root-user"]) if unshare else ():
        if subprocess.run([*words, "true"], capture_output=True, check=False).returncode == 0:
            return [str(w) for w in words]
    return []


def test_the_environment_holds_the_wheel_and_not_the_checkout(
    bin_folder: Path, elsewhere: dict[str, object]
) -> None:
    where = call(
        bin_folder / "python", "-c", "import borewright; print(borewright.__file__)", **elsewhere
    )
    assert Path(where.strip()).is_relative_to(bin_folder.parent)
    path = call(bin_folder / "python", "-c", "import sys; print(*sys.path, sep='\\n')", **elsewhere)
    assert str(ROOT / "src") not in path.splitlines()


def test_the_wheel_plans_the_demo_job_offline(
    bin_folder: Path, elsewhere: dict[str, object], tmp_path: Path
) -> None:
    here = tmp_path / "here"
    for name in ("hollow-brook-drive-wheel.toml", "hollow-brook-shelf.toml"):
        shutil.copy(ROOT / "examples" / name, here)
    said = call(
        *offline(), bin_folder / "borewright", "plan", "hollow-brook-drive-wheel.toml",
        "--shelf", "hollow-brook-shelf.toml", "--sheet", "sheet.pdf", "--drawing", "drawing.svg",
        **elsewhere,
    )  # fmt: skip
    assert said.isascii()
    assert "Cider mill drive wheel" in said
    assert (here / "drawing.svg").read_text(encoding="utf-8").startswith(("<svg", "<?xml"))
    sheet = call(system_tool("pdftotext"), here / "sheet.pdf", "-")
    assert "Cider mill drive wheel" in sheet
    assert not (tmp_path / "home").read_bytes()
    assert {p.suffix for p in here.iterdir()} == {".toml", ".pdf", ".svg"}


def test_the_wheel_answers_the_small_commands_offline(
    bin_folder: Path, elsewhere: dict[str, object]
) -> None:
    borewright = [*offline(), bin_folder / "borewright"]
    assert call(*borewright, "--version", **elsewhere).startswith("borewright ")
    assert "friction" in call(*borewright, "reference", **elsewhere)
    fit = call(
        *borewright, "fit", "--json", "--bore", "0.5005in", "--outside", "2in", "--length", "1in",
        "--material", "brass", "--mandrel", "1/2in", "--travel", "1in", **elsewhere,
    )  # fmt: skip
    assert json.loads(fit)["normal_force_N"] > 0


def test_the_wheel_carries_every_file_of_the_package(wheel: Path) -> None:
    from zipfile import ZipFile

    carried = {n for n in ZipFile(wheel).namelist() if n.startswith("borewright/")}
    source = ROOT / "src"
    there = {
        str(path.relative_to(source))
        for path in (source / "borewright").rglob("*")
        if path.is_file() and "__pycache__" not in path.parts
    }
    assert carried == there
