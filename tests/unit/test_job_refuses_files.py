"""Files that are not job files at all: one sentence, and never a traceback."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.unit.job_refused import refusal
from tests.unit.job_texts import SMALL

from borewright.errors import RefusedInput, UnknownName, UnreadableFile
from borewright.job import parse_job, read_job, read_shelf
from borewright.job.toml_text import LARGEST

BOTH_READERS = pytest.mark.parametrize("read", [read_job, read_shelf], ids=["job", "shelf"])


@BOTH_READERS
def test_a_missing_file_is_refused(read: Callable[[Path], object], tmp_path: Path) -> None:
    with pytest.raises(UnreadableFile, match="found no such file; allowed is a"):
        read(tmp_path / "none.toml")


@BOTH_READERS
def test_a_directory_is_refused(read: Callable[[Path], object], tmp_path: Path) -> None:
    with pytest.raises(UnreadableFile, match="found a directory"):
        read(tmp_path)


@BOTH_READERS
def test_a_path_no_file_can_have_is_refused(read: Callable[[str], object]) -> None:
    with pytest.raises(UnreadableFile, match="a path that cannot be opened"):
        read("a\0b")
    with pytest.raises(UnreadableFile, match="a path that cannot be opened"):
        read("x" * 5000)


def test_a_file_that_may_not_be_read_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    """Pretended, because root may read every file."""

    def forbid(self: Path, mode: str) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", forbid)
    with pytest.raises(UnreadableFile, match="a file that may not be read"):
        read_job("job.toml")


@pytest.mark.parametrize(
    ("raw", "found"),
    [
        (b"\xff\xfe[\x00", "a byte that is not UTF-8 text at position 0"),
        (b"title = 'caf\xe9'", "a byte that is not UTF-8 text at position 12"),
        (b"#" * (LARGEST + 1), "more than 256 kB"),
        (b"title = ", "text that is not TOML"),
        (b"title = 1\ntitle = 2", "text that is not TOML"),
        (b"PK\x03\x04", "text that is not TOML"),
        (b"a = " + b"[" * 5000, "text that is not TOML (tables nested too deeply)"),
        (b"a = " + b"1" * 5000, "text that is not TOML"),
    ],
)
def test_a_file_that_is_not_toml_is_refused(raw: bytes, found: str, tmp_path: Path) -> None:
    path = tmp_path / "job.toml"
    path.write_bytes(raw)
    with pytest.raises(UnreadableFile) as caught:
        read_job(path)
    assert caught.value.found.startswith(found)
    assert len(str(caught.value)) < 500


def test_a_text_that_is_too_large_is_refused_before_it_is_parsed() -> None:
    with pytest.raises(UnreadableFile, match="more than 256 kB"):
        parse_job("#" * (LARGEST + 1), "job.toml")


def test_deeply_dotted_keys_are_refused_as_unknown() -> None:
    refusal(".".join("a" * 900) + " = 1", UnknownName)
    assert refusal(f"work.length{'.a' * 500} = 1")


@given(st.one_of(st.text(), st.text(alphabet="[]=\n.{}'\" work1bmln_", max_size=60)))
def test_any_text_is_a_job_or_is_refused(text: str) -> None:
    for body in (text, f"{SMALL}{text}"):
        sentence = refusal_if_any(body)
        assert sentence.startswith("job.toml: ") or not sentence
        assert sentence.isprintable()


def refusal_if_any(text: str) -> str:
    try:
        parse_job(text, "job.toml")
    except RefusedInput as refused:
        return str(refused)
    return ""
