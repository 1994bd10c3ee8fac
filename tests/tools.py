"""Programs of the system that tests call, each with the Debian package that brings it.

`tests/unit/test_house.py` holds the calls against `system-packages.txt`.
"""

from __future__ import annotations

import shutil

PACKAGES = {"ccx": "calculix-ccx", "pdftoppm": "poppler-utils", "pdftotext": "poppler-utils"}
"""Program to package. Add both here and to system-packages.txt."""


def system_tool(name: str) -> str:
    """Path of a program. AssertionError, naming the package to install, where it is missing."""
    found = shutil.which(name)
    assert found, f"{name} is missing: install the Debian package {PACKAGES[name]}"
    return found
