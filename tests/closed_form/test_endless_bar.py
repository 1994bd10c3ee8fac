"""An endless solid bar under bands of pressure: against its integrals, its limits, and finite elements."""

from __future__ import annotations

from itertools import pairwise, product

import mpmath as mp
import numpy as np
import pytest

from borewright.mechanics import body_mesh
from borewright.mechanics.body_mesh import work_strips
from borewright.mechanics.elastic_body import mandrel_compliance
from borewright.mechanics.endless_bar import endless_bar
from borewright.mechanics.revolved import revolved

STEEL = 0.29
EXACT = 1e-7
"""Asked of every entry, beside what the strip does to itself."""


EDGES = (0.0, 0.01, 0.3, 1.5)


def bands(*edges: float) -> np.ndarray:
    return np.array(list(pairwise(edges)))


def usual(length: float) -> np.ndarray:
    """The strips of a plain hub."""
    return work_strips(revolved([(0.0, length, 0.5, 1.0)]))


def pressed_in(x: mp.mpf, nu: mp.mpf) -> mp.mpf:
    """Inward movement of a bar of radius 1 and modulus 1 under the pressure cos(x z).

    From Papkovich and Neuber's potentials, where the package starts from Love's function: with
    phi = C I0(xr) and psi = D I1(xr), both times cos(xz), 2 G u_r = 4 (1 - nu) psi - (r psi + phi)'
    and 2 G u_z = -d(r psi + phi)/dz; at r = 1 no shear and the pressure set C and D.
    """
    i0, i1 = mp.besseli(0, x), mp.besseli(1, x)
    slope = i0 - i1 / x
    bent = i1 - slope / x + i1 / x**2
    # Of C = 1 and of D = 1: 2 G u_r, its slope along r, 2 G u_z over sin(xz), its slope along r.
    out = (-x * i1, 4 * (1 - nu) * i1 - i1 - x * slope)
    out_slope = (-(x**2) * slope, 4 * (1 - nu) * x * slope - 2 * x * slope - x**2 * bent)
    along = (x * i0, x * i1)
    along_slope = (x**2 * i1, x * i1 + x**2 * slope)
    shear = [a - x * u for a, u in zip(along_slope, out, strict=True)]
    swells = [s + u + x * a for s, u, a in zip(out_slope, out, along, strict=True)]
    radial = [s + nu / (1 - 2 * nu) * e for s, e in zip(out_slope, swells, strict=True)]
    c, d = shear[1], -shear[0]
    return (1 + nu) * (c * out[0] + d * out[1]) / (c * radial[0] + d * radial[1])


def between(apart: float, nu: mp.mpf) -> mp.mpf:
    """The movement by a line load, summed twice along z: of 1 - cos(2 x z), over 4 pi x^2 (d = 1).

    The waves above x = 30 are integrated straight up in the complex plane, where they fade.
    """
    if apart == 0:
        return mp.mpf(0)
    s, far = mp.mpf(apart), mp.mpf(30)

    def some(x: mp.mpf) -> mp.mpf:
        return pressed_in(x, nu) / (4 * x**2)

    pieces = int(20 * apart) + 8
    near = mp.quad(lambda x: some(x) * (1 - mp.cos(2 * x * s)), mp.linspace(1e-12, far, pieces))
    even = mp.quad(lambda x: some(far / x) * far / x**2, [mp.mpf(0.001), 0.1, 1])
    even += 0.001**2 / far**2 * (1 - nu**2) / 4  # beyond 30000 the half-plane's 2 (1 - nu^2) / x
    waves = mp.quad(
        lambda y: (1j * some(far + 1j * y) * mp.expj(2 * s * (far + 1j * y))).real,
        [0, 1 / s, 5 / s, 40 / s],
    )
    return (near + even - waves) / mp.pi


@pytest.mark.parametrize("nu", [0.05, 0.29, 0.45])
def test_every_entry_is_its_integral(nu: float) -> None:
    strips = bands(*EDGES)
    found = endless_bar(strips, nu)
    own = {float(b - a): between(b - a, mp.mpf(nu)) for a, b in product(EDGES, EDGES) if b >= a}
    for i, j in product(range(3), range(3)):
        (a, b), (c, d) = strips[i], strips[j]
        ends = [own[float(abs(x))] for x in (b - d, b - c, a - d, a - c)]
        truth = (ends[1] + ends[2] - ends[0] - ends[3]) / ((b - a) * (d - c))
        assert found[i, j] == pytest.approx(float(truth), rel=EXACT), (i, j)


def test_the_middle_of_a_long_loaded_stretch_is_lame_s() -> None:
    """Plane stress, free along: (1 - v) / 2 on radius over d. At its end half of it, by symmetry:
    loads on both sides of a place press it in as an even one does."""
    strips = usual(8.0)
    pressed = endless_bar(strips, STEEL) @ (strips[:, 1] - strips[:, 0])
    assert pressed[len(strips) // 2] == pytest.approx((1 - STEEL) / 2, rel=1e-6)
    edges = np.linspace(0.0, 8.0, 161)
    one = np.column_stack([edges[:-1], edges[1:]])
    left = endless_bar(one, STEEL)[:, :80] @ np.full(80, 0.05)
    assert left[79] + left[80] == pytest.approx((1 - STEEL) / 2, rel=1e-6)


@pytest.mark.parametrize("nu", [0.05, 0.29, 0.45])
def test_short_strips_see_a_half_plane(nu: float) -> None:
    """Johnson, Contact Mechanics, ch. 2, from memory: u = -2 (1 - v^2) / pi p h ln|s| and a constant,
    which differences of entries do not hold. The bar's roundness counts by the strip's width."""
    width = 1e-5
    found = endless_bar(bands(*np.arange(5) * width), nu)

    def mean(k: int) -> float:  # of ln|s| over both strips, k apart
        def twice(x: int) -> float:
            return x * x / 2 * np.log(abs(x)) - 0.75 * x * x if x else 0.0

        return twice(k + 1) + twice(k - 1) - 2 * twice(k)

    for k in (1, 2, 3):
        truth = 2 * (1 - nu**2) / np.pi * (mean(k) - mean(0))
        assert found[0, 0] - found[0, k] == pytest.approx(truth, rel=1e-4)


@pytest.mark.parametrize("length", [0.5, 2.0, 6.0])
def test_it_is_symmetric_and_positive_definite(length: float) -> None:
    found = endless_bar(usual(length), STEEL)
    assert np.array_equal(found, found.T)
    assert np.linalg.eigvalsh(found).min() > 0.4


def test_strips_with_gaps_or_elsewhere_are_parts_of_the_whole() -> None:
    strips = usual(2.0)
    whole, some = endless_bar(strips, STEEL), [0, 5, 6, 30, 51]
    assert endless_bar(strips[some] + 3.0, STEEL) == pytest.approx(
        whole[np.ix_(some, some)], rel=EXACT, abs=1e-9
    )


def on_wider(strips: np.ndarray, gives: np.ndarray, by: int) -> np.ndarray:
    """The same bar under so many strips taken as one, evenly pressed."""
    lengths = strips[:, 1] - strips[:, 0]
    count = len(strips) // by
    joined = np.zeros((len(strips), count))
    for k in range(count):
        mine = slice(k * by, (k + 1) * by)
        joined[mine, k] = lengths[mine] / lengths[mine].sum()
    return np.asarray(joined.T @ gives @ joined)


def test_finite_elements_come_to_it_as_they_grow_finer(monkeypatch: pytest.MonkeyPatch) -> None:
    """A bar that stands out 4 d, which is endless to 1e-9. With one element a strip, as the package
    has it, an entry is up to 1.4 % off; several elements under the same even load come to the
    integral, in order 2: pressure that steps is no smoother than that."""
    first, edges, off = body_mesh.FIRST, np.linspace(0.0, 0.4, 9), []
    for by in (1, 2, 4, 8):
        monkeypatch.setattr(body_mesh, "FIRST", first / by)
        finer = np.linspace(0.0, 0.4, 8 * by + 1)
        fine = np.column_stack([finer[:-1], finer[1:]])
        gives = on_wider(fine, mandrel_compliance(fine, STEEL, 0.0, (4.0, 4.0)).gives, by)
        off.append(float(np.abs(gives / endless_bar(bands(*edges), STEEL) - 1).max()))
    assert off[0] < 0.014
    assert np.log2(np.divide(off[:-1], off[1:])) == pytest.approx(2.0, abs=0.3)
    assert off[-1] < 3e-4


def test_the_usual_elements_are_within_their_own_error_of_it() -> None:
    """Strip by strip, 1.7 % of a strip's own movement, 7 % at the short strips of either end, where
    a cell is deeper than long; together, under a pressure that falls as a taper's, 0.1 % of the
    movement anywhere but at the two strips at either end."""
    strips = usual(2.0)
    truth, found = endless_bar(strips, STEEL), mandrel_compliance(strips, STEEL, 0.0, (4, 4)).gives
    own = np.diag(found) / np.diag(truth) - 1
    lengths = strips[:, 1] - strips[:, 0]
    loads = lengths * (2.0 - strips.mean(axis=1))
    off = np.abs((found @ loads) / (truth @ loads) - 1)
    assert np.abs(own).max() < 0.07
    assert np.abs(own[10:-10]).max() < 0.017
    assert off[2:-2].max() < 1e-3
