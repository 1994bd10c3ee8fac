"""The files of the checkout that a person wrote."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parents[1]
READ_AS_TEXT = {
    ".py", ".toml", ".csv", ".txt", ".md", ".typ", ".json", ".yml", ".yaml", ".html", ".css", ".js", "",
}  # fmt: skip
NOT_OURS = {
    "__pycache__", "build", "dist", "out", "node_modules", "htmlcov", "borewright.egg-info",
}  # fmt: skip


def our_files() -> Iterator[Path]:
    """Files of the checkout that a person wrote, hidden folders other than .ci left out."""
    for path in sorted(ROOT.rglob("*")):
        parts = path.relative_to(ROOT).parts
        hidden = any(part.startswith(".") for part in parts) and parts[0] not in (
            ".ci",
            ".gitignore",
        )
        if path.is_file() and not hidden and not NOT_OURS & set(parts):
            yield path


def text_files() -> list[Path]:
    return [path for path in our_files() if path.suffix in READ_AS_TEXT]
