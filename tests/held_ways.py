"""Reading what a way of holding offers, for tests."""

from __future__ import annotations

from borewright.answer.held import Grip, Held
from borewright.answer.records import Figure


def grip_of(held: Held) -> Grip:
    """Its grip; a hold that cannot be done has none."""
    assert held.grip is not None, held.cannot
    return held.grip


def figures_of(held: Held) -> dict[str, Figure]:
    """Its own figures and those of its steps and checks, by name."""
    stepped = [f for s in (*held.mount, *held.release) for f in s.figures]
    checked = [f for c in (held.seat, held.fit, held.effort) if c for f in c.figures]
    return {f.name: f for f in (*held.figures, *stepped, *checked)}


def inputs_of(figure: Figure) -> dict[str, float]:
    """The numbers it was worked out from."""
    return {i.label: i.value for i in figure.inputs}
