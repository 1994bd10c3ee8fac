"""The list of mutants stays in step with the source: each break still has its one place."""

from __future__ import annotations

import ast

import pytest
from tests.mutants import MUTANTS, SOURCE, TRUTHS, Mutant, broken

ROOM = SOURCE / "borewright"


@pytest.mark.parametrize("mutant", MUTANTS, ids=[m.name for m in MUTANTS])
def test_the_break_has_exactly_one_place_and_still_reads_as_python(mutant: Mutant) -> None:
    right = (ROOM / mutant.file).read_text(encoding="utf-8")
    wrong = broken(right, mutant)
    assert ast.dump(ast.parse(wrong)) != ast.dump(ast.parse(right))


def test_a_break_that_has_lost_its_place_is_told() -> None:
    lost = Mutant("lost", "mechanics/press.py", "not there", "nor there")
    with pytest.raises(ValueError, match=r"lost: mechanics/press\.py holds 'not there' 0 times"):
        broken("nothing", lost)


def test_every_mutant_has_its_own_name() -> None:
    assert len({m.name for m in MUTANTS}) == len(MUTANTS)


def test_the_truths_asked_are_folders_of_tests() -> None:
    for name in TRUTHS:
        assert list((SOURCE.parent / "tests" / name).glob("test_*.py")), name
