"""The first natural frequency of held work as a figure."""

from __future__ import annotations

from borewright.answer.records import Figure
from borewright.mechanics.vibration import single_mode_frequency
from borewright.planning.weighing.figures import figure, given
from borewright.quantities.si import Kilogram, NewtonPerMetre


def frequency_figure(
    stiffness: NewtonPerMetre,
    mass: Kilogram,
    exact: float | None = None,
    band: tuple[float, float] | None = None,
    sources: tuple[str, ...] = ("ours",),
) -> Figure:
    """First frequency (Hz) of so much mass on so much stiffness, or `exact` where that is known."""
    one = float(single_mode_frequency(stiffness, mass))
    found = one if exact is None else exact
    inputs = (
        given("stiffness", stiffness, "N/m"),
        given("mass that swings", mass, "kg"),
        given("exact over one mass", found / one),
    )
    return figure("first_frequency", found, "Hz", "", "first_frequency", inputs, sources, band)
