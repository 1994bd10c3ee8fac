"""One file per command; each offers `command`. Loaded only when asked for."""
