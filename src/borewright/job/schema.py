"""The form of a job file and of a shelf file, as pydantic models: keys, nesting, kinds of value.

A quantity stays as typed here (text or bare number); `build` reads it. Imported only when a file is
read, because pydantic is heavier than the commands that need no file.
"""

from __future__ import annotations

from typing import Annotated, Any, Final, Literal

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Discriminator,
    Field,
    Tag,
    model_validator,
)
from pydantic_core import PydanticCustomError

MANY: Final = 200
MANY_CUTS: Final = 12
"""As many as one sheet has room for."""
TEXT: Final = 200
TABLE_TAG: Final = "«table»"
PLAIN_TAG: Final = "«plain»"


def _typed(value: object) -> object:
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        raise PydanticCustomError("a_quantity", "a quantity")
    return value


def _one_line_text(value: object) -> object:
    if not isinstance(value, str) or len(value) > TEXT or not value.isprintable():
        raise PydanticCustomError("a_text", "a text")
    return value


def _shape(value: object) -> str:
    return TABLE_TAG if isinstance(value, dict | BaseModel) else PLAIN_TAG


Typed = Annotated[
    str | int | float,
    BeforeValidator(_typed),
    Field(description='A number with its unit, such as "5/8in"; a bare number needs `units`.'),
]
Text = Annotated[str, BeforeValidator(_one_line_text), Field(max_length=TEXT)]


class Table(BaseModel):
    """A table whose keys are all known: an unknown one carries the known ones in its error."""

    model_config = ConfigDict(extra="forbid", frozen=True, populate_by_name=False)

    @model_validator(mode="before")
    @classmethod
    def _known_keys(cls, data: Any) -> Any:
        if isinstance(data, dict):
            known = [field.alias or name for name, field in cls.model_fields.items()]
            for name in data:
                if name not in known:
                    raise PydanticCustomError("unknown_key", "key", {"name": name, "known": known})
        return data


class ReadingTable(Table):
    """One bore reading."""

    depth: Typed
    size: Typed
    direction: Text = ""


class BoreTable(Table):
    """The hole. Without `size`, the smallest reading is taken."""

    size: Typed | None = None
    uncertainty: Typed | None = None
    measured_with: Text = "unknown"
    made_by: Text = "unknown"
    readings: Annotated[list[ReadingTable], Field(max_length=MANY)] = []


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


class FinishedTable(Table):
    """The size wanted."""

    outside: Typed | None = None
    tolerance: Typed | None = None


class WorkTable(Table):
    """The part: `outside` and `length` (with hub, web, rim), or `outline`."""

    material: Text
    bore: Annotated[
        Annotated[BoreTable, Tag(TABLE_TAG)] | Annotated[Typed, Tag(PLAIN_TAG)],
        Discriminator(_shape),
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


class MachineTable(Table):
    """The lathe, as far as known. Both spellings of centre are read."""

    name: Text = ""
    speeds: Annotated[list[Typed], Field(max_length=MANY)] = []
    feeds: Annotated[list[Typed], Field(max_length=MANY)] = []
    swing_over_cross_slide: Typed | None = None
    between_centers: Typed | None = None
    between_centres: Typed | None = None
    power: Typed | None = None


class MandrelTable(Table):
    """One plain taper mandrel: the size on it, and what else was measured."""

    size: Typed
    name: Text = ""
    small_end: Typed | None = None
    large_end: Typed | None = None
    taper: Typed | None = None
    ground_length: Typed | None = None
    overall_length: Typed | None = None


MandrelEntry = Annotated[
    Annotated[MandrelTable, Tag(TABLE_TAG)] | Annotated[Typed, Tag(PLAIN_TAG)],
    Discriminator(_shape),
]


def _list_or_word(value: object) -> str:
    return TABLE_TAG if isinstance(value, list) else PLAIN_TAG


Mandrels = Annotated[
    Annotated[list[MandrelEntry], Field(max_length=MANY), Tag(TABLE_TAG)]
    | Annotated[Literal["unknown", "none"], Tag(PLAIN_TAG)],
    Discriminator(_list_or_word),
]


class HoldTable(Table):
    """How it is to be held, and with what."""

    use: Text = "any"
    mandrels: Mandrels = "unknown"
    press: Text = ""
    press_force: Typed | None = None
    lubrication: Literal["oiled", "dry"] = "oiled"
    pressed_before: bool = False


class CutTable(Table):
    """A cut that is insisted on."""

    kind: Literal["turn", "face"] = "turn"
    depth: Typed | None = None
    feed: Typed | None = None
    speed: Typed | None = None
    edge_angle: Typed | None = None
    nose_radius: Typed | None = None


class JobTable(Table):
    """A job file."""

    title: Text = ""
    units: Literal["inch", "mm"] | None = None
    work: WorkTable
    machine: MachineTable = MachineTable()
    hold: HoldTable = HoldTable()
    cut: Annotated[list[CutTable], Field(max_length=MANY_CUTS)] = []


class PressTable(Table):
    """The press."""

    name: Text = ""
    force: Typed | None = None


class ShelfTable(Table):
    """A shelf file: what the shop owns."""

    units: Literal["inch", "mm"] | None = None
    mandrel: Mandrels = "unknown"
    press: PressTable = PressTable()
    machine: MachineTable = MachineTable()


def job_schema() -> dict[str, Any]:
    """The JSON Schema of a job file's tables, as published in `docs/schemas/job.schema.json`.

    >>> job_schema()["required"]
    ['work']
    """
    return JobTable.model_json_schema(by_alias=True)


def shelf_schema() -> dict[str, Any]:
    """The JSON Schema of a shelf file's tables.

    >>> sorted(shelf_schema()["properties"])
    ['machine', 'mandrel', 'press', 'units']
    """
    return ShelfTable.model_json_schema(by_alias=True)
