"""Parts to be drawn, and a drawing read back by a reader that is not ours."""

from __future__ import annotations

from io import StringIO
from typing import Any

import ezdxf

from borewright.answer.drawn_part import (
    Across,
    Along,
    CenterHole,
    DrawnPart,
    Flat,
    Hollow,
    Limits,
    Pointed,
    Stretch,
)

INCH = 0.0254


def spindle(**changes: Any) -> DrawnPart:
    """A solid part of three diameters, 120 mm long, with centers and a flat."""
    stated: dict[str, Any] = {
        "title": "Spindle",
        "material": "steel",
        "stretches": (
            Stretch(0.0, 0.012, 0.0135),
            Stretch(0.012, 0.108, 0.01605, 0.016002),
            Stretch(0.108, 0.12, 0.0135),
        ),
        "centers": (
            CenterHole("left", 0.0025, 0.0053, 0.008, 0.0057),
            CenterHole("right", 0.0025, 0.0053, 0.008, 0.0057),
        ),
        "flats": (Flat(0.002, 0.010, 0.001),),
        "across": (
            Across(0.0, Limits(0.0135), "left", "left-end"),
            Across(0.12, Limits(0.0135), "right", "right-end"),
            Across(0.012, Limits(0.01605, 0.0, 5e-6, after="at A"), "inside", "plane-a"),
            Across(0.108, Limits(0.016002, 0.0, 5e-6, after="at B"), "inside", "plane-b"),
        ),
        "along": (
            Along(0.0, 0.012, Limits(0.012), "left-length"),
            Along(0.012, 0.108, Limits(0.096), "taper-length"),
            Along(0.0, 0.12, Limits(0.12), "whole"),
        ),
        "pointed": (Pointed(0.006, 0.004, "flat for the dog", "flat"),),
        "notes": ("Edges broken.", "Runout at most 3 µm."),
        "general": "± 0.25 mm",
        "end_view": "left",
    }
    return DrawnPart(**(stated | changes))


def wheel(**changes: Any) -> DrawnPart:
    """A wheel with hub, web and rim, bored through."""
    stated: dict[str, Any] = {
        "title": "Wheel",
        "material": "cast iron",
        "stretches": (
            Stretch(0.0, 0.05, 0.13, inside=0.106, inside_end=0.108),
            Stretch(0.018, 0.03, 0.11),
            Stretch(0.0, 0.056, 0.04),
        ),
        "hollows": (Hollow(0.0, 0.056, 0.018),),
        "across": (
            Across(0.0, Limits(0.13), "left", "rim"),
            Across(0.056, Limits(0.018, 0.0, 18e-6), "right", "bore"),
            Across(0.056, Limits(0.04), "right", "hub"),
        ),
        "along": (
            Along(0.0, 0.05, Limits(0.05), "rim-length"),
            Along(0.018, 0.03, Limits(0.012), "web"),
            Along(0.0, 0.056, Limits(0.056), "hub-length"),
        ),
        "end_view": "right",
    }
    return DrawnPart(**(stated | changes))


def read_dxf(text: str) -> Any:
    """The document as ezdxf reads it; AssertionError where its audit finds an error."""
    document = ezdxf.read(StringIO(text))
    assert not document.audit().errors
    return document


def measured(document: Any) -> list[tuple[float, str]]:
    """What each dimension measures, in the drawing's unit, with its words."""
    found = document.modelspace().query("DIMENSION")
    return [(float(d.get_measurement()), str(d.dxf.text)) for d in found]
