"""Jobs with grinding and gear cutting, for tests; Hollow Brook and its parts are invented."""

from __future__ import annotations

from borewright.answer.plan import Plan
from borewright.answer.records import Question
from borewright.job import parse_job
from borewright.job.records import CutWish
from borewright.reference.library import Tables
from borewright.service.planned import plan

TABLES = Tables()

PINION = """# A pinion of the cider mill, Hollow Brook: turned, then cut on the dividing head.
title = "Cider mill pinion"
units = "mm"
[work]
material = "mild steel"
blank = "bar"
outside = "53mm"
length = "25mm"
finished = { outside = "52mm" }
bore = { size = "16.006mm", uncertainty = "3um", measured_with = "plug gauge", made_by = "reamed" }
[machine]
speeds = ["60rpm", "110rpm", "200rpm", "350rpm"]
swing_over_cross_slide = "150mm"
between_centers = "500mm"
[hold]
mandrels = ["16mm"]
press = "arbor press 1 ton"
[[cut]]
kind = "gear"
teeth = 24
module = "2mm"
"""
BUSH = """# A hardened bush of the press, Hollow Brook: its outside ground to size.
title = "Hardened bush"
units = "mm"
[work]
material = "o1 hardened"
blank = "bar"
outside = "40.02mm"
length = "30mm"
finished = { outside = "40mm", tolerance = "0.02mm" }
bore = { size = "16.006mm", uncertainty = "3um", measured_with = "plug gauge", made_by = "honed" }
[machine]
swing_over_cross_slide = "150mm"
between_centers = "500mm"
[hold]
mandrels = ["16mm"]
press = "arbor press 1 ton"
[[cut]]
kind = "grind"
"""
BLANK = """# A gear blank of the cider mill, Hollow Brook: already to size, only its teeth are cut.
title = "Cider mill gear"
units = "inch"
[work]
material = "mild steel"
blank = "bar"
outside = "1.625in"
length = "0.75in"
bore = { size = "0.6255in", uncertainty = "0.0001in", measured_with = "plug gauge", made_by = "reamed" }
[machine]
name = "the small lathe"
swing_over_cross_slide = "6in"
between_centers = "20in"
[hold]
mandrels = ["5/8in"]
press = "arbor press 1 ton"
[[cut]]
kind = "gear"
teeth = 24
diametral_pitch = 16
"""


def planned(text: str, *changes: tuple[str, str]) -> Plan:
    for old, new in changes:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    return plan(parse_job(text, "job.toml"), source_tables=TABLES)


def question(answer: Plan, name: str) -> Question:
    return next(q for q in answer.questions if q.id == name)


def grinding(depth: float = 5e-6, **more: float | bool) -> tuple[CutWish, ...]:
    return (CutWish("grind", depth, 3e-3, 0.25, **more),)  # type: ignore[arg-type]


def gear(module: float = 2e-3, teeth: int = 24, **more: float | int) -> tuple[CutWish, ...]:
    return (CutWish("gear", teeth=teeth, module=module, **more),)  # type: ignore[arg-type]


# Served
