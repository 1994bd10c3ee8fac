"""Making mandrels as the trade does it: common practice, no source, unless a row says otherwise."""

from __future__ import annotations

from typing import Literal

import pytest

from borewright.answer.made_mandrel import MadeMandrel
from borewright.making.mandrel.asked import MandrelAsked
from borewright.making.mandrel.design import made_mandrel
from borewright.making.mandrel.papers import mandrel_papers
from borewright.reference.library import Tables
from borewright.report.papers_text import papers_lines

INCH = 0.0254
TABLES = Tables()
SIXTEENTHS = [k / 16 for k in range(4, 25)]
"""Sets go by sixteenths: 1/4 to 1 1/2 in."""
Units = Literal["inch", "mm"]


def made(size: float, units: Units, **more: object) -> MadeMandrel:
    return made_mandrel(MandrelAsked(nominal=size, units=units, **more), TABLES)  # type: ignore[arg-type]


def text_of(design: MadeMandrel) -> str:
    return " ".join(" ".join(papers_lines(mandrel_papers(design, TABLES))).split())


@pytest.mark.parametrize("grinder", [True, False], ids=["ground", "turned"])
@pytest.mark.parametrize("size", SIXTEENTHS)
def test_every_sixteenth_is_an_everyday_mandrel(size: float, grinder: bool) -> None:
    """It can be made, without a warning, and takes a bore of its own size."""
    design = made(size * INCH, "inch", grinder=grinder)
    assert design.fits
    assert design.care == ()
    assert design.takes_middle is not None
    assert design.takes_middle[0] < size * INCH < design.takes_middle[1]


@pytest.mark.parametrize("size", [6, 8, 10, 12, 16, 20, 25, 30, 40])
def test_every_usual_metric_size_is_an_everyday_mandrel(size: int) -> None:
    design = made(size / 1000, "mm")
    assert design.fits
    assert design.care == ()
    assert design.takes_middle is not None
    assert design.takes_middle[0] < size / 1000 < design.takes_middle[1]


def test_the_old_figure_is_25_thou_and_generous_at_the_small_sizes() -> None:
    """Left about 0.025 in over before hardening and grinding, whatever the size."""
    for size in (1 / 8, 1 / 2, 1.0):
        design = made(size * INCH, "inch")
        assert design.stock.old == pytest.approx(0.025 * INCH, rel=1e-6)
        assert design.stock.scaled < design.stock.old
        assert "leaves 0.025 in" in text_of(design)
    # An eighth: a fifth of the diameter by the old figure, well under a tenth by size.
    small = made(INCH / 8, "inch")
    assert small.stock.old / small.form.nominal == pytest.approx(0.2)
    assert small.stock.scaled / small.form.nominal < 0.1


def test_the_small_end_is_half_a_thou_under_below_an_inch_and_a_thou_from_there() -> None:
    for size, under in ((1 / 4, 0.0005), (5 / 8, 0.0005), (1.0, 0.001), (1.5, 0.001)):
        design = made(size * INCH, "inch")
        # Limits on whole tenths of a thou move it by half a tenth at most.
        assert size * INCH - design.form.small_end == pytest.approx(
            under * INCH, abs=0.5001e-4 * INCH
        )


def test_the_ends_are_smaller_than_the_taper_and_carry_a_flat_for_the_dog() -> None:
    for size in SIXTEENTHS:
        form = made(size * INCH, "inch").form
        assert form.end_diameter < form.small_end
        assert 0.0 < form.flat_depth < form.end_diameter / 4
        assert form.flat_length < form.end_length


def test_centers_are_done_after_hardening_and_before_grinding() -> None:
    text = text_of(made(0.75 * INCH, "inch"))
    assert (
        text.index("Harden.")
        < text.index("Lap or regrind the centers")
        < text.index("Set the grinder's table")
    )


def test_no_paper_lets_a_magnet_tell_a_heat_that_it_cannot() -> None:
    """A magnet lets go near 770 °C: near enough for O1 and silver steel, far below A2's heat."""
    for steel, says in (("o1", True), ("silver-steel", True), ("a2", False)):
        text = text_of(made(0.75 * INCH, "inch", steel=steel))
        assert ("a magnet lets go" in text) == says, steel
    assert "pyrometer" in text_of(made(0.75 * INCH, "inch", steel="a2"))


def test_oil_is_warned_of_only_where_there_is_oil() -> None:
    for steel, oil in (("o1", True), ("silver-steel", False), ("a2", False), ("steel-4140", False)):
        assert ("Hot steel flares oil" in text_of(made(0.02, "mm", steel=steel))) == oil, steel


def test_every_hardened_steel_is_kept_from_the_air_or_packed() -> None:
    for row in TABLES.table("mandrel_steels").rows:
        steel = TABLES.mandrel_steel(row.text("id"))
        text = text_of(made(0.02, "mm", steel=steel.id))
        kept = "Keep the air off" in text or "Pack it in carburizing compound" in text
        assert kept == steel.hard, steel.id


def test_a_quenching_tub_holds_about_a_gallon_for_a_pound() -> None:
    design = made(1.0 * INCH, "inch")
    pounds = design.stock.mass / 0.45359237
    gallons = float(text_of(design).split("at least ")[1].split(" gal")[0])
    assert gallons == pytest.approx(pounds, rel=0.3)


@pytest.mark.parametrize(
    ("asked", "words"),
    [
        ({"nominal": 0.1016, "units": "inch"}, "weighs"),
        ({"nominal": 0.060, "units": "mm"}, "near its skin"),
        ({"bores": (0.01266, 0.01276), "units": "inch", "unsure": 5e-5}, "measure it first"),
        ({"nominal": 0.0254, "units": "inch", "longest": 0.1}, "the chart would have it"),
    ],
)
def test_what_no_shop_makes_lightly_is_with_care(asked: dict[str, object], words: str) -> None:
    design = made_mandrel(MandrelAsked(**asked), TABLES)  # type: ignore[arg-type]
    assert any(words in reason for reason in design.care), design.care
    assert text_of(design).startswith("With care: ")
