"""Everything borewright can refuse, in one tree.

    BorewrightError
    ├── RefusedInput        what was typed cannot be used: where, what was found, what is allowed
    │   ├── UnreadableQuantity   a length, force, speed … that does not read as one
    │   ├── UnknownName          a material, table, key or way that is not known (with the nearest)
    │   └── UnreadableFile       a file that is missing, not text, or not the format it should be
    └── OutsideModel        a model was asked outside the range where it means anything

Each error holds facts, survives pickling, and becomes one sentence with `str`.
Imports nothing of borewright.
"""

from borewright.errors.tree import (
    BorewrightError,
    OutsideModel,
    RefusedInput,
    UnknownName,
    UnreadableFile,
    UnreadableQuantity,
)

__all__ = [
    "BorewrightError",
    "OutsideModel",
    "RefusedInput",
    "UnknownName",
    "UnreadableFile",
    "UnreadableQuantity",
]
