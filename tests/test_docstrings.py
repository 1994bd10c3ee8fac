"""Every example in a docstring runs and prints what it says."""

from __future__ import annotations

import doctest
import pkgutil
from importlib import import_module
from types import ModuleType

import pytest

import borewright

NAMES = ["borewright", *(m.name for m in pkgutil.walk_packages(borewright.__path__, "borewright."))]
MODULES = [name for name in NAMES if not name.endswith("__main__")]


def examples(module: ModuleType) -> list[doctest.DocTest]:
    return [t for t in doctest.DocTestFinder(exclude_empty=True).find(module) if t.examples]


@pytest.mark.parametrize("name", MODULES)
def test_the_examples_print_what_they_say(name: str) -> None:
    said: list[str] = []
    runner = doctest.DocTestRunner(verbose=False)
    for example in examples(import_module(name)):
        runner.run(example, out=said.append)
    assert runner.summarize(verbose=False).failed == 0, "".join(said)


def test_a_wrong_example_would_be_told() -> None:
    module = ModuleType("wrong", "\n>>> 1 + 1\n3\n")
    (example,) = examples(module)
    assert doctest.DocTestRunner(verbose=False).run(example, out=lambda text: None).failed == 1


def test_the_models_teach_by_example() -> None:
    """Most files of models hold at least one example; those that do not hold records or names."""
    models = [n for n in MODULES if n.startswith("borewright.mechanics.")]
    shown = [n for n in models if examples(import_module(n))]
    assert len(shown) > len(models) * 0.7
