"""Job files for the fuzz test: valid ones of the invented workshop, changed by a seeded hand."""

from __future__ import annotations

import copy
import re
import tomllib
from collections.abc import Callable
from pathlib import Path
from random import Random
from typing import Any

import tomli_w
from tests.unit.job_texts import VALID

EXAMPLES = Path(__file__).parents[2] / "examples"
RING = """title = "Thin ring"
units = "mm"
[work]
material = "brass-c360"
bore = {size = 25.41, measured_with = "plug gauge", made_by = "bored"}
outside = 32
length = 12
[hold]
mandrels = [25.4]
"""
DISC = """title = "Press disc"
[work]
material = "iron"
blank = "casting"
bore = "0.6265in"
outside = "12 3/16in"
length = "1in"
[hold]
use = "plain taper mandrel"
lubrication = "oiled"
"""
SPOKED = """title = "Spoked wheel"
units = "mm"
[work]
material = "gray iron"
blank = "casting"
bore = {size = 20.006, measured_with = "bore gauge", made_by = "reamed"}
outside = 160
length = 40
hub = {outside = 45}
rim = {inside = 144}
spokes = {number = 5, width = 18, thickness = 12}
keyway = {width = 6, depth = 2.8}
cross_hole = {diameter = 5, at = 30}
flaws = "none"
[hold]
mandrels = [20]
"""
BASES = [
    *VALID.values(),
    RING,
    DISC,
    SPOKED,
    (EXAMPLES / "hollow-brook-drive-wheel.toml").read_text(encoding="utf-8"),
]
HOSTILE = [
    "", " ", "\x00", "\x1b[2J", "a" * 5000, "../../etc", "'; DROP TABLE work; --", "${HOME}", "%s%n",
    "#eval(\"1\")", "<script>alert(1)</script>", "\u202eright to left", "ﬁne ｗｉｄｅ", "½in", "١٦mm",
    "16 мм", "𝟙𝟞mm", "🛞", "\ud7ff", "NaN", "inf mm", "-0mm", "1e400mm", "1e-400mm", "1//2in",
    "0x10mm", "1_6mm", "16,01mm", "16mm16mm", "--units", "null", "true", "[work]", "\n\n", "\t16mm",
]  # fmt: skip
VALUES: list[Any] = [
    None, True, False, 0, -1, 1, 17, 10**40, -(10**40), 0.0, -0.0, 1e308, -1e308, 5e-324,
    float("nan"), float("inf"), float("-inf"), [], {}, [[]], [{}], {"a": {"b": {}}}, ["16mm"] * 300,
]  # fmt: skip
UNITS = ["mm", "in", '"', "cm", "m", "um", "thou", "ft", "km", "N", "deg", "parsec", "", "°"]
MATERIALS = ["gray-iron-30", "steel-1018", "al-6061-t6", "brass", "sae 660", "al-scrap-cast"]
GAUGES = ["bore gauge", "plug gauge", "caliper", "inside micrometer", "unknown", "thumb"]
MADE = ["reamed", "bored", "drilled", "honed", "unknown", "cast", "gnawed"]
PLAIN_SIZE = re.compile(r"(\d+\.\d+|\d+)(mm|in|)")
Spot = tuple[Any, Any]


def fuzzed_job(number: int) -> bytes:
    """The bytes of one job file; the same for the same number."""
    rng = Random(f"hollow brook {number}")
    base = rng.choice(BASES)
    kind = rng.choices(
        [_gentle, _rough, _torn_text, _random_toml, _random_bytes], [60, 28, 6, 4, 2]
    )[0]
    return kind(base, rng)


def _gentle(base: str, rng: Random) -> bytes:
    """Changes that a person might make; most of these jobs can be planned."""
    job = tomllib.loads(base)
    _nudge(job, rng)
    for _ in range(rng.randint(0, 3)):
        rng.choice([_nudge, _other_material, _other_words, _drop_optional, _more_pieces])(job, rng)
    return tomli_w.dumps(job).encode()


def _rough(base: str, rng: Random) -> bytes:
    """Changes that nobody should make."""
    job = tomllib.loads(base)
    _nudge(job, rng)
    for _ in range(rng.randint(1, 3)):
        rng.choice([_replace, _delete, _unknown_key, _resize, _reunit, _hostile_key])(job, rng)
    return tomli_w.dumps(_writable(job)).encode("utf-8", "replace")


def _spots(node: Any, keep: Callable[[Any], bool] = lambda value: True) -> list[Spot]:
    """Every (container, key) below node whose value is wanted."""
    pairs = node.items() if isinstance(node, dict) else enumerate(node)
    found: list[Spot] = []
    for key, value in list(pairs):
        found += [(node, key)] if keep(value) else []
        found += _spots(value, keep) if isinstance(value, dict | list) else []
    return found


def _is_size(value: Any) -> bool:
    return isinstance(value, str) and value[:1].isdigit()


def _nudge(job: dict[str, Any], rng: Random) -> None:
    """One size a little larger or smaller; now and then a good deal."""
    spots = _spots(job, lambda v: bool(PLAIN_SIZE.fullmatch(str(v))))
    by = rng.uniform(0.999, 1.001) if rng.random() < 0.6 else rng.uniform(0.8, 1.25)
    for holder, key in spots and [rng.choice(spots)]:
        number, unit = PLAIN_SIZE.fullmatch(str(holder[key])).groups()  # type: ignore[union-attr]
        sized = float(number) * by
        holder[key] = f"{sized:.6f}{unit}" if unit else sized


def _other_material(job: dict[str, Any], rng: Random) -> None:
    job["work"]["material"] = rng.choice(MATERIALS)


def _other_words(job: dict[str, Any], rng: Random) -> None:
    bore = job["work"]["bore"]
    if isinstance(bore, dict):
        bore["measured_with"], bore["made_by"] = rng.choice(GAUGES), rng.choice(MADE)
    job["work"]["quantity"] = rng.randint(1, 40)
    job["title"] = rng.choice(["Wheel", "Poulie à gorge", "滑车", "№ 7 “spare”", "x" * 200])


def _drop_optional(job: dict[str, Any], rng: Random) -> None:
    for name in rng.sample(["machine", "hold", "cut", "title"], 2):
        job.pop(name, None)


def _more_pieces(job: dict[str, Any], rng: Random) -> None:
    job["work"]["blank"] = rng.choice(["bar", "casting", "unknown"])
    job.setdefault("hold", {})["lubrication"] = rng.choice(["dry", "oiled"])
    job["hold"]["driven_by"] = rng.choice(["dog", "collet", "three-jaw"])


def _replace(job: dict[str, Any], rng: Random) -> None:
    spots = _spots(job)
    for holder, key in spots and [rng.choice(spots)]:
        holder[key] = copy.deepcopy(rng.choice([*VALUES, *HOSTILE]))


def _delete(job: dict[str, Any], rng: Random) -> None:
    spots = _spots(job)
    for holder, key in spots and [rng.choice(spots)]:
        del holder[key]


def _unknown_key(job: dict[str, Any], rng: Random) -> None:
    tables = [job, *(h[k] for h, k in _spots(job, lambda v: isinstance(v, dict)))]
    rng.choice(tables)[rng.choice(["matterial", "boer", "x", "units", "to", "z" * 300])] = "1mm"


def _hostile_key(job: dict[str, Any], rng: Random) -> None:
    rng.choice([job, job.get("work", job)])[rng.choice(HOSTILE)] = rng.choice(HOSTILE)


def _resize(job: dict[str, Any], rng: Random) -> None:
    spots = _spots(job, _is_size)
    size = rng.choice([1e-12, 1e-6, 1e-3, 0.1, 0.5, 0.9, 0.99, 1.01, 1.1, 2.0, 10.0, 1e3, 1e9])
    for holder, key in spots and [rng.choice(spots)]:
        holder[key] = f"{size * rng.choice([1, 16, 25.4])!r}{rng.choice(['mm', 'in'])}"


def _reunit(job: dict[str, Any], rng: Random) -> None:
    spots = _spots(job, _is_size)
    for holder, key in spots and [rng.choice(spots)]:
        digits = holder[key].rstrip('abcdefghijklmnopqrstuvwxyz"/ ')
        holder[key] = digits + rng.choice(["", " "]) + rng.choice(UNITS)


def _writable(node: Any) -> Any:
    """Without what TOML has no word for."""
    if isinstance(node, dict):
        return {str(k): _writable(v) for k, v in node.items() if v is not None}
    if isinstance(node, list):
        return [_writable(v) for v in node if v is not None]
    return node


def _torn_text(base: str, rng: Random) -> bytes:
    """A file cut short, or with a line missing, doubled or scrambled."""
    lines = base.splitlines(keepends=True)
    at = rng.randrange(len(lines))
    torn = [
        base[: rng.randrange(len(base))],
        "".join(lines[:at] + lines[at + 1 :]),
        "".join([*lines[:at], lines[at], *lines[at:]]),
        base.replace("=", ":", 1),
        base.replace('"', "", 1),
        "".join(rng.sample(lines, len(lines))),
    ]
    return rng.choice(torn).encode()


def _random_toml(base: str, rng: Random) -> bytes:
    words = ["work", "bore", "size", "hold", "cut", "machine", "outline", "from", "title", "units"]
    made = {rng.choice(words): _random_value(rng, words, 3) for _ in range(rng.randint(0, 5))}
    return tomli_w.dumps(_writable(made)).encode("utf-8", "replace")


def _random_value(rng: Random, words: list[str], depth: int) -> Any:
    if depth and rng.random() < 0.5:
        names = rng.sample(words, rng.randint(0, 4))
        return {name: _random_value(rng, words, depth - 1) for name in names}
    return rng.choice([*(v for v in VALUES if v is not None), *HOSTILE, "16mm", "2in"])


def _random_bytes(base: str, rng: Random) -> bytes:
    return rng.choice(
        [
            b"",
            rng.randbytes(200),
            b"\xef\xbb\xbf" + base.encode(),
            base.encode("utf-16"),
            base.encode() + b"\xff",
            base.replace("\n", "\r\n").encode(),
        ]
    )
