"""Printing: JSON with a fixed order, ASCII stand-ins where the terminal is not UTF-8."""

from __future__ import annotations

import dataclasses
import json
import math
import os
import sys
from collections.abc import Iterable
from contextlib import suppress
from typing import Any, get_args, get_type_hints


def say(text: str) -> None:
    """Print to stdout, in ASCII where the terminal cannot do better."""
    sys.stdout.write(fitted_to(sys.stdout.encoding, text.rstrip("\n") + "\n"))


def warn(text: str) -> None:
    """One line to stderr, where there is one."""
    with suppress(OSError):
        sys.stderr.write(fitted_to(sys.stderr.encoding, " ".join(text.split()) + "\n"))
        sys.stderr.flush()


def say_json(record: dict[str, Any]) -> None:
    """One JSON object, in ASCII escapes, keys as given."""
    sys.stdout.write(json.dumps(record, allow_nan=False, indent=2) + "\n")


def fitted_to(encoding: str | None, text: str) -> str:
    """The text as it is for UTF-8, with ASCII stand-ins otherwise."""
    if (encoding or "").lower().replace("-", "").replace("_", "") == "utf8" and not plain_locale():
        return text.encode("utf-8", "replace").decode("utf-8")
    from borewright.quantities.plain_text import ascii_text

    return ascii_text(text).encode("ascii", "replace").decode("ascii")


def plain_locale() -> bool:
    """True where the locale is asked to be C: Python then writes UTF-8 to a terminal that is not."""
    asked = next((os.environ[k] for k in ("LC_ALL", "LC_CTYPE", "LANG") if os.environ.get(k)), "")
    return asked in ("C", "POSIX") and "PYTHONIOENCODING" not in os.environ


def record_json(record: Any) -> dict[str, Any]:
    """A result record as JSON: each key its field's name and SI unit.

    `assumed` becomes what, taken, unit, source; `trouble` and `body` are left out; a pair is low and high.
    """
    hints = get_type_hints(type(record), include_extras=True)
    named = [f.name for f in dataclasses.fields(record) if f.name not in ("trouble", "body")]
    return dict(_entry(name, getattr(record, name), hints[name]) for name in named)


def _entry(name: str, value: Any, hint: Any) -> tuple[str, Any]:
    if name == "assumed":
        return name, [dataclasses.asdict(taken) for taken in value]
    if isinstance(value, tuple):
        return _key(name, get_args(hint)[0]), dict(zip(("low", "high"), value, strict=True))
    return _key(name, hint), value if math.isfinite(value) else None


def _key(name: str, hint: Any) -> str:
    suffix = getattr(get_args(hint)[1], "suffix", "") if len(get_args(hint)) > 1 else ""
    return f"{name}_{suffix}" if suffix else name


def sentences(lines: Iterable[str]) -> None:
    """Each line on its own."""
    for line in lines:
        say(line)
