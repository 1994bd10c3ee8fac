"""Every test run keeps its shapes to itself: none of an earlier program's, none left behind."""

from __future__ import annotations

import os
from collections.abc import Iterator

import pytest

# Before numpy is loaded: the workers share the cores, and threads of small systems only wait.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

from borewright.shapes.store import SETTING


@pytest.fixture(scope="session", autouse=True)
def own_shapes(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv(SETTING, str(tmp_path_factory.mktemp("shapes")))
        yield
