"""`borewright` on the command line, and `python -m borewright`."""

from __future__ import annotations

import os
import sys


def main() -> int:
    """Run the command line; the version is answered without loading it."""
    _open_streams()
    # The systems solved here are small: more threads only wait for each other, long on a busy
    # machine. Whoever has set a number keeps it.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    try:
        if sys.argv[1:] == ["--version"]:
            from borewright import __version__

            sys.stdout.write(f"borewright {__version__}\n")
            code = 0
        else:
            from borewright.cli.app import run

            code = run()
        sys.stdout.flush()
    except KeyboardInterrupt:
        code = _say_last("borewright: stopped before the end; nothing was written")
    except BrokenPipeError:
        code = 0
    except OSError as trouble:
        code = _say_last(
            f"borewright: stdout: found {trouble.strerror}; allowed is a place to write"
        )
    _leave_quietly()
    return code


def _open_streams() -> None:
    """A closed stream reads as empty and swallows what is written, instead of failing."""
    for name, mode in (("stdin", "r"), ("stdout", "w"), ("stderr", "w")):
        if getattr(sys, name) is None:
            setattr(sys, name, open(os.devnull, mode, encoding="utf-8"))  # noqa: SIM115
    for stream in (sys.stdin, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")


def _say_last(words: str) -> int:
    """One line on stderr where that is still possible; the code of a refusal."""
    try:
        sys.stderr.write(f"{words}\n")
        sys.stderr.flush()
    except OSError:
        pass
    return 2


def _leave_quietly() -> None:
    """What cannot be written any more is dropped, so that Python's own exit does not complain."""
    for stream in (sys.stdout, sys.stderr):
        try:
            stream.flush()
        except OSError:
            os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


if __name__ == "__main__":
    sys.exit(main())
