"""Jaws on a hub as cast: its draft is spoken of; on a turned hub it is not."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.cli_run import ran

WHEEL = """units = "inch"
[work]
material = "{material}"
blank = "{blank}"
outside = "6in"
length = "1 1/2in"
hub = {{ outside = "1 3/4in" }}
web = {{ from = "0in", to = "3/8in" }}
rim = {{ inside = "5in", from = "0in", to = "0.9in" }}
finished = {{ outside = "5.8in" }}
bore = {{ size = "0.7503in", measured_with = "plug gauge", made_by = "reamed" }}
"""


@pytest.mark.parametrize(
    ("material", "blank", "spoken"), [("al-lm4", "casting", True), ("6061", "bar", False)]
)
def test_draft_of_a_hub_is_spoken_of_where_it_is_as_cast(
    tmp_path: Path, material: str, blank: str, spoken: bool
) -> None:
    job = tmp_path / "wheel.toml"
    job.write_text(WHEEL.format(material=material, blank=blank), encoding="utf-8")
    done = ran("plan", str(job), "--use", "four-jaw")
    assert done.code in (0, 3), done.err
    text = " ".join(done.out.split())
    assert "by the hub, 1 3/4 in" in text
    assert ("A hub as cast has draft" in text) == spoken
