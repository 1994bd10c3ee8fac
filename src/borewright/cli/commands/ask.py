"""borewright ask: six questions, an answer, a job file and a bench sheet."""

from __future__ import annotations

import sys

import click

from borewright.cli.out import say, warn
from borewright.errors import RefusedInput

QUESTIONS = (
    ("bore", "What is the bore, and how was it measured? (such as: 0.501in by caliper)"),
    ("outside", "What is the outside diameter?"),
    ("length", "How long is it?"),
    ("material", "What is it made of?"),
    ("blank", "Bar or casting?"),
    ("shelf", "Which mandrels are on the shelf? (sizes with commas between, or none)"),
)
TRIES = 3
LONGEST_ANSWER = 400
"""Characters; 60 mandrels fit."""


@click.command("ask")
@click.option("--title", default="Bored part", help="Name of the part.")
@click.option("--job", "job_file", help="Write the job file here.")
@click.option("--sheet", help="Write the bench sheet here (PDF).")
def command(title: str, job_file: str | None, sheet: str | None) -> int:
    """Six questions about a part; every one may be left empty for "don't know"."""
    if not title.isprintable() or not 0 < len(title) <= LONGEST_ANSWER:
        found = ascii(title[:40])
        raise RefusedInput("--title", found, f"one line of text, up to {LONGEST_ANSWER} letters")
    answers = {name: _ask(n, name, words) for n, (name, words) in enumerate(QUESTIONS, 1)}
    from borewright.answer.records import Verdict
    from borewright.job.write import job_text
    from borewright.reference.library import tables
    from borewright.report.terminal import plan_text
    from borewright.service.answers import Answers, job_from
    from borewright.service.files import sheet_bytes, write_all, write_new
    from borewright.service.planned import plan

    try:
        asked = job_from(Answers(**answers), tables(), title)
    except RefusedInput as trouble:
        raise _at_its_line(_number_of(trouble.where), trouble) from None
    answer = plan(asked.job)
    page = sheet_bytes(answer)
    text = job_text(asked.job).encode()
    if job_file is not None and job_file == sheet:
        raise RefusedInput("--sheet", f"{sheet!r} for both", "a name of its own")
    named = {name: what for name, what in ((job_file, text), (sheet, page)) if name is not None}
    new = {
        e: what
        for e, what, name in ((".toml", text, job_file), (".pdf", page, sheet))
        if name is None
    }
    write_all(named)
    fresh = write_new("bored-part", new) if new else []
    job_file, sheet = job_file or fresh[0], sheet or fresh[-1]
    for line in asked.taken:
        say(line)
    say(plan_text(answer))
    say(f"Job file: {job_file}   Bench sheet: {sheet}")
    return 3 if answer.verdict is Verdict.NO else 0


def _ask(number: int, name: str, words: str) -> str:
    """One answer; asked again at a terminal when it cannot be read, refused at once otherwise."""
    for _ in range(TRIES):
        answer = _line(number, words)
        try:
            _check(name, answer)
        except RefusedInput as trouble:
            if not sys.stdin.isatty():
                raise _at_its_line(number, trouble) from None
            warn(str(trouble))
            continue
        return answer
    raise RefusedInput(
        name, f"{TRIES} answers that cannot be read", "an answer as in the question, or nothing"
    )


def _at_its_line(number: int, trouble: RefusedInput) -> RefusedInput:
    """The refusal with the question's number, and its line where the answers are piped in."""
    line = "" if sys.stdin.isatty() else f" on line {number}"
    where = f"question {number}{line}, {trouble.where}"
    allowed = f'{trouble.allowed}; or an empty line for "don\'t know"'
    return RefusedInput(where, trouble.found, allowed)


def _number_of(where: str) -> int:
    """The number of the question that a refusal names."""
    names = [name for name, _ in QUESTIONS]
    return names.index(where) + 1 if where in names else 1


def _line(number: int, words: str) -> str:
    """What is typed; the question is shown only where somebody can read it before answering."""
    typing = sys.stdin.isatty()
    if typing:
        sys.stderr.write(words + " ")
        sys.stderr.flush()
    line = sys.stdin.readline()
    if not line and typing:
        raise click.exceptions.Abort
    if not line:
        found = f"{number - 1} answers" if number != 2 else "1 answer"
        allowed = f'{len(QUESTIONS)} lines, an empty one for "don\'t know"'
        raise RefusedInput(f"question {number}", f"the end of the input after {found}", allowed)
    if len(line) > LONGEST_ANSWER:
        where = f"question {number}, an answer"
        raise RefusedInput(where, f"{len(line)} characters", f"at most {LONGEST_ANSWER}")
    return line.strip()


def _check(name: str, answer: str) -> None:
    from borewright.reference.library import tables
    from borewright.service.answers import check_answer

    check_answer(name, answer, tables())
