"""The kinds of value that the forms of job and shelf files are made of.

Loads pydantic: imported only where a file is read.
"""

from __future__ import annotations

from typing import Annotated, Any, Final

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, model_validator
from pydantic_core import PydanticCustomError

MANY: Final = 200
TEXT: Final = 200
TABLE_TAG: Final = "«table»"
PLAIN_TAG: Final = "«plain»"


def _typed(value: object) -> object:
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        raise PydanticCustomError("a_quantity", "a quantity")
    return value


def _pair(value: object) -> object:
    if not isinstance(value, list) or len(value) != 2:
        raise PydanticCustomError("a_pair", "a pair")
    return value


def _one_line_text(value: object) -> object:
    if not isinstance(value, str) or len(value) > TEXT or not value.isprintable():
        raise PydanticCustomError("a_text", "a text")
    return value


def _yes_or_text(value: object) -> object:
    if isinstance(value, bool) or (isinstance(value, str) and value.strip()):
        return value if isinstance(value, bool) else _one_line_text(value)
    raise PydanticCustomError("yes_or_text", "true, the name of a rule, or a table")


Typed = Annotated[
    str | int | float,
    BeforeValidator(_typed),
    Field(description='A number with its unit, such as "5/8in"; a bare number needs `units`.'),
]
Pair = Annotated[
    list[Typed],
    BeforeValidator(_pair),
    Field(min_length=2, max_length=2, description="A place along the mandrel, the diameter there."),
]
Text = Annotated[str, BeforeValidator(_one_line_text), Field(max_length=TEXT)]
Flag = Annotated[bool, Field(strict=True)]
YesOrText = Annotated[
    bool | Annotated[str, Field(max_length=TEXT)],
    BeforeValidator(_yes_or_text),
    Field(description="true, or the name of a rule."),
]


class Table(BaseModel):
    """A table whose keys are all known: an unknown one carries the known ones in its error."""

    # Built when first used: a nested form is then built with its own.
    model_config = ConfigDict(extra="forbid", frozen=True, populate_by_name=False, defer_build=True)

    @model_validator(mode="before")
    @classmethod
    def _known_keys(cls, data: Any) -> Any:
        if isinstance(data, dict):
            known = [field.alias or name for name, field in cls.model_fields.items()]
            for name in data:
                if name not in known:
                    raise PydanticCustomError("unknown_key", "key", {"name": name, "known": known})
        return data


def table_or_plain(value: object) -> str:
    """The tag of a value that may be a table or a plain quantity.

    >>> table_or_plain({}), table_or_plain("16mm")
    ('«table»', '«plain»')
    """
    return TABLE_TAG if isinstance(value, dict | BaseModel) else PLAIN_TAG


def list_or_other(value: object) -> str:
    """The tag of a value that may be a list or something else.

    >>> list_or_other([]), list_or_other("none")
    ('«table»', '«plain»')
    """
    return TABLE_TAG if isinstance(value, list) else PLAIN_TAG
