"""The error classes. See the package docstring for the tree."""

from __future__ import annotations

from difflib import get_close_matches


class BorewrightError(Exception):
    """The root: catching it catches every refusal borewright makes on purpose."""


class RefusedInput(BorewrightError, ValueError):
    """Input that cannot be used.

    >>> str(RefusedInput("--travel", "-3 mm", "a length above zero"))
    '--travel: found -3 mm; allowed is a length above zero'
    """

    def __init__(self, where: str, found: str, allowed: str) -> None:
        super().__init__(where, found, allowed)
        self.where = where
        self.found = found
        self.allowed = allowed

    def __str__(self) -> str:
        return one_line(f"{self.where}: found {self.found}; allowed is {self.allowed}")


class UnreadableQuantity(RefusedInput):
    """A quantity that does not read as one."""


class UnreadableFile(RefusedInput):
    """A file that cannot be read as what it should be."""


class UnknownName(RefusedInput, KeyError):
    """A name that is not in the list, with the nearest one that is.

    >>> str(UnknownName("material", "gray-irn-30", ("gray-iron-30", "brass-c360")))
    "material: found 'gray-irn-30'; allowed is 'gray-iron-30' or one of: brass-c360, gray-iron-30"
    """

    def __init__(self, where: str, name: str, known: tuple[str, ...]) -> None:
        RefusedInput.__init__(self, where, repr(name), _choices(name, known))
        self.args = (where, name, known)
        self.name = name
        self.known = known

    __str__ = RefusedInput.__str__


class OutsideModel(BorewrightError, ValueError):
    """A model asked where it means nothing: which quantity, its value, the allowed range."""

    def __init__(self, quantity: str, value: object, allowed: str) -> None:
        super().__init__(quantity, value, allowed)
        self.quantity = quantity
        self.value = value
        self.allowed = allowed

    def __str__(self) -> str:
        return one_line(f"{self.quantity} is {self.value}; allowed is {self.allowed}")


def one_line(text: str) -> str:
    """Fold any text to one printable line, so that a refusal is never more than one."""
    folded = " ".join(str(text).split())
    return "".join(c if c.isprintable() else "?" for c in folded)


def _choices(name: str, known: tuple[str, ...]) -> str:
    ordered = ", ".join(sorted(known)[:40])
    near = get_close_matches(name.lower(), known, n=1, cutoff=0.5)
    return f"{near[0]!r} or one of: {ordered}" if near else f"one of: {ordered}"
