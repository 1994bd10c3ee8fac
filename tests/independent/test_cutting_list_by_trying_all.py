"""Cutting lists against trying every way by hand, bar by bar, with no solver."""

from __future__ import annotations

from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from borewright.making.bars.cutting_list import CutList, cut_list

MM = 1e-3


def _try_all(pieces: dict[int, int], bars: list[tuple[int, int]], kerf: int, end: int):
    """(length missing, length taken, -longest rest), the least of all; everything in whole mm."""
    sizes = sorted(pieces, reverse=True)
    each = [length for length, count in bars for _ in range(count)]

    def fits(cut: tuple[int, ...], bar: int) -> int | None:
        """What is left of a bar, None where the pieces do not fit."""
        number, long = sum(cut), sum(n * s for n, s in zip(cut, sizes, strict=True))
        cuts = number if end else max(number - 1, 0)
        if long + cuts * kerf + end > bar:
            return None
        return max(0, bar - long - number * kerf)

    def cuts_of(left: tuple[int, ...]):
        if not left:
            yield ()
            return
        for n in range(left[0] + 1):
            for rest in cuts_of(left[1:]):
                yield (n, *rest)

    @cache
    def best(k: int, left: tuple[int, ...], longest: int) -> tuple[int, int, int]:
        if k == len(each):
            return sum(n * s for n, s in zip(left, sizes, strict=True)), 0, -longest
        found = []
        for cut in cuts_of(left):
            rest = fits(cut, each[k])
            if rest is None:
                continue
            after = tuple(a - b for a, b in zip(left, cut, strict=True))
            taken = each[k] if any(cut) else 0
            missing, more, minus = best(k + 1, after, max(longest, rest if any(cut) else 0))
            found.append((missing, taken + more, minus))
        return min(found)

    return best(0, tuple(pieces[s] for s in sizes), 0)


def _told(found: CutList, pieces: dict[int, int]) -> tuple[int, int, int]:
    size = {f"p{s}": s for s in pieces}
    missing = sum(size[name] * n for name, n in found.missing)
    return missing, round(found.taken / MM), -round(found.longest_left / MM)


def _cut(pieces: dict[int, int], bars: list[tuple[int, int]], kerf: int, end: int, **how: int):
    return cut_list(
        [(f"p{s}", s * MM, n) for s, n in pieces.items()],
        [(f"b{k}", length * MM, count) for k, (length, count) in enumerate(bars)],
        kerf * MM,
        end * MM,
        **how,
    )


SMALL = (
    st.dictionaries(st.integers(3, 40), st.integers(1, 3), min_size=1, max_size=3),
    st.lists(st.tuples(st.integers(20, 70), st.integers(1, 2)), min_size=1, max_size=2),
    st.integers(0, 4),
    st.integers(0, 6),
)


@given(*SMALL)
@settings(max_examples=60, deadline=None)
def test_no_other_cutting_is_better_by_any_of_the_three_questions(pieces, bars, kerf, end):
    found = _cut(pieces, bars, kerf, end)
    assert found.proved
    assert _told(found, pieces) == _try_all(pieces, bars, kerf, end)


@given(*SMALL)
@settings(max_examples=40, deadline=None)
def test_ways_found_by_price_claim_no_more_than_is_so(pieces, bars, kerf, end):
    priced, truth = _cut(pieces, bars, kerf, end, few=0), _try_all(pieces, bars, kerf, end)
    missing, taken, _ = _told(priced, pieces)
    assert (missing, taken) >= truth[:2]
    if priced.proved:
        assert (missing, taken) == truth[:2]
    if missing == truth[0]:
        assert priced.least / MM <= truth[1] + 1e-3


@given(*SMALL)
@settings(max_examples=40, deadline=None)
def test_every_bar_of_the_list_can_be_cut_so_and_no_piece_is_lost(pieces, bars, kerf, end):
    found = _cut(pieces, bars, kerf, end)
    had = dict.fromkeys((f"p{s}" for s in pieces), 0)
    for bar in found.bars:
        number = sum(n for _, n in bar.pieces)
        long = sum(int(name[1:]) * n for name, n in bar.pieces)
        cuts = number if end else number - 1
        assert long + cuts * kerf + end <= bar.length / MM + 1e-6
        assert bar.left / MM == pytest.approx(max(0, bar.length / MM - long - number * kerf))
        for name, n in bar.pieces:
            had[name] += n * bar.count
    for name, n in found.missing:
        had[name] += n
    assert had == {f"p{s}": n for s, n in pieces.items()}
    for k, (_, count) in enumerate(bars):
        assert sum(bar.count for bar in found.bars if bar.name == f"b{k}") <= count


@given(*SMALL, st.integers(20, 70))
@settings(max_examples=40, deadline=None)
def test_one_more_bar_is_never_worse(pieces, bars, kerf, end, more):
    before, after = _cut(pieces, bars, kerf, end), _cut(pieces, [*bars, (more, 1)], kerf, end)
    assert _told(after, pieces)[0] <= _told(before, pieces)[0]
    if _told(after, pieces)[0] == _told(before, pieces)[0]:
        assert _told(after, pieces) <= _told(before, pieces)


def test_a_piece_longer_than_any_bar_is_missing_and_the_rest_is_cut():
    found = _cut({80: 2, 10: 3}, [(50, 4)], 2, 0)
    assert found.missing == (("p80", 2),)
    assert not found.whole
    assert [bar.pieces for bar in found.bars] == [(("p10", 3),)]


def test_the_last_piece_of_a_bar_without_an_end_to_keep_needs_no_cut():
    assert _cut({30: 3}, [(94, 1)], 2, 0).whole
    assert not _cut({30: 3}, [(93, 1)], 2, 0).whole
    assert not _cut({30: 3}, [(96, 1)], 2, 1).whole
    assert _cut({30: 3}, [(97, 1)], 2, 1).whole


def test_more_lengths_than_can_be_laid_out_are_cut_to_the_bound_of_the_linear_program():
    """24 lengths, 190 pieces: no fewer bars than their metal fills, and as few as the bound says."""
    pieces = [(f"p{k}", (60 + 13 * k) * MM, 5 + k % 7) for k in range(24)]
    found = cut_list(pieces, [("bar", 3.0, None)], 0.003, 0.02, few=2000)
    bars = sum(b.count for b in found.bars)
    with_cuts = sum((length + 0.003) * n for _, length, n in pieces)
    assert found.whole
    assert bars * 3.0 >= found.least - 1e-6 >= with_cuts
    assert bars == round(found.taken / 3.0)
    assert found.proved
    assert found.taken == pytest.approx(found.least)


def test_equal_lengths_under_two_names_are_told_apart():
    found = cut_list([("a", 0.1, 2), ("b", 0.1, 1)], [("bar", 0.45, None)], 0.002, 0.01)
    assert [bar.pieces for bar in found.bars] == [(("a", 2), ("b", 1))]
