"""The plan answers by elastic bodies: what it says of the rings beside them, and of an outline."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from tests.cli_run import ran

HEAD = 'title = "A part"\nunits = "mm"\n[work]\nmaterial = "gray iron"\nblank = "bar"\n'
TAIL = """
bore = { size = "16.006mm", measured_with = "plug gauge", made_by = "reamed" }
[hold]
mandrels = ["16mm"]
"""


def planned(tmp_path: Path, work: str) -> tuple[int, str, list[str]]:
    path = tmp_path / "job.toml"
    path.write_text(HEAD + work + TAIL, encoding="utf-8")
    done = ran("plan", str(path), "--use", "plain-taper")
    return done.code, " ".join(done.out.split()), done.error_lines


def ring(start: float, end: float, outside: float, inside: float | None = None) -> str:
    hole = "" if inside is None else f', inside = "{inside}mm"'
    return f'{{ from = "{start}mm", to = "{end}mm", outside = "{outside}mm"{hole} }}'


def outline(*rings: str) -> str:
    return "outline = [\n" + ",\n".join(rings) + "\n]"


PLAIN = 'outside = "63mm"\nlength = "25mm"'
DISC = 'outside = "63mm"\nlength = "6mm"'
FLANGED = outline(ring(0, 25, 22), ring(10, 15, 150, 22))


def test_rings_agree_on_a_plain_hub(tmp_path: Path) -> None:
    """Physics notes: within half a percent on a plain hub pressed full-length."""
    _, said, _ = planned(tmp_path, PLAIN)
    assert "The pencil check by plain rings agrees within 3 %" in said


def test_where_the_force_by_rings_is_another_it_says_by_how_much_and_why(tmp_path: Path) -> None:
    _, said, _ = planned(tmp_path, DISC)
    assert re.search(r"The pencil check by plain rings says \d+ % less: the mandrel that", said)


@pytest.mark.parametrize(("work", "what"), [(DISC, "the edge of"), (FLANGED, "edge, web and")])
def test_where_the_stress_by_rings_is_another_it_says_so(
    tmp_path: Path, work: str, what: str
) -> None:
    _, said, _ = planned(tmp_path, work)
    assert re.search(
        rf"Plain rings, which do not feel {what} .*?, would say \d+ % (less|more)", said
    )


def test_edges_a_hair_apart_are_taken_as_one_and_the_plan_says_so(tmp_path: Path) -> None:
    _, said, _ = planned(tmp_path, outline(ring(0, 25, 40), ring(0, 25, 40.02, 40)))
    assert "the outline: edges a hair apart as one" in said
    _, said, _ = planned(tmp_path, outline(ring(0, 25, 40), ring(0, 5, 60, 40)))
    assert "a hair apart" not in said


def test_an_outline_of_a_thousand_steps_is_refused_in_one_line(tmp_path: Path) -> None:
    steps = [ring(k / 40, (k + 1) / 40, 40 + k / 100) for k in range(1000)]
    code, said, errors = planned(tmp_path, outline(*steps))
    assert (code, said, len(errors)) == (2, "", 1)
    assert "work.outline" in errors[0]
