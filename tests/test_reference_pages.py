"""The reference pages say what the program says, and nothing is left undescribed."""

from __future__ import annotations

import importlib.util
from pathlib import Path
from types import ModuleType

import click
import pytest
from tests.jobs_made import wheel_job

from borewright.cli.app import COMMANDS, app
from borewright.planning.questions.asked import ORDER
from borewright.reference.library import Tables, table_names
from borewright.service.planned import plan

DOCS = Path(__file__).resolve().parents[1] / "docs"


@pytest.fixture(scope="module")
def generate() -> ModuleType:
    spec = importlib.util.spec_from_file_location("generate", DOCS / "generate.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.mark.parametrize("page", ["commands.md", "tables.md", "questions.md"])
def test_a_page_is_what_the_program_would_write(page: str, generate: ModuleType) -> None:
    assert (DOCS / page).read_text(encoding="utf-8") == generate.pages()[page]


def test_every_command_has_a_section_and_every_option_a_word_of_help(generate: ModuleType) -> None:
    text = generate.pages()["commands.md"]
    for name in COMMANDS:
        assert f"## borewright {name}\n" in text
    context = click.Context(app, info_name="borewright")
    commands = [app.get_command(context, name) for name in COMMANDS]
    for command in commands:
        assert command is not None
        inner = list(command.commands.values()) if isinstance(command, click.Group) else []
        for one in (command, *inner):
            assert one.help, one.name
            wordless = [p.name for p in one.params if isinstance(p, click.Option) and not p.help]
            assert not wordless, one.name


def test_every_table_question_and_threshold_is_described(generate: ModuleType) -> None:
    pages = generate.pages()
    for name in table_names():
        assert f"\n## {name}\n" in pages["tables.md"]
    for row in Tables().table("thresholds").column("question"):
        assert f"| {row}: yes from |" in pages["questions.md"]
    for name in ORDER:
        assert f"\n## {name}\n" in pages["questions.md"]


def test_the_order_is_the_order_they_are_asked_in() -> None:
    assert tuple(q.id for q in plan(wheel_job(), source_tables=Tables()).questions) == ORDER
