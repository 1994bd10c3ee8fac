"""Sizes of a spur gear's teeth, and of the space that a form cutter mills between two of them.

    m = 25.4 mm / diametral pitch        module
    D_o = m (z + 2 a)                    outside of a blank of z teeth, a the addendum in modules
    h = m w                              whole depth, w in modules (2.157 or 2.25)
The space is taken as that of a rack: straight flanks at the pressure angle α, half the circular
pitch (π m / 2) wide on the pitch line. At a depth x from the outside its root is
    b_r = π m / 2 - 2 (h - a m) tan α    wide.
Source: geometry of the basic rack; the proportions w, a and α are rows of a table.
Weakness: a gear of few teeth has curved flanks and a space a little wider at the outside.
"""

from __future__ import annotations

import math

from borewright.errors import OutsideModel
from borewright.quantities.si import Metre, Radian

INCH = 0.0254
"""Metres in an inch, by definition (1959)."""


def module_of_pitch(diametral_pitch: float) -> Metre:
    """Module (m) of a diametral pitch (teeth for each inch of pitch diameter).

    >>> round(module_of_pitch(10) * 1e3, 3)
    2.54
    """
    return INCH / diametral_pitch


def blank_outside(module: Metre, teeth: int, addendum: float = 1.0) -> Metre:
    """Outside diameter (m) of the blank.

    >>> round(blank_outside(0.002, 24) * 1e3, 6)
    52.0
    """
    return module * (teeth + 2 * addendum)


def root_width(module: Metre, whole_depth: Metre, addendum: Metre, angle: Radian) -> Metre:
    """Width (m) of the space at its root. OutsideModel where the flanks would cross above it.

    >>> round(root_width(0.002, 0.0045, 0.002, math.radians(20)) * 1e3, 3)
    1.322
    """
    width = math.pi * module / 2 - 2 * (whole_depth - addendum) * math.tan(angle)
    if width <= 0:
        raise OutsideModel("root of the tooth space", f"{width:.4g} m", "more than 0 m wide")
    return width


def pass_width(root: Metre, angle: Radian, whole_depth: Metre, depth: Metre) -> Metre:
    """Mean width (m) of what the last pass takes out: its area over its depth.

    The form grows wider with depth, so the last of several passes is the widest: its area is the
    space at whole depth less the space at whole depth - depth.

    >>> round(pass_width(1e-3, math.radians(45), 4e-3, 4e-3) * 1e3, 9)  # 1 mm root, 9 mm mouth
    5.0
    """
    return root + (2 * whole_depth - depth) * math.tan(angle)


def developed_edge(root: Metre, angle: Radian, whole_depth: Metre) -> Metre:
    """Length (m) of the cutting edge laid flat: the root and both flanks.

    >>> round(developed_edge(1e-3, math.radians(60), 2e-3) * 1e3, 9)
    9.0
    """
    return root + 2 * whole_depth / math.cos(angle)
