"""The form of a job file and of a shelf file, as pydantic models: keys, nesting, kinds of value.

A quantity stays as typed here (text or bare number); `build` reads it. Imported only when a file is
read, because pydantic is heavier than the commands that need no file.
"""

from __future__ import annotations

from typing import Annotated, Any, Final, Literal

from pydantic import Discriminator, Field, Tag

from borewright.job.schema_crown import CrownStated
from borewright.job.schema_kinds import (
    MANY,
    PLAIN_TAG,
    TABLE_TAG,
    Flag,
    Pair,
    Table,
    Text,
    Typed,
    list_or_other,
    table_or_plain,
)
from borewright.job.schema_tools import (
    BoringBarTable,
    DogTable,
    DrillTable,
    GaugeTable,
    HammerTable,
    HoldingTable,
    PressTable,
    ReamerTable,
    ViceTable,
)

MANY_CUTS: Final = 6
"""As many as one sheet has room for."""


MANY_FORMS: Final = 6
"""Steps, or grooves, of one part: more is another drawing."""


class ReadingTable(Table):
    """One bore reading."""

    depth: Typed
    size: Typed
    direction: Text = ""


class BoreTable(Table):
    """The hole. Without `size`, the smallest reading is taken; or its limits, `low` and `high`.

    `size` may be a hole class of ISO 286, such as "15 H7". `thread`, such as "1in x 8" or
    "M20 x 1.5" (LH behind it: left-hand), is one cut in it.
    """

    size: Typed | None = None
    low: Typed | None = None
    high: Typed | None = None
    uncertainty: Typed | None = None
    measured_with: Text = "unknown"
    made_by: Text = "unknown"
    thread: Text = ""
    readings: list[ReadingTable] = Field(default_factory=list, max_length=MANY)


class RingTable(Table):
    """One ring of an outline, along the work from face A."""

    from_: Typed = Field(alias="from")
    to: Typed
    outside: Typed
    inside: Typed | None = None


class HubTable(Table):
    """The hub: whole length unless `from` and `to` say otherwise."""

    outside: Typed
    from_: Typed | None = Field(default=None, alias="from")
    to: Typed | None = None


class WebTable(Table):
    """The web between hub and rim: a thickness in the middle, or `from` and `to`."""

    thickness: Typed | None = None
    from_: Typed | None = Field(default=None, alias="from")
    to: Typed | None = None


class RimTable(Table):
    """The rim: whole length unless `from` and `to` say otherwise."""

    inside: Typed
    from_: Typed | None = Field(default=None, alias="from")
    to: Typed | None = None


class KeywayTable(Table):
    """A keyway along the bore; the depth counts from the bore's surface."""

    width: Typed
    depth: Typed


class CrossHoleTable(Table):
    """A radial hole through the hub; `at`: face A to its middle."""

    diameter: Typed
    at: Typed | None = None


class SpokesTable(Table):
    """Spokes between hub and rim, in place of a web or where the web says they stand."""

    number: Annotated[int, Field(strict=True, ge=2, le=60)]
    width: Typed
    thickness: Typed | None = None


class ChamferTable(Table):
    """A chamfer at both ends, its leg at 45 degrees; the end that is left out has none."""

    a: Typed | None = None
    b: Typed | None = None


ChamferStated = Annotated[
    Annotated[ChamferTable, Tag(TABLE_TAG)] | Annotated[Typed, Tag(PLAIN_TAG)],
    Discriminator(table_or_plain),
]


class StepTable(Table):
    """A stretch turned to a smaller diameter, from face A as faced."""

    from_: Typed = Field(alias="from")
    to: Typed
    outside: Typed


class GrooveTable(Table):
    """A groove down to the diameter `bottom`, from face A as faced."""

    from_: Typed = Field(alias="from")
    to: Typed
    bottom: Typed


class FinishedTable(Table):
    """What is wanted: sizes, the form of the outside, and how fast it will run in service."""

    outside: Typed | None = None
    tolerance: Typed | None = None
    runout: Typed | None = None
    length: Typed | None = None
    roughness: Typed | None = None
    steps: list[StepTable] = Field(default_factory=list, max_length=MANY_FORMS)
    grooves: list[GrooveTable] = Field(default_factory=list, max_length=MANY_FORMS)
    edges: Typed | None = None
    chamfer: ChamferStated | None = None
    crown: CrownStated | None = None
    service_speed: Typed | None = None


class WorkTable(Table):
    """The part: `outside` and `length` (with hub, web or spokes, rim), or `outline`."""

    material: Text
    bore: Annotated[
        Annotated[BoreTable, Tag(TABLE_TAG)] | Annotated[Typed, Tag(PLAIN_TAG)],
        Discriminator(table_or_plain),
    ]
    blank: Literal["bar", "casting", "unknown"] = "unknown"
    quantity: Annotated[int, Field(strict=True, ge=1, le=10_000)] = 1
    outside: Typed | None = None
    length: Typed | None = None
    hub: HubTable | None = None
    web: WebTable | None = None
    rim: RimTable | None = None
    outline: Annotated[list[RingTable], Field(min_length=1, max_length=MANY)] | None = None
    finished: FinishedTable = FinishedTable()
    keyway: KeywayTable | None = None
    cross_hole: CrossHoleTable | None = None
    spokes: SpokesTable | None = None
    flaws: Literal["none", "suspected", "seen", "unknown"] = "unknown"
    casting_runout: Typed | None = None
    chamfer: ChamferStated | None = None


class MachineTable(Table):
    """The lathe, as far as known. Both spellings of centre are read."""

    name: Text = ""
    speeds: list[Typed] = Field(default_factory=list, max_length=MANY)
    feeds: list[Typed] = Field(default_factory=list, max_length=MANY)
    swing_over_cross_slide: Typed | None = None
    between_centers: Typed | None = None
    between_centres: Typed | None = None
    power: Typed | None = None
    power_by_gear: list[Typed] = Field(default_factory=list, max_length=MANY)
    dial: Literal["radius", "diameter", "unknown"] = "unknown"


class LatheTable(MachineTable):
    """One lathe of several; the one to use says so, else it is the first."""

    use: Flag = False


class MandrelTable(Table):
    """One plain taper mandrel: the size on it, and what else was measured.

    `at` are measured diameters: each a place from one end of the ground length (the same end for
    all) and the diameter there; `uncertainty` is half the band of those diameters. `hole` is the
    mandrel's own bore, from end to end.
    """

    size: Typed
    name: Text = ""
    small_end: Typed | None = None
    large_end: Typed | None = None
    taper: Typed | None = None
    ground_length: Typed | None = None
    overall_length: Typed | None = None
    marks: Text = ""
    hardness: Literal["hard", "soft", "unknown"] = "unknown"
    flats: Literal["small", "large", "both", "none", "unknown"] = "unknown"
    condition: Text = ""
    place: Text = ""
    at: list[Pair] = Field(default_factory=list, max_length=MANY)
    uncertainty: Typed | None = None
    hole: Typed | None = None


MandrelEntry = Annotated[
    Annotated[MandrelTable, Tag(TABLE_TAG)] | Annotated[Typed, Tag(PLAIN_TAG)],
    Discriminator(table_or_plain),
]


Mandrels = Annotated[
    Annotated[list[MandrelEntry], Field(max_length=MANY), Tag(TABLE_TAG)]
    | Annotated[Literal["unknown", "none"], Tag(PLAIN_TAG)],
    Discriminator(list_or_other),
]


class HoldTable(Table):
    """How it is to be held, and with what."""

    use: Text = "any"
    mandrels: Mandrels = "unknown"
    press: Text = ""
    press_force: Typed | None = None
    lubrication: Literal["oiled", "dry"] = "oiled"
    driven_by: Literal["dog", "collet", "three-jaw"] = "dog"
    pressed_before: Flag = False
    have: list[Text] = Field(default_factory=list, max_length=MANY)
    have_not: list[Text] = Field(default_factory=list, max_length=MANY)


class CutTable(Table):
    """A cut that is insisted on; which keys go with which kind is checked in `build_cuts`."""

    kind: Literal["turn", "face", "grind", "gear"] = "turn"
    depth: Typed | None = None
    feed: Typed | None = None
    speed: Typed | None = None
    edge_angle: Typed | None = None
    nose_radius: Typed | None = None
    wheel_speed: Typed | None = None
    coolant: Flag | None = None
    teeth: Annotated[int, Field(strict=True, ge=6, le=400)] | None = None
    module: Typed | None = None
    diametral_pitch: Annotated[float, Field(strict=True, ge=2, le=120)] | None = None
    cutter_diameter: Typed | None = None
    cutter_teeth: Annotated[int, Field(strict=True, ge=4, le=60)] | None = None


class JobTable(Table):
    """A job file."""

    title: Text = ""
    units: Literal["inch", "mm"] | None = None
    work: WorkTable
    machine: MachineTable = MachineTable()
    hold: HoldTable = HoldTable()
    cut: list[CutTable] = Field(default_factory=list, max_length=MANY_CUTS)


Presses = Annotated[
    Annotated[list[PressTable], Field(max_length=MANY), Tag(TABLE_TAG)]
    | Annotated[PressTable, Tag(PLAIN_TAG)],
    Discriminator(list_or_other),
]


class ShelfTable(Table):
    """A shelf file: what the shop owns."""

    units: Literal["inch", "mm"] | None = None
    mandrel: Mandrels = "unknown"
    press: Presses = PressTable()
    machine: MachineTable | None = None
    lathe: list[LatheTable] = Field(default_factory=list, max_length=MANY)
    vice: ViceTable | None = None
    hammer: HammerTable | None = None
    dog: list[DogTable] = Field(default_factory=list, max_length=MANY)
    reamer: list[ReamerTable] = Field(default_factory=list, max_length=MANY)
    gauge: list[GaugeTable] = Field(default_factory=list, max_length=MANY)
    holding: list[HoldingTable] = Field(default_factory=list, max_length=MANY)
    have_not: list[Text] = Field(default_factory=list, max_length=MANY)
    drill: list[DrillTable] = Field(default_factory=list, max_length=MANY)
    boring_bar: BoringBarTable | None = None


def job_schema() -> dict[str, Any]:
    """The JSON Schema of a job file's tables, as published in `docs/schemas/job.schema.json`.

    >>> job_schema()["required"]
    ['work']
    """
    return JobTable.model_json_schema(by_alias=True)


def shelf_schema() -> dict[str, Any]:
    """The JSON Schema of a shelf file's tables.

    >>> sorted(shelf_schema()["properties"])[:5]
    ['boring_bar', 'dog', 'drill', 'gauge', 'hammer']
    """
    return ShelfTable.model_json_schema(by_alias=True)
