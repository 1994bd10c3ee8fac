"""Out of true: whatever a person can say of it has a cause, and a check that can be made at the lathe."""

from __future__ import annotations

import itertools
import re

import pytest

from borewright.errors import UnknownName
from borewright.reference.library import Tables
from borewright.reference.symptoms import HIGHS, SHAPES, WHEN, WHERE
from borewright.service.runout_find import MOST, find_causes

TABLES = Tables()
ROWS = TABLES.table("symptoms").rows
SAID = [
    said
    for said in itertools.product((None, *WHERE), (None, *HIGHS, *SHAPES), (None, *WHEN))
    if any(said)
]
LAST_RESORT = "reading"
AT_THE_LATHE = re.compile(
    r"indicator|pencil|micrometer|rule|lamp|lens|blue|wipe|feeler|straightedge|by hand|light cut|"
    r"light pass|second pass|mark|tap |read the|speed|shorten|measure|key out",
    re.IGNORECASE,
)
NOT_THERE = re.compile(r"laborator|x-ray|send |coordinate|analys|spectr|software", re.IGNORECASE)


@pytest.mark.parametrize("said", SAID, ids=lambda s: "-".join(word or "any" for word in s))
def test_every_combination_a_person_can_state_has_a_cause_and_a_next_check(
    said: tuple[str | None, str | None, str | None],
) -> None:
    found = find_causes(*said, TABLES)
    causes = [c for c in found if c.id != LAST_RESORT]
    assert causes, "nothing but the reading itself"
    assert found[-1].id == LAST_RESORT
    assert len(found) <= MOST
    assert all(c.check and c.mend for c in found)


@pytest.mark.parametrize("row", ROWS, ids=lambda r: r.text("id"))
def test_every_check_can_be_made_at_the_machine(row) -> None:  # type: ignore[no-untyped-def]
    assert AT_THE_LATHE.search(row.text("check"))
    assert not NOT_THERE.search(row.text("check") + row.text("mend"))


@pytest.mark.parametrize("row", ROWS, ids=lambda r: r.text("id"))
def test_every_word_of_a_row_is_one_that_can_be_asked(row) -> None:  # type: ignore[no-untyped-def]
    assert set(row.names("where")) <= set(WHERE)
    assert set(row.names("shows")) <= {*HIGHS, *SHAPES, "any"}
    assert set(row.names("when")) <= set(WHEN)
    assert row.text("source") == "practice"


@pytest.mark.parametrize("row", ROWS, ids=lambda r: r.text("id"))
def test_every_cause_is_found_by_what_its_row_says(row) -> None:  # type: ignore[no-untyped-def]
    """Whole, not cut to the first few: a cause nobody can reach is not in the table."""
    for where, shows, when in itertools.product(
        row.names("where"), row.names("shows"), row.names("when")
    ):
        asked = None if shows == "any" else shows
        assert row.text("id") in {c.id for c in TABLES.causes(where, asked, when)}


def test_saying_more_never_brings_up_another_cause() -> None:
    for where, shows, when in SAID:
        all_three = {c.id for c in TABLES.causes(where, shows, when)}
        for less in ((None, shows, when), (where, None, when), (where, shows, None)):
            assert all_three <= {c.id for c in TABLES.causes(*less)}


def test_a_word_that_is_not_in_the_table_is_refused() -> None:
    with pytest.raises(UnknownName, match="after-release"):
        TABLES.causes("rim", "3", "afterwards")


@pytest.mark.parametrize(
    ("said", "first"),
    [
        (("rim", "1", "while-held"), "dirty-center"),
        (("rim", "2", "after-release"), "two-jaws"),
        (("rim", "3", "after-release"), "three-jaws"),
        (("rim", "many", "after-release"), "spokes"),
        (("rim", "taper", "while-held"), "tailstock-off"),
        (("rim", "barrel", "while-held"), "bar-bends"),
        (("face", "taper", "while-held"), "cross-slide"),
        (("rim", "chatter", "while-held"), "tool-rings"),
        (("face", "1", "on-its-shaft"), "screw-tilts"),
    ],
)
def test_what_the_trade_looks_at_first_is_said_first(
    said: tuple[str, str, str], first: str
) -> None:
    """Common practice, no source."""
    assert TABLES.causes(*said)[0].id == first
