"""What a mutant is: one break of the source, and how it is made."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Mutant:
    """One break: in `file`, the text `right` (which stands there once) becomes `wrong`."""

    name: str
    file: str
    right: str
    wrong: str
