"""borewright: plans bored work on a manual lathe.

Public names load on first use, so that importing the package costs nothing.
"""

__version__ = "0.1.0"
