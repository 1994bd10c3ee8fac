"""The picture on a sheet that prints it narrower than drawn: the scales written on it made true."""

from __future__ import annotations

import re

from borewright.quantities.rounding import significant

_SCALE = re.compile(r"(?<=Side view, )scale (\d+(?:\.\d+)?):(\d+(?:\.\d+)?)")


def at_share(picture: str, share: float) -> str:
    """The SVG with the scale that it is printed at, where that is `share` of the one drawn.

    The inset's height is so many times its length at any share, and stays as written.

    >>> at_share("Side view, scale 1:5, cut open", 0.78)
    'Side view, about 1:6.4, cut open'
    >>> at_share("Side view, scale 2:1, cut open", 0.78)
    'Side view, about 1.6:1, cut open'
    """
    if share == 1.0:
        return picture
    return _SCALE.sub(lambda found: _printed(float(found[1]), float(found[2]), share), picture)


def _printed(paper: float, part: float, share: float) -> str:
    ratio = paper / part * share
    if ratio >= 1:
        return f"about {significant(ratio, 2)}:1"
    return f"about 1:{significant(1 / ratio, 2)}"
