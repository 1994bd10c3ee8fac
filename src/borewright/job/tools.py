"""What else stands in a shop besides mandrels and lathes, as its owner states it, in SI units.

None, and an empty text, mean "not stated". Nothing here is looked up or filled in.
"""

from __future__ import annotations

from dataclasses import dataclass

from borewright.quantities.si import Kilogram, Metre, Newton


@dataclass(frozen=True, slots=True)
class OwnPress:
    """A press: `kind` is a name of the table presses, `name` what the shop calls it.

    Daylight: the most room under the ram. Throat: from the ram's axis to the frame. Table slot:
    the widest opening that a mandrel can drop through.
    """

    name: str = ""
    kind: str = ""
    force: Newton | None = None
    daylight: Metre | None = None
    throat: Metre | None = None
    ram_travel: Metre | None = None
    table_slot: Metre | None = None

    @property
    def called(self) -> str:
        """What a plan calls it: its own name where its force is known, else a name the tables know.

        >>> OwnPress("the old press", "arbor press").called
        'arbor press'
        >>> OwnPress("the old press", "arbor press", 5000.0).called
        'the old press'
        """
        own_first = (self.name, self.kind) if self.force is not None else (self.kind, self.name)
        return own_first[0] or own_first[1]


@dataclass(frozen=True, slots=True)
class OwnVice:
    """The bench vice: how far it opens, how hard it squeezes."""

    opening: Metre | None = None
    force: Newton | None = None


@dataclass(frozen=True, slots=True)
class OwnHammer:
    """The hammer that drives work on or off: its mass, what its face is made of."""

    mass: Kilogram | None = None
    face: str = ""


@dataclass(frozen=True, slots=True)
class OwnDog:
    """A lathe dog (carrier), the rounds it takes, and its tail: bent, straight or unknown."""

    name: str = ""
    smallest: Metre | None = None
    largest: Metre | None = None
    tail: str = "unknown"


@dataclass(frozen=True, slots=True)
class OwnReamer:
    """A reamer: the size marked on it, and how much over (+) or under (-) it really cuts."""

    size: Metre
    name: str = ""
    cuts: Metre | None = None


@dataclass(frozen=True, slots=True)
class OwnHolding:
    """What else holds work: `kind` is a name of the table holding_tools; sizes it takes."""

    kind: str
    name: str = ""
    smallest: Metre | None = None
    largest: Metre | None = None


@dataclass(frozen=True, slots=True)
class OwnDrill:
    """A drill by its size, or a whole set of them: `by` is the step of the set, as the table says.

    `smallest` and `largest` are the ends of a set.
    """

    size: Metre | None = None
    by: str = ""
    smallest: Metre | None = None
    largest: Metre | None = None
    name: str = ""


@dataclass(frozen=True, slots=True)
class OwnBoringBar:
    """The boring bars together: the smallest bore that one goes into, and how deep they reach."""

    smallest_bore: Metre | None = None
    reach: Metre | None = None


@dataclass(frozen=True, slots=True)
class OwnGauge:
    """What measures a bore: `kind` is a name of the table gauges; half its band; its range."""

    kind: str
    uncertainty: Metre | None = None
    smallest: Metre | None = None
    largest: Metre | None = None
