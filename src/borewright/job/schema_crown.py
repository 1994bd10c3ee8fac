"""The form of `crown` in `[work.finished]`: true, a rule's name, or a table.

Loads pydantic: imported only where a file is read.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Discriminator, Tag

from borewright.job.schema_kinds import (
    PLAIN_TAG,
    TABLE_TAG,
    Table,
    Text,
    Typed,
    YesOrText,
    table_or_plain,
)


class CrownTable(Table):
    """The crown of a flat-belt pulley: its height on radius, or a rule that gives it."""

    height: Typed | None = None
    rule: Text = ""
    shape: Literal["taper", "arc"] = "taper"
    flat: Typed | None = None


CrownStated = Annotated[
    Annotated[CrownTable, Tag(TABLE_TAG)] | Annotated[YesOrText, Tag(PLAIN_TAG)],
    Discriminator(table_or_plain),
]
