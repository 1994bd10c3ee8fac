"""What the work and the mandrel are made of."""

from __future__ import annotations

from dataclasses import dataclass

from borewright.reference.table import Row


@dataclass(frozen=True, slots=True)
class Material:
    """One material. `behaviour` is brittle (cracks) or ductile (yields); `use` is work or mandrel.

    `family` finds the friction, `cut_class` the everyday cuts, `cautions` the ids of its hazards.
    """

    id: str
    name: str
    names: tuple[str, ...]
    family: str
    behaviour: str
    cut_class: str
    use: str
    cautions: tuple[str, ...]
    source: str
    note: str = ""

    @property
    def brittle(self) -> bool:
        """Whether it is judged by tensile strength rather than by yield."""
        return self.behaviour == "brittle"


@dataclass(frozen=True, slots=True)
class BroadMaterial:
    """A word that leaves open which material it is, and the ids taken: from bar, and otherwise."""

    word: str
    bar: str
    other: str
    unsaid: str
    source: str

    def taken(self, blank: str) -> str:
        """The id taken for this blank: bar, casting or unknown."""
        return self.bar if blank == "bar" else self.other


def broad_material_of(row: Row) -> BroadMaterial:
    """The record in a row of the table `broad_materials`."""
    return BroadMaterial(
        word=row.text("id"),
        bar=row.text("bar"),
        other=row.text("other"),
        unsaid=row.text("unsaid"),
        source=row.text("source"),
    )


def material_of(row: Row) -> Material:
    """The record in a row of the table `materials`."""
    return Material(
        id=row.text("id"),
        name=row.text("name"),
        names=row.names("names"),
        family=row.text("family"),
        behaviour=row.text("behaviour"),
        cut_class=row.text("cut_class"),
        use=row.text("use"),
        cautions=row.names("cautions"),
        source=row.text("source"),
        note=row.text("note"),
    )
