"""Shapes are found again, whatever happened to their files, and never wrongly."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from borewright.holding.taper.elastic_joint import joint, outline_of
from borewright.mechanics.body_mesh import STRIP
from borewright.mechanics.revolved import revolved, turned
from borewright.mechanics.rings import Elastic
from borewright.mechanics.tilt_body import work_tilt
from borewright.shapes import store
from borewright.shapes.find import forget, tilt_shape, work_shape
from borewright.shapes.key import ends, mandrel_key, work_key

HUB = revolved([(0.0, 1.0, 0.5, 1.0)])


@pytest.fixture(autouse=True)
def fresh(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv(store.SETTING, str(tmp_path))
    forget()
    return tmp_path


def files(folder: Path) -> list[Path]:
    return sorted(folder.iterdir())


def test_a_shape_is_kept_in_one_whole_file_and_read_back_equal(fresh: Path) -> None:
    built = work_shape(HUB, 0.26)
    assert [f.suffix for f in files(fresh)] == [".shape"]
    forget()
    again = work_shape(HUB, 0.26)
    assert again is not built
    assert np.array_equal(again.gives, built.gives)
    assert np.array_equal(again.stress, built.stress)


def test_a_tilting_shape_is_kept_beside_it_and_read_without_the_heavy_libraries(
    fresh: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    work_shape(HUB, 0.26)
    built = tilt_shape(HUB, 0.26)
    assert len(files(fresh)) == 2
    forget()
    monkeypatch.setitem(__import__("sys").modules, "borewright.mechanics.tilt_body", None)
    again = tilt_shape(HUB, 0.26)
    assert np.array_equal(again.sways, built.sways)
    assert np.array_equal(again.warp, built.warp)
    assert again.own == built.own


def test_a_body_turned_round_tilts_as_if_it_were_built_so(fresh: Path) -> None:
    flanged = revolved([(0.0, 1.0, 0.5, 0.9), (0.0, 0.3, 0.9, 2.0)])
    for body in (flanged, turned(flanged)):
        forget()
        found, built = tilt_shape(body, 0.26), work_tilt(body, 0.26)
        assert found.strips == pytest.approx(built.strips, abs=1e-12)
        assert found.sways == pytest.approx(built.sways, abs=1e-6)
        assert found.warp == pytest.approx(built.warp, abs=1e-6)
        assert found.own == pytest.approx(built.own, rel=1e-6)
    assert len(files(fresh)) == 1


@given(st.floats(0.2, 3.0), st.floats(-1e-10, 1e-10), st.booleans())
@settings(max_examples=15, deadline=None)
def test_the_strips_of_a_shape_hang_on_no_last_digit_nor_on_its_way_round(
    half: float, hair: float, is_turned: bool
) -> None:
    """A length at which one strip more would be taken: what tilts must have the strips of the rest."""
    length = (round(half / STRIP) + 0.5) * STRIP
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv(store.SETTING, "")
        forget()
        one = revolved([(0.1, 0.1 + length + hair, 0.5, 0.9), (0.1, 0.2, 0.9, 1.2)])
        strips = work_shape(one, 0.26).strips
        other = revolved([(0.0, length, 0.5, 0.9), (0.0, 0.1, 0.9, 1.2)])
        found = tilt_shape(turned(other) if is_turned else other, 0.26).strips
    assert len(found) == len(strips)


def test_a_known_shape_is_read_without_the_heavy_libraries(
    fresh: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    work_shape(HUB, 0.26)
    forget()
    monkeypatch.setitem(__import__("sys").modules, "borewright.mechanics.elastic_body", None)
    assert work_shape(HUB, 0.26).gives.shape[0] > 10


@pytest.mark.parametrize("damage", ["cut", "bit", "foreign", "empty"])
def test_a_damaged_file_is_passed_over_and_built_again(fresh: Path, damage: str) -> None:
    built = work_shape(HUB, 0.26)
    path = files(fresh)[0]
    whole = path.read_bytes()
    bad = {
        "cut": whole[: len(whole) // 2],
        "bit": whole[:-9] + bytes([whole[-9] ^ 1]) + whole[-8:],
        "foreign": b"something else",
        "empty": b"",
    }
    path.write_bytes(bad[damage])
    forget()
    assert np.array_equal(work_shape(HUB, 0.26).gives, built.gives)
    assert path.read_bytes() == whole


def test_where_nothing_can_be_kept_the_answer_is_the_same(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    built = work_shape(HUB, 0.26)
    for place in ("", str(tmp_path / "a file" / "below")):
        (tmp_path / "a file").write_text("in the way")
        monkeypatch.setenv(store.SETTING, place)
        forget()
        assert np.array_equal(work_shape(HUB, 0.26).gives, built.gives)


def test_the_folder_is_bounded_and_the_longest_unused_go(
    fresh: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(store, "MOST_FILES", 2)
    for outside in (1.0, 1.5, 2.0):
        work_shape(revolved([(0.0, 0.5, 0.5, outside)]), 0.26)
    assert len(files(fresh)) == 2


def test_inch_and_metric_spellings_of_one_shape_meet_and_other_metals_do_not() -> None:
    inch = outline_of([(0.0, 0.0254, 0.0508, None)], 0.0127)
    metric = outline_of([(0.0, 25.4e-3, 50.8e-3, None)], 12.7e-3)
    assert work_key(inch, 0.26) == work_key(metric, 0.26) != work_key(inch, 0.27)


def test_a_bar_that_stands_out_a_diameter_is_endless_and_a_shorter_one_is_not() -> None:
    strips = np.array([[0.0, 1.0]])
    far, farther, near = (ends((x, x), 2.0) for x in (1.0, 7.0, 0.51))
    assert far == farther == (2.0, 2.0)
    assert near == (0.5, 0.5)
    assert mandrel_key(strips, 0.29, 0.0, far) != mandrel_key(strips, 0.29, 0.0, near)


def test_everything_scales_with_size_and_modulus_exactly() -> None:
    def force(size: float, stiff: float) -> float:
        pieces = [(0.0, 2 * size, 3 * size, None)]
        work, bar = Elastic(100e9 * stiff, 0.26), Elastic(207e9 * stiff, 0.29)
        both = joint(pieces, size, work, bar, (9 * size, 9 * size))
        return both.normal_force(both.pressure(1e-4 * (2 * size - both.places)))

    one = force(0.016, 1.0)
    assert force(0.032, 1.0) == pytest.approx(4 * one, rel=1e-9)
    assert force(0.016, 3.0) == pytest.approx(3 * one, rel=1e-9)
