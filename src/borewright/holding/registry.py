"""The ways of holding. A new way is one file, one line here and one row in each of two tables:
`ways` (what it is called) and `setup_minutes`.

The plain taper mandrel is a way too, but a deeper one: how far to press is chosen against the cuts,
so the plan asks `plain_taper` itself.
"""

from borewright.holding.way import Way
from borewright.holding.ways.cone_centers import ConeCenters
from borewright.holding.ways.faceplate import Faceplate
from borewright.holding.ways.gang import Gang
from borewright.holding.ways.nut_mandrel import NutMandrel
from borewright.holding.ways.spigot_plate import SpigotPlate
from borewright.holding.ways.threaded import Threaded
from borewright.holding.ways.turned_stub import TurnedStub

PLAIN_TAPER = "plain-taper"
"""Id of the way whose setting the plan chooses."""

WAYS: dict[str, Way] = {
    way.id: way
    for way in (
        TurnedStub(),
        NutMandrel(),
        Gang(),
        SpigotPlate(),
        Faceplate(),
        ConeCenters(),
        Threaded(),
    )
}
"""Every other way that is computed, by id."""
