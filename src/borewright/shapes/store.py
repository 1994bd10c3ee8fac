"""Files of shapes: each whole or absent, checked when read, bounded in number.

A file is a line with the checksum of its name and the rest, then the arrays as numpy keeps them.
Whoever builds a shape writes it under a name of its own and renames it, so that several processes
may share a folder. A file that is damaged or not ours is passed over, and built again. Where
nothing can be written, nothing is kept: that is no error.
"""

from __future__ import annotations

import hashlib
import os
from contextlib import suppress
from dataclasses import fields
from io import BytesIO
from pathlib import Path
from tempfile import NamedTemporaryFile
from typing import Any, Final, TypeVar
from zipfile import BadZipFile

import numpy as np

Shape = TypeVar("Shape")

SETTING: Final = "BOREWRIGHT_SHAPES"
"""Environment variable with the folder to keep shapes in; empty keeps none."""

MOST_FILES: Final = 400
"""About 100 MB; the longest unused go first."""


def folder() -> Path | None:
    """Where shapes are kept: as set, else in the user's cache; None where that is nowhere."""
    stated = os.environ.get(SETTING)
    if stated is not None:
        return Path(stated) if stated else None
    cache = os.environ.get("XDG_CACHE_HOME")
    try:
        return (Path(cache) if cache else Path.home() / ".cache") / "borewright" / "shapes"
    except RuntimeError:  # no home
        return None


def kept(key: str, kind: type[Shape]) -> Shape | None:
    """The shape of this name, a record of arrays; None where it is not kept, or not as written."""
    place = folder()
    if place is None:
        return None
    path = place / f"{key}.shape"
    try:
        content = path.read_bytes() if path.is_file() else b""
    except OSError:
        return None
    found = _read(content, key, kind)
    if found is not None:
        with suppress(OSError):
            os.utime(path)
    return found


def keep(key: str, shape: Any) -> None:
    """Write it, whole or not at all; quietly not where that cannot be."""
    place = folder()
    if place is None:
        return
    with suppress(OSError):
        place.mkdir(parents=True, exist_ok=True)
        with NamedTemporaryFile(dir=place, prefix=".", delete=False) as out:
            name = Path(out.name)
            try:
                out.write(_written(key, shape))
                out.close()
                name.replace(place / f"{key}.shape")
            except OSError:
                name.unlink(missing_ok=True)
                raise
        _bound(place)


def _written(key: str, shape: Any) -> bytes:
    arrays = {f.name: getattr(shape, f.name) for f in fields(shape)}
    out = BytesIO()
    np.savez(out, **arrays)
    content = out.getvalue()
    return _checksum(key, content) + b"\n" + content


def _checksum(key: str, content: bytes) -> bytes:
    """Of content and name: a file under another's name is not that other."""
    return hashlib.sha256(key.encode() + content).hexdigest().encode()


def _read(content: bytes, key: str, kind: type[Shape]) -> Shape | None:
    line, _, rest = content.partition(b"\n")
    if _checksum(key, rest) != line:
        return None
    try:
        with np.load(BytesIO(rest), allow_pickle=False) as arrays:
            return kind(**{f.name: _plain(arrays[f.name]) for f in fields(kind)})  # type: ignore[arg-type]
    except (KeyError, ValueError, OSError, BadZipFile):
        return None


def _plain(array: Any) -> Any:
    return array if array.ndim else array.item()


def _bound(place: Path) -> None:
    """Drop the longest unused where there are too many."""
    files = sorted(place.glob("*.shape"), key=lambda path: path.stat().st_mtime)
    for old in files[: max(0, len(files) - MOST_FILES)]:
        with suppress(OSError):
            old.unlink()
