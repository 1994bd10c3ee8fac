"""Job and shelf files of the invented workshop, for the tests of this room."""

from __future__ import annotations

SMALL = """[work]
material = "al-6061-t6"
bore = "0.5005in"
outside = "3in"
length = "3/4in"
"""

WHEEL = """[work]
material = "gray-iron-30"
bore = "16.01mm"
outside = "80mm"
length = "20mm"
hub = {outside = "30mm"}
web = {thickness = "6mm"}
rim = {inside = "65mm"}
"""

FULL = """title = "Cider mill line-shaft pulley"
units = "mm"

[work]
material = "gray-iron-30"
blank = "casting"
quantity = 4
outline = [
  {from = 0, to = "30mm", outside = "32mm"},
  {from = "10mm", to = "20mm", outside = "90mm", inside = "32mm"},
  {from = 0.0, to = 30, outside = "110mm", inside = "90mm"},
]
finished = {outside = "108mm", tolerance = "0.05mm"}

[work.bore]
size = "18.01mm"
uncertainty = "4um"
measured_with = "bore gauge"
made_by = "reamer"
readings = [
  {depth = "0mm", size = "18.012mm"},
  {depth = "15mm", size = "18.006mm", direction = "across the keyway"},
]

[machine]
name = "the small lathe"
speeds = ["100 rpm", "2 rev/s"]
feeds = ["0.1mm", "0.004in"]
swing_over_cross_slide = "120mm"
between_centres = "500mm"
power = "550W"

[hold]
use = "plain taper mandrel"
press = "arbor press"
press_force = "1000kgf"
lubrication = "dry"
pressed_before = true
mandrels = [
  {size = "18mm", name = "the marked one", small_end = "17.985mm", large_end = "18.04mm", \
taper = "1:2000", ground_length = "110mm", overall_length = "150mm"},
  "1/2in",
]

[[cut]]
kind = "turn"
depth = "0.5mm"
feed = "0.1mm/rev"
speed = "30m/min"
edge_angle = "90deg"
nose_radius = "0.4mm"

[[cut]]
kind = "face"
speed = "120rpm"
"""

SHELF = """units = "inch"

[[mandrel]]
size = "1/2in"

[[mandrel]]
size = "16mm"
name = "long one"

[press]
name = "bench press"
force = "5kN"

[machine]
name = "the larger lathe"
speeds = [45, 75, 120, 200]
feeds = [0.002, 0.004]
swing_over_cross_slide = 7.5
between_centers = 24
power = 1.5
"""

VALID = {"small": SMALL, "wheel": WHEEL, "full": FULL}
