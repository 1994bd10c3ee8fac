"""Running the command line inside the test's own process, with its streams caught."""

from __future__ import annotations

import io
import sys
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING

from borewright.cli.app import run

if TYPE_CHECKING:
    from collections.abc import Iterator

FIT = {
    "--bore": "18.01mm",
    "--outside": "40mm",
    "--length": "30mm",
    "--material": "gray-iron-30",
    "--mandrel": "18mm",
    "--small-end": "17.99mm",
    "--taper": "0.0005",
    "--ground-length": "110mm",
    "--travel": "25mm",
}
CUT = {
    "--material": "gray-iron-30",
    "--diameter": "60mm",
    "--depth": "1mm",
    "--feed": "0.1mm",
    "--speed": "90ft/min",
}


@dataclass(frozen=True)
class Ran:
    """What one command did."""

    code: int
    out: str
    err: str

    @property
    def error_lines(self) -> list[str]:
        return self.err.splitlines()


def ran(*arguments: str, stdin: str = "", encoding: str = "utf-8") -> Ran:
    """Exit code, stdout and stderr of `borewright ARGUMENTS`; any exception comes through."""
    streams = [_stream(stdin, "utf-8"), _stream("", encoding), _stream("", encoding)]
    with _in_place_of_the_real(streams):
        code = run(list(arguments))
    return Ran(code, *(_text(s, encoding) for s in streams[1:]))


def words(base: dict[str, str], **changes: str | None) -> list[str]:
    """The options of a command as words; `travel=None` leaves `--travel` out."""
    asked: dict[str, str | None] = dict(base)
    asked.update({f"--{name.replace('_', '-')}": value for name, value in changes.items()})
    return [w for name, value in asked.items() if value is not None for w in (name, value)]


def refused(*arguments: str, stdin: str = "") -> str:
    """The one line of a refusal, after holding it against the contract."""
    done = ran(*arguments, stdin=stdin)
    assert (done.code, done.out) == (2, ""), done
    assert len(done.error_lines) == 1, done.err
    line = done.error_lines[0]
    assert line.startswith("borewright: "), line
    assert ": found " in line, line
    assert "; allowed is " in line, line
    assert line.isprintable()
    return line


def _stream(text: str, encoding: str) -> io.TextIOWrapper:
    return io.TextIOWrapper(io.BytesIO(text.encode("utf-8", "replace")), encoding=encoding)


def _text(stream: io.TextIOWrapper, encoding: str) -> str:
    stream.flush()
    return stream.buffer.getvalue().decode(encoding)  # type: ignore[attr-defined]


@contextmanager
def _in_place_of_the_real(streams: list[io.TextIOWrapper]) -> Iterator[None]:
    kept = sys.stdin, sys.stdout, sys.stderr
    sys.stdin, sys.stdout, sys.stderr = streams
    try:
        yield
    finally:
        sys.stdin, sys.stdout, sys.stderr = kept
