"""borewright rescue: every way out when the bore, or the mandrel, has gone wrong."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from borewright.cli.out import say, say_json
from borewright.cli.typed import LENGTH, json_option, units_option

if TYPE_CHECKING:
    from borewright.answer.rescue import Rescue
    from borewright.job.records import BoreLimits, BoreReading, Job, Shelf


@click.command("rescue")
@click.argument("job_file")
@click.option("--shelf", "shelf_file", help="What the shop owns (TOML).")
@click.option("--bore", type=LENGTH, help="The bore as it was measured.")
@click.option(
    "--bore-at", nargs=2, type=LENGTH, multiple=True, metavar="DEPTH SIZE",
    help="A reading at a depth from face A; two at one depth are two directions. Repeat it.",
)  # fmt: skip
@click.option(
    "--trouble", multiple=True, metavar="WORD",
    help="What is wrong: too-big, too-small, oval, tapered, bell-mouthed, barrelled, out-of-square, scored, "
    "keyed, slipped, gouged, cracked, or another word for it. Repeat it; left out, worked out.",
)  # fmt: skip
@click.option("--wanted", help="What the drawing asks: a class (15 H7), or two sizes (A to B).")
@click.option("--measured-with", default="", help="What read the bore, if not as in JOB_FILE.")
@click.option("--way", default="", help="Print the steps of this way out, by its id.")
@click.option("--explain", is_flag=True, help="Each figure as one line a pencil can check.")
@units_option
@json_option
def command(job_file: str, shelf_file: str | None, as_json: bool, **typed: Any) -> int:
    """Every way out when the bore of JOB_FILE came out wrong, or the mandrel did.

    Too big, too small, oval, tapered, bell-mouthed, barrelled, out of square, scored, keyed, slipped or gouged:
    what each way needs, how true and how strong it is, how long it takes, whether the drawing still
    holds. Exit 3 where only stopping or scrap is left.
    """
    from borewright.answer.records import Verdict
    from borewright.job import read_job, read_shelf

    job = read_job(job_file)
    shelf = None if shelf_file is None else read_shelf(shelf_file)
    answer = _rescued(job, shelf, _read(typed), job_file)
    _say(answer, typed["way"], typed["explain"], as_json)
    return 3 if answer.verdict is Verdict.NO else 0


def _say(answer: Rescue, way: str, explain: bool, as_json: bool) -> None:
    if as_json:
        from borewright.report.rescue_json import rescue_object

        say_json(rescue_object(answer))
        return
    from borewright.report.rescue_text import rescue_explained, rescue_text

    say(rescue_explained(answer) if explain else rescue_text(answer, way))


ASKED = {"trouble": "--trouble", "measured with": "--measured-with"}
"""What the tables call a word that came from an option."""


def _rescued(job: Job, shelf: Shelf | None, read: dict[str, Any], job_file: str) -> Rescue:
    """The rescue; a refusal names the option, or the file, that it comes from."""
    from borewright.errors import RefusedInput
    from borewright.service.rescued import rescue

    try:
        return rescue(job, shelf, **read)
    except RefusedInput as refusal:
        in_file = refusal.where.startswith(("work.", "hold.", "cut[", "mandrel"))
        where = f"{job_file}: {refusal.where}" if in_file else refusal.where
        where = ASKED.get(where, where)
        raise RefusedInput(where, refusal.found, refusal.allowed) from None


def _read(typed: dict[str, Any]) -> dict[str, Any]:
    """What was typed, as numbers; a bare number is read in --units only."""
    from borewright.quantities.read import read_length

    bare = typed["units"]
    bore = typed["bore"]
    return {
        "bore": None if bore is None else read_length(bore, "--bore", bare=bare),
        "readings": _readings(typed["bore_at"], bare),
        "trouble": tuple(typed["trouble"]),
        "wanted": _wanted(typed["wanted"], bare),
        "measured_with": typed["measured_with"],
    }


def _readings(typed: tuple[tuple[str, str], ...], bare: Any) -> tuple[BoreReading, ...]:
    from borewright.job.records import BoreReading
    from borewright.quantities.read import read_length

    return tuple(
        BoreReading(
            read_length(depth, "--bore-at", bare=bare, zero=True),
            read_length(size, "--bore-at", bare=bare),
            f"direction {n}",
        )
        for n, (depth, size) in enumerate(typed, 1)
    )


def _wanted(typed: str | None, bare: Any) -> BoreLimits | None:
    from borewright.errors import RefusedInput
    from borewright.job.bore_text import bore_size

    if typed is None:
        return None
    limits = bore_size(typed, "--wanted", bare)[1]
    if limits is None:
        raise RefusedInput("--wanted", repr(typed), "a class such as 15 H7, or `A to B`")
    return limits
