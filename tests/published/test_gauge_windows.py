"""Windows of ISO 286-1 as a plug gauge is made for them, and the published habits beside them."""

from __future__ import annotations

import pytest

from borewright.job.bore_text import bore_size
from borewright.making.stub.asked import StubAsked
from borewright.making.stub.sizes import StubSizes, stub_sizes
from borewright.making.stub.slit import Slit, slit_of
from borewright.reference.library import Tables
from borewright.service.making.bored_work import BoredWork, WorkTyped, work_typed
from borewright.service.making.gauge import make_gauge

TABLES = Tables()
# ISO 286-1, table of standard tolerances (quoted in the project's list of published values), µm.
WINDOWS = {
    "16 H7": 18,
    "25 H7": 21,
    "40 H8": 39,
    "60 H9": 74,
    "10 H9": 36,
    "28 H11": 130,
}


def window(text: str) -> BoredWork:
    size, limits = bore_size(text, "--bore", None)
    return work_typed(WorkTyped(size, limits, 0.02, None, "", "", "mm"), TABLES)


@pytest.mark.parametrize(("text", "width"), WINDOWS.items(), ids=list(WINDOWS))
def test_both_ends_lie_within_the_standards_window(text: str, width: float) -> None:
    made = make_gauge(window(text), TABLES).numbers
    nominal = float(text.partition(" ")[0]) * 1e-3
    assert made["smallest_bore_m"] == pytest.approx(nominal, abs=1e-10)
    assert made["largest_bore_m"] == pytest.approx(nominal + width * 1e-6, abs=1e-10)
    assert made["smallest_bore_m"] < made["go_smallest_m"] < made["go_largest_m"]
    assert made["go_largest_m"] < made["not_go_smallest_m"] < made["not_go_largest_m"]
    assert made["not_go_largest_m"] == made["largest_bore_m"]
    assert made["tenth_of_window_m"] == pytest.approx(width * 1e-7)


@pytest.mark.parametrize("bore", [0.012, 0.020, 0.030, 0.050])
def test_a_taper_plug_has_the_taper_of_an_expansion_pin(bore: float) -> None:
    """US Army OD1645 (1988): expansion pins taper 1/16 in per in."""
    asked = StubAsked(
        bore, bore, 3e-6, False, 2 * bore, 1.0, 1.0, bore, "gray-iron-30", "mm", "taper"
    )
    stub = stub_sizes(asked, TABLES)
    assert isinstance(stub, StubSizes)
    slit = slit_of(asked, stub, TABLES)
    assert isinstance(slit, Slit)
    inch_long = (slit.plug_large - slit.plug_small) / slit.plug_length
    assert inch_long == pytest.approx(1 / 16)
    assert slit.taper_source == "od1645"
