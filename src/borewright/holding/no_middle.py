"""Whether anything round that goes into the bore can find its middle."""

from __future__ import annotations

from borewright.holding.part import Part

AS_CAST = "as-cast"


def no_middle(part: Part, what: str) -> str:
    """Why `what`, something round, finds no middle in this bore; empty where it does."""
    if part.oval:
        return f"The bore is worn oval: {what} finds no middle in it."
    if part.tables.roughness_id(part.work.bore.made_by) == AS_CAST:
        return f"The bore is as cast: {what} finds no middle in it; bore it first."
    return ""
