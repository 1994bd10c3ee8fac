"""The answer no: why a thing is not made this way, and what does instead."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Cannot:
    """Why not, and what does it instead: a sentence each."""

    reason: str
    instead: str

    @property
    def words(self) -> str:
        """Both sentences."""
        return f"{self.reason} {self.instead}"
