"""`borewright` on the command line, and `python -m borewright`."""

from __future__ import annotations

import sys


def main() -> int:
    """Run the command line; the version is answered without loading it."""
    if sys.argv[1:] == ["--version"]:
        from borewright import __version__

        sys.stdout.write(f"borewright {__version__}\n")
        return 0
    from borewright.cli.app import run

    return run()


if __name__ == "__main__":
    sys.exit(main())
