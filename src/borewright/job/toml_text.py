"""Getting TOML tables out of a file: everything that can be wrong before the first key is read."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any, Final

from borewright.errors.tree import UnreadableFile, one_line

LARGEST: Final = 256 * 1024
"""Bytes: a job with 200 pieces and 200 readings is below 40 kB."""

LONGEST_LINE: Final = 10000
"""Characters: longer ones are no work of a person, and a long dotted key takes minutes to read."""


def load_text(path: Path, what: str) -> str:
    """The text of a UTF-8 file; UnreadableFile says which of the usual things is wrong with it."""
    where = str(path)
    try:
        with path.open("rb") as stream:
            raw = stream.read(LARGEST + 1)
    except (OSError, ValueError) as problem:
        raise UnreadableFile(where, _why(path, problem), f"a {what} that can be read") from None
    return decode(raw, where, what)


def decode(raw: bytes, where: str, what: str) -> str:
    """UTF-8 text of bytes, with or without a byte-order mark.

    >>> decode(b'title = "wheel"', "job.toml", "job file")
    'title = "wheel"'
    """
    if len(raw) > LARGEST:
        found = f"more than {LARGEST // 1024} kB"
        raise UnreadableFile(where, found, f"a {what} of at most {LARGEST // 1024} kB")
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as problem:
        found = f"a byte that is not UTF-8 text at position {problem.start}"
        raise UnreadableFile(where, found, f"a {what} saved as UTF-8 text") from None


def parse_tables(text: str, where: str, what: str) -> dict[str, Any]:
    """The tables of a TOML text.

    >>> parse_tables("[work]\\nquantity = 2", "job.toml", "job file")
    {'work': {'quantity': 2}}
    """
    if len(text) > LARGEST:
        decode(text.encode("utf-8", "replace"), where, what)
    longest = max(map(len, text.splitlines()), default=0)
    if longest > LONGEST_LINE:
        found = f"a line of {longest} characters"
        raise UnreadableFile(where, found, f"lines of at most {LONGEST_LINE} characters")
    try:
        return tomllib.loads(text)
    except (ValueError, RecursionError) as problem:
        reason = "tables nested too deeply" if isinstance(problem, RecursionError) else str(problem)
        raise UnreadableFile(
            where, f"text that is not TOML ({_lower(reason)})", _form(what)
        ) from None


def _form(what: str) -> str:
    return f'a {what} in TOML, with lines such as size = "0.6255in" and names such as [work]'


def _lower(reason: str) -> str:
    line = one_line(reason)
    return line[:1].lower() + line[1:120]


def _why(path: Path, problem: Exception) -> str:
    if isinstance(problem, FileNotFoundError):
        return "no such file"
    if isinstance(problem, IsADirectoryError):
        return "a directory"
    if isinstance(problem, PermissionError):
        return "a file that may not be read"
    reason = getattr(problem, "strerror", None) or str(problem)
    return f"a path that cannot be opened ({_lower(reason)})"
