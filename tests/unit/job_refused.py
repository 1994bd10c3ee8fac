"""Getting the one sentence of a refusal, and changing one place of a job text, for these tests."""

from __future__ import annotations

import pytest

from borewright.errors import RefusedInput
from borewright.job import parse_job


def refusal(text: str, kind: type[RefusedInput] = RefusedInput) -> str:
    with pytest.raises(kind) as caught:
        parse_job(text, "job.toml")
    message = str(caught.value)
    assert message.startswith("job.toml: ")
    assert message.isprintable()
    return message


def changed(text: str, old: str, new: str) -> str:
    assert text.count(old) == 1, old
    return text.replace(old, new)
