"""borewright make blank: the casting or the bar from which a job's part is made."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from borewright.cli.commands.making.shared import (
    check_files,
    check_toml,
    deliver,
    look_of,
    paper_options,
)
from borewright.cli.typed import LENGTH, TAPER, Typed, given, json_option
from borewright.errors import RefusedInput
from borewright.quantities.read import read_length, read_number, read_taper

if TYPE_CHECKING:
    from borewright.job.records import Job
    from borewright.making.bars.bar_blanks import BarAsked
    from borewright.making.blank.casting_asked import CastingAsked

SHARE = Typed("share")
CASTING = (
    "shrinkage", "pattern_measured", "casting_measured", "stock", "up", "boss", "core", "scrap",
    "sure", "casting_job",
)  # fmt: skip
BAR = ("bar_size", "cut", "bars", "bar_length")


@click.command("blank")
@click.argument("job_file")
@click.option(
    "--by", type=click.Choice(["casting", "bar"]), help="How it is made: else as the job says."
)
@click.option("--shrinkage", type=TAPER, help="Pattern over casting: 3/16in/ft, 0.0156in/in, 1.5%.")
@click.option("--pattern-measured", type=LENGTH, help="A size of a first pattern, as measured.")
@click.option("--casting-measured", type=LENGTH, help="The same size of the casting from it, cold.")
@click.option("--stock", type=LENGTH, help="Stock on every machined face, in place of the tables'.")
@click.option("--up", type=click.Choice(["A", "B"]), help="Which face is up in the mould.")
@click.option(
    "--boss",
    type=click.Choice(["A", "B", "none"]),
    help="A boss to hold by, at which face; none unless asked for.",
)
@click.option("--core", type=click.Choice(["cored", "solid"]), help="The bore cored or cast solid.")
@click.option("--scrap", type=SHARE, help="Chance that a casting is scrap, such as 10%.")
@click.option("--sure", type=SHARE, help="How sure that enough are good, such as 95%.")
@click.option("--job", "casting_job", help="Write the job of the casting here (TOML), for `plan`.")
@click.option("--bar-size", type=LENGTH, help="Diameter of the bar, in place of the next one sold.")
@click.option("--cut", type=click.Choice(["parted", "sawn"]), help="How pieces come off the bar.")
@click.option("--bars", help="Bars that are there: '3m, 2 x 600mm'.")
@click.option("--bar-length", type=LENGTH, help="Or the length of bars that are bought.")
@paper_options
@json_option
def command(job_file: str, as_json: bool, **typed: Any) -> int:
    """The casting with its pattern, or the bar with its cutting list, for the part of JOB_FILE.

    Exit 3 where the bars stated do not give all pieces.
    """
    check_files(typed)
    check_toml(typed["casting_job"], "--job")
    from borewright.job import read_job
    from borewright.reference.library import tables
    from borewright.service.making.casting_blank import by_casting, make_casting

    job = read_job(job_file)
    casting = by_casting(job) if typed["by"] is None else typed["by"] == "casting"
    _check_kind(casting, typed)
    look = look_of(typed, job.units)
    if not casting:
        from borewright.service.making.bar_blank import make_bar

        made = make_bar(job, _bar_asked(typed, job), tables())
        return deliver(made, typed, look, as_json, None, (job_file,))
    done = make_casting(job, _casting_asked(typed, job), tables())
    further = {}
    if typed["casting_job"] is not None:
        name = typed["casting_job"]
        further[name] = done.job_text(name).encode("utf-8")
    return deliver(done.made, typed, look, as_json, further, (job_file,))


def _check_kind(casting: bool, typed: dict[str, Any]) -> None:
    """RefusedInput for an option of the kind of blank that is not made."""
    other, kind = (BAR, "bar") if casting else (CASTING, "casting")
    for name in other:
        if typed[name] is not None:
            option = "--job" if name == "casting_job" else f"--{name.replace('_', '-')}"
            found = "it beside a casting" if casting else "it beside a blank from bar"
            raise RefusedInput(option, found, f"none, or --by {kind}")


def _casting_asked(typed: dict[str, Any], job: Job) -> CastingAsked:
    from borewright.making.blank.casting_asked import CastingAsked

    pattern, casting = (
        given(read_length, typed[n], f"--{n.replace('_', '-')}", bare=job.units)
        for n in ("pattern_measured", "casting_measured")
    )
    if (pattern is None) != (casting is None):
        found = "one of them"
        raise RefusedInput("--pattern-measured, --casting-measured", found, "both, or neither")
    return CastingAsked(
        given(read_shrinkage, typed["shrinkage"], "--shrinkage"),
        None if pattern is None or casting is None else (pattern, casting),
        given(read_length, typed["stock"], "--stock", bare=job.units),
        typed["up"],
        typed["boss"],
        typed["core"],
        given(read_share, typed["scrap"], "--scrap"),
        given(read_share, typed["sure"], "--sure"),
    )


def read_shrinkage(text: str, where: str) -> float:
    """A shrinkage: a percentage, or length over length in the ways a taper is typed.

    >>> read_shrinkage("1.5%", "--shrinkage"), read_shrinkage("3/16in/ft", "--shrinkage")
    (0.015, 0.015625)
    """
    return (
        read_share(text, where)
        if text.strip().endswith("%")
        else read_taper(text, where, zero=True)
    )


def read_share(text: str, where: str) -> float:
    """A share as a percentage or as a plain number from 0 to 1.

    >>> read_share("10%", "--scrap"), read_share("0.1", "--scrap")
    (0.1, 0.1)
    """
    stripped = text.strip()
    if stripped.endswith("%"):
        return read_number(stripped[:-1], where, zero=True, most=100.0) / 100
    return read_number(stripped, where, zero=True, most=1.0)


def _bar_asked(typed: dict[str, Any], job: Job) -> BarAsked:
    from borewright.making.bars.bar_blanks import BarAsked
    from borewright.service.making.bar_blank import bars_typed

    if typed["bars"] is not None and typed["bar_length"] is not None:
        raise RefusedInput("--bars, --bar-length", "both", "one of them")
    bars = () if typed["bars"] is None else bars_typed(typed["bars"], job.units)
    length = given(read_length, typed["bar_length"], "--bar-length", bare=job.units)
    if length is not None:
        bars = (("bar as bought", length, None),)
    size = given(read_length, typed["bar_size"], "--bar-size", bare=job.units)
    return BarAsked(size, typed["cut"], bars)
