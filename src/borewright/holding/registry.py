"""The ways of holding. A new way is one file, one line here and one row in each of two tables:
`ways` (what it is called) and `setup_minutes`.

The plain taper mandrel is a way too, but a deeper one: how far to press is chosen against the cuts,
so the plan asks `plain_taper` itself.
"""

from borewright.holding.way import Way
from borewright.holding.ways.bonded import Bonded
from borewright.holding.ways.collet_stub import ColletStub
from borewright.holding.ways.cone_centers import ConeCenters
from borewright.holding.ways.endwise import Endwise
from borewright.holding.ways.expanding import Expanding
from borewright.holding.ways.faceplate import Faceplate
from borewright.holding.ways.four_jaw import FourJaw
from borewright.holding.ways.gang import Gang
from borewright.holding.ways.nut_mandrel import NutMandrel
from borewright.holding.ways.one_chucking import OneChucking
from borewright.holding.ways.soft_jaws import SoftJaws
from borewright.holding.ways.soft_mandrel import SoftMandrel
from borewright.holding.ways.spigot_plate import SpigotPlate
from borewright.holding.ways.threaded import Threaded
from borewright.holding.ways.three_jaw import ThreeJaw
from borewright.holding.ways.turned_stub import TurnedStub
from borewright.holding.ways.warm_fit import WarmFit

PLAIN_TAPER = "plain-taper"
"""Id of the way whose setting the plan chooses."""

_ALL: tuple[Way, ...] = (
    OneChucking(),
    TurnedStub(),
    ColletStub(),
    SoftMandrel(),
    Expanding(),
    NutMandrel(),
    Gang(),
    Threaded(),
    ConeCenters(),
    SpigotPlate(),
    Faceplate(),
    FourJaw(),
    SoftJaws(),
    ThreeJaw(),
    Endwise(),
    Bonded(),
    WarmFit(),
)

WAYS: dict[str, Way] = {way.id: way for way in _ALL}
"""Every other way that is computed, by id."""
