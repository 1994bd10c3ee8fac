"""Files are written whole, apart and only where they may be; streams may be closed or full."""

from __future__ import annotations

import os
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from borewright.errors import RefusedInput, UnreadableFile
from borewright.service.files import write_all, write_new

ROOT = Path(__file__).resolve().parents[2]
JOB = str(ROOT / "tests" / "golden" / "jobs" / "everyday-wheel.toml")
SIX = "0.6251in plug gauge\n2 1/2in\n1in\n6061\nbar\n5/8in\n"


def shell(command: str, folder: Path, **env: str) -> subprocess.CompletedProcess[str]:
    """A shell command with `borewright` as `$B`, its streams as text."""
    whole = {**os.environ, "B": f"{sys.executable} -m borewright", **env}
    return subprocess.run(
        ["bash", "-c", command],
        cwd=folder,
        env=whole,
        capture_output=True,
        text=True,
        check=False,
        errors="replace",
    )


def test_several_files_are_written_all_or_none(tmp_path: Path) -> None:
    (tmp_path / "old").write_bytes(b"kept")
    with pytest.raises(UnreadableFile, match="a place to write"):
        write_all({str(tmp_path / "old"): b"new", str(tmp_path / "nodir" / "x"): b"new"})
    assert (tmp_path / "old").read_bytes() == b"kept"
    assert [p.name for p in tmp_path.iterdir()] == ["old"]


def test_one_file_under_two_names_is_refused(tmp_path: Path) -> None:
    (tmp_path / "link").symlink_to(tmp_path / "real")
    with pytest.raises(RefusedInput, match="the same file twice"):
        write_all({str(tmp_path / "real"): b"a", str(tmp_path / "link"): b"b"})


def test_what_was_read_is_not_written_over(tmp_path: Path) -> None:
    with pytest.raises(RefusedInput, match="the same file twice"):
        write_all({str(tmp_path / "job.toml"): b""}, (str(tmp_path / "job.toml"),))


@pytest.mark.parametrize("name", ["", "  ", "a\0b", "x" * 5000])
def test_a_name_that_cannot_be_used_is_refused(name: str) -> None:
    with pytest.raises(UnreadableFile):
        write_all({name: b"x"})


def test_a_thing_that_is_no_plain_file_is_left_alone(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    with pytest.raises(UnreadableFile, match="not a plain file"):
        write_all({str(tmp_path / "pipe"): b"x"})
    assert (tmp_path / "pipe").is_fifo()


def test_a_link_is_followed_and_stays(tmp_path: Path) -> None:
    (tmp_path / "link").symlink_to(tmp_path / "real")
    write_all({str(tmp_path / "link"): b"x"})
    assert (tmp_path / "link").is_symlink()
    assert (tmp_path / "real").read_bytes() == b"x"


def test_new_files_get_the_mode_that_the_shell_gives(tmp_path: Path) -> None:
    before = os.umask(0o077)
    try:
        write_all({str(tmp_path / "f"): b"x"})
    finally:
        os.umask(before)
    assert (tmp_path / "f").stat().st_mode & 0o777 == 0o600


def test_many_at_once_get_names_of_their_own(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)

    def one(number: int) -> list[str]:
        return write_new("part", {".toml": str(number).encode(), ".pdf": str(number).encode()})

    with ThreadPoolExecutor(8) as pool:
        names = list(pool.map(one, range(24)))
    assert len({n for pair in names for n in pair}) == 48
    assert all(Path(t).read_bytes() == Path(p).read_bytes() for t, p in names)


@pytest.mark.parametrize(
    ("command", "code"),
    [
        (f"set -o pipefail; $B plan {JOB} | true", 0),
        ("set -o pipefail; $B --version | true", 0),
        (f"$B plan {JOB} >/dev/full", 2),
        ("$B --version >/dev/full", 2),
        (f"$B plan {JOB} >&-", 0),
        ("$B --version >&-", 0),
        ("$B plan nosuch.toml 2>&-", 2),
        ("$B plan nosuch.toml 2>/dev/full", 2),
        ("$B ask </dev/null", 2),
        ("$B ask <&-", 2),
        (r"printf '\xff\n\n\n\n\n\n' | $B ask", 2),
        ("python3 -c 'print(\"w \" * 100000)' | $B ask", 2),
    ],
)
def test_streams_that_are_closed_full_or_strange_end_in_a_code_and_no_traceback(
    command: str, code: int, tmp_path: Path
) -> None:
    done = shell(command, tmp_path)
    assert "Traceback" not in done.stderr
    assert len(done.stderr.splitlines()) <= 1
    assert done.returncode == code
    assert not list(tmp_path.iterdir())


def test_an_answer_that_ends_early_writes_nothing(tmp_path: Path) -> None:
    done = shell("printf '0.5in\\n' | $B ask", tmp_path)
    assert done.returncode == 2
    assert "found the end of the input after 1 answer" in done.stderr
    assert not list(tmp_path.iterdir())


def test_sheet_and_drawing_must_be_two_files_and_not_the_job(tmp_path: Path) -> None:
    job = tmp_path / "job.toml"
    job.write_text(Path(JOB).read_text(encoding="utf-8"), encoding="utf-8")
    for command in (
        "--sheet s --drawing s",
        "--sheet job.toml",
        "--sheet ''",
        "--sheet s --drawing no/d",
    ):
        done = shell(f"$B plan job.toml {command}", tmp_path)
        assert (done.returncode, done.stdout) == (2, "")
    assert [p.name for p in tmp_path.iterdir()] == ["job.toml"]
    assert job.read_text(encoding="utf-8") == Path(JOB).read_text(encoding="utf-8")


def test_the_c_locale_is_answered_in_ascii(tmp_path: Path) -> None:
    done = shell(f"$B plan {JOB}", tmp_path, LC_ALL="C")
    assert done.stdout.isascii()
    assert "um)" in done.stdout


def test_a_long_date_is_refused_as_that(tmp_path: Path) -> None:
    done = shell(f"$B plan {JOB} --sheet s.pdf --date '{'x' * 300}'", tmp_path)
    assert done.returncode == 2
    assert done.stderr.startswith("borewright: --date: found 300 characters")
