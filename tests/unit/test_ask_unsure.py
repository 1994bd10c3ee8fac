"""`ask` with answers piped in: every way of not knowing is an assumption, a wrong word names its line."""

from __future__ import annotations

import io
import sys
from pathlib import Path

import pytest
from tests.cli_run import ran, refused

from borewright.reference.library import tables
from borewright.service.answers import Answers, check_answer, is_unsure, job_from

NOBODY_KNOWS = [
    "", "   ", "?", "??", "-", "don't know", "Dont know", "I don't know", "I don’t know.", "dunno",
    "DUNNO!", "no idea", "I have no idea", "skip", "none", "unknown", "not sure", "I am not sure",
    "n/a", "nothing", "can't say",
]  # fmt: skip
QUESTIONS = ("bore", "outside", "length", "material", "blank", "shelf")


@pytest.fixture(autouse=True)
def _in_a_folder_of_its_own(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)


@pytest.mark.parametrize("word", NOBODY_KNOWS)
def test_every_way_of_not_knowing_skips_a_question(word: str) -> None:
    assert is_unsure(word)
    for question in QUESTIONS:
        check_answer(question, word, tables())
    five = (word,) * 5
    assert job_from(Answers(*five), tables()) == job_from(Answers(), tables())


@pytest.mark.parametrize("word", ["don't know", "dunno", "?", "none", "no idea", "skip", ""])
def test_piped_in_it_is_an_assumption_that_is_said(word: str) -> None:
    done = ran("ask", stdin=f"{word}\n" * 5 + "\n")
    assert (done.code in (0, 3), done.err) == (True, "")
    for said in ("Bore not stated", "Outside not stated", "Length not stated", "Material not stated",
                 "Bar or casting not stated"):  # fmt: skip
        assert said in done.out


@pytest.mark.parametrize(
    ("word", "stated"), [("none", True), ("no", True), ("dunno", False), ("?", False)]
)
def test_no_mandrels_is_not_the_same_as_not_knowing(word: str, stated: bool) -> None:
    assert job_from(Answers(shelf=word), tables()).job.shelf.stated is stated


@pytest.mark.parametrize("word", ["steel", "16mm", "no. 3 mandrel", "nothing special", "?16mm"])
def test_an_answer_is_not_taken_for_not_knowing(word: str) -> None:
    assert not is_unsure(word)


GOOD = ["16.01mm by caliper", "60mm", "20mm", "brass", "bar", "16mm"]


@pytest.mark.parametrize(
    ("number", "wrong", "says"),
    [
        (1, "wide", "question 1 on line 1, bore: found"),
        (1, "16mm by eyesight", "question 1 on line 1, measured with: found 'eyesight'"),
        (2, "60", "question 2 on line 2, outside: found 60, which could be"),
        (2, "10mm", "question 2 on line 2, outside: found 10 mm"),
        (3, "long", "question 3 on line 3, length: found"),
        (4, "cheese", "question 4 on line 4, material: found 'cheese'; allowed is"),
        (5, "forging", "question 5 on line 5, bar or casting: found 'forging'; allowed is bar"),
        (6, "16", "question 6 on line 6, mandrels: found 16, which could be"),
        (6, "a few", "question 6 on line 6, mandrels: found"),
        (3, "9" * 500, "question 3, an answer: found 501 characters"),
    ],
)
def test_a_wrong_word_is_refused_with_its_question_and_line(
    number: int, wrong: str, says: str
) -> None:
    lines = [wrong if n == number else line for n, line in enumerate(GOOD, 1)]
    line = refused("ask", stdin="\n".join(lines) + "\n")
    assert says in line
    assert not list(Path.cwd().iterdir())


@pytest.mark.parametrize(("lines", "after"), [(0, "0 answers"), (1, "1 answer"), (5, "5 answers")])
def test_too_few_lines_are_refused_with_how_many_were_read(lines: int, after: str) -> None:
    line = refused("ask", stdin="".join(f"{answer}\n" for answer in GOOD[:lines]))
    assert f"question {lines + 1}: found the end of the input after {after}" in line


class Terminal(io.StringIO):
    """Typed lines at what says it is a terminal."""

    def isatty(self) -> bool:
        return True


def typed(monkeypatch: pytest.MonkeyPatch, *lines: str) -> tuple[int, str]:
    from borewright.cli.app import run

    shown = io.StringIO()
    monkeypatch.setattr(sys, "stdin", Terminal("".join(f"{line}\n" for line in lines)))
    monkeypatch.setattr(sys, "stderr", shown)
    return run(["ask"]), shown.getvalue()


def test_at_a_terminal_a_wrong_word_is_asked_again(monkeypatch: pytest.MonkeyPatch) -> None:
    code, shown = typed(monkeypatch, *GOOD[:3], "cheese", *GOOD[3:])
    assert code in (0, 3)
    assert shown.count("What is it made of?") == 2
    assert "material: found 'cheese'" in shown


def test_at_a_terminal_three_wrong_words_are_enough(monkeypatch: pytest.MonkeyPatch) -> None:
    code, shown = typed(monkeypatch, "wide", "wider", "widest", *GOOD)
    assert code == 2
    assert "3 answers that cannot be read" in shown
