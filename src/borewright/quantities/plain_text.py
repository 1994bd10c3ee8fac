"""ASCII stand-ins for the signs we print, for terminals and files that are not UTF-8."""

from __future__ import annotations

import unicodedata
from typing import Final

_STAND_INS: Final = {
    "µ": "u", "μ": "u", "°": " deg", "·": ".", "×": "x", "–": "-", "—": "-", "−": "-",
    "≤": "<=", "≥": ">=", "≈": "~", "±": "+/-", "→": "->", "←": "<-", "…": "...", "∞": "inf",
    "‘": "'", "’": "'", "“": '"', "”": '"', "″": '"', "′": "'", "•": "*", "√": "sqrt ",
    "α": "alpha", "β": "beta", "δ": "delta", "Δ": "delta ", "η": "eta", "θ": "theta",
    "κ": "kappa", "λ": "lambda", "ν": "nu", "π": "pi", "ρ": "rho", "σ": "sigma", "τ": "tau",
    "φ": "phi", "ω": "omega", "∅": "dia. ", "Ø": "dia. ", "⌀": "dia. ",
    "²": "2", "³": "3", "½": "1/2", "¼": "1/4", "¾": "3/4", "§": "section ", "\u00a0": " ",
}  # fmt: skip
_TABLE: Final = str.maketrans(_STAND_INS)


def ascii_text(text: str) -> str:
    """The text in ASCII only; an unknown sign keeps its base letter or becomes `?`.

    >>> ascii_text("≥ 15 µm, 16 N·m, 90°, 20 °C, 2 × 3 mm, é")
    '>= 15 um, 16 N.m, 90 deg, 20 deg C, 2 x 3 mm, e'
    """
    spelled = text.replace(" °", "°").replace("°C", "° C").replace("°F", "° F").translate(_TABLE)
    return "".join(_ascii_char(char) for char in spelled)


def _ascii_char(char: str) -> str:
    if char.isascii():
        return char
    base = "".join(c for c in unicodedata.normalize("NFKD", char) if c.isascii())
    return base or ("" if unicodedata.combining(char) else "?")
