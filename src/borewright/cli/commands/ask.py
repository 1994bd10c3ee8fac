"""borewright ask: six questions, an answer, a job file and a bench sheet."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from borewright.cli.out import say, warn
from borewright.errors import BorewrightError, RefusedInput

QUESTIONS = (
    ("bore", "What is the bore, and how was it measured? (such as: 0.501in by caliper)"),
    ("outside", "What is the outside diameter?"),
    ("length", "How long is it?"),
    ("material", "What is it made of?"),
    ("blank", "Bar or casting?"),
    ("shelf", "Which mandrels are on the shelf? (sizes with commas between, or none)"),
)
TRIES = 3


@click.command("ask")
@click.option("--title", default="Bored part", help="Name of the part.")
@click.option("--job", "job_file", help="Write the job file here.")
@click.option("--sheet", help="Write the bench sheet here (PDF).")
def command(title: str, job_file: str | None, sheet: str | None) -> int:
    """Six questions about a part; every one may be left empty for "don't know"."""
    answers = {name: _ask(name, words) for name, words in QUESTIONS}
    from borewright.answer.records import Verdict
    from borewright.job.write import write_job
    from borewright.reference.library import tables
    from borewright.report.terminal import plan_text
    from borewright.service.answers import Answers, job_from
    from borewright.service.files import sheet_bytes, write_whole
    from borewright.service.planned import plan

    asked = job_from(Answers(**answers), tables(), title)
    answer = plan(asked.job)
    job_path = job_file or _free_name("bored-part", ".toml")
    sheet_path = sheet or _free_name("bored-part", ".pdf")
    page = sheet_bytes(answer)
    write_job(asked.job, job_path)
    write_whole(sheet_path, page)
    for line in asked.taken:
        say(line)
    say(plan_text(answer))
    say(f"Job file: {job_path}   Bench sheet: {sheet_path}")
    return 3 if answer.verdict is Verdict.NO else 0


def _ask(name: str, words: str) -> str:
    """One answer; asked again at a terminal when it cannot be read, refused at once otherwise."""
    for _ in range(TRIES):
        answer = _line(words)
        try:
            _check(name, answer)
        except BorewrightError as trouble:
            if not sys.stdin.isatty():
                raise
            warn(str(trouble))
            continue
        return answer
    raise RefusedInput(
        name, f"{TRIES} answers that cannot be read", "an answer as in the question, or nothing"
    )


def _line(words: str) -> str:
    """What is typed; the question is shown only where somebody can read it before answering."""
    if sys.stdin.isatty():
        sys.stderr.write(words + " ")
        sys.stderr.flush()
    return sys.stdin.readline().strip()


def _check(name: str, answer: str) -> None:
    from borewright.reference.library import tables
    from borewright.service.answers import check_answer

    check_answer(name, answer, tables())


def _free_name(stem: str, ending: str) -> str:
    """A name that no file here has yet."""
    number, path = 1, Path(stem + ending)
    while path.exists():
        number += 1
        path = Path(f"{stem}-{number}{ending}")
    return str(path)
