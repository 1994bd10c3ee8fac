"""Where bore, rim and face come out of one chucking, the first line says that no mandrel is needed."""

from __future__ import annotations

from pathlib import Path

import pytest

from borewright.job import parse_job
from borewright.service.planned import plan

TWELVE = Path(__file__).parents[2] / "examples" / "twelve"


@pytest.mark.parametrize(
    ("size", "made_by"), [('"39/64in"', '"drilled"'), ('"0.6251in"', '"reamed"')]
)
def test_the_headline_says_plainly_that_no_mandrel_is_needed(size: str, made_by: str) -> None:
    """A drilled blank with metal left in the bore needs none; one that is reamed already goes on one."""
    text = (TWELVE / "02-class-blanks.toml").read_text(encoding="utf-8")
    changed = text.replace('"0.6251in"', size).replace('"reamed"', made_by)
    headline = plan(parse_job(changed, "job.toml"), None).headline
    assert ("no mandrel needed" in headline) == (made_by == '"drilled"')
    assert ("mandrel" in headline.replace("no mandrel needed", "")) == (made_by == '"reamed"')
