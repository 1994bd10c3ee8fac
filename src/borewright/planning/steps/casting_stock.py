"""Does the stock on a casting's outside take up its throw and its skin."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from borewright.answer.records import Figure, Input, Verdict
from borewright.cutting.stock import finished_outside
from borewright.job.records import Job
from borewright.planning.weighing.figures import figure, given
from borewright.quantities.show import Show
from borewright.quantities.si import Metre
from borewright.reference.library import Tables
from borewright.reference.ranges import Range


@dataclass(frozen=True, slots=True)
class Stock:
    """What there is on the radius (m), what the throw and the skin ask; None where not stated."""

    outside: Metre
    finished: Metre | None
    throw: Metre | None
    skin: Range

    @property
    def there(self) -> Metre | None:
        return None if self.finished is None else (self.outside - self.finished) / 2

    @property
    def largest_throw(self) -> Metre | None:
        """The whole reading (m) up to which the outside cleans up; 0 where the skin takes it all."""
        return None if self.there is None else max(0.0, 2 * (self.there - self.skin.best))

    @property
    def throw_left(self) -> Metre | None:
        """The whole reading (m) that is cut: what does not clean up is shared out first."""
        shared = self.verdict is Verdict.NO and self.largest_throw
        return self.largest_throw if shared else self.throw

    def wanted(self, skin: Metre) -> Metre | None:
        """Stock on the radius (m) with so deep a skin."""
        return None if self.throw is None else self.throw / 2 + skin

    @property
    def verdict(self) -> Verdict | None:
        """Yes with the deepest skin, with care with the least, else no; None where not known."""
        if self.there is None or self.throw is None:
            return None
        held = self.there - self.throw / 2 + 1e-9
        if held >= self.skin.high:
            return Verdict.YES
        return Verdict.CARE if held >= self.skin.low else Verdict.NO


def stock_of(job: Job, tables: Tables) -> Stock:
    """The stock on the outside of a casting, as far as stated."""
    skin = tables.allowance("skin_depth")
    finished = finished_outside(job, tables)
    return Stock(job.work.outside, finished, job.work.casting_runout, skin)


def stock_words(stock: Stock, show: Show) -> str:
    """Whether the outside cleans up, and what to do where it does not."""
    if stock.throw is None:
        return _no_throw(stock, show)
    wanted = show.depth(stock.throw / 2 + stock.skin.best)
    asked = f"Out by {show.length(stock.throw)} as cast, the outside wants {wanted} of stock on the radius: half of that and the skin"
    if stock.there is None:
        largest = show.length(stock.outside - stock.throw - 2 * stock.skin.best)
        return f"{asked}. The size to finish at is not stated: {largest} is the largest that cleans up."
    there = show.depth(stock.there)
    if stock.verdict is Verdict.NO:
        return f"{asked}. There is {there}: it does not clean up. {_shared(stock, show)}"
    close = (
        " Only just: some of the skin may be left in the deepest hollow."
        if stock.verdict is Verdict.CARE
        else ""
    )
    return f"{asked}. There is {there}: it cleans up.{close}"


def _no_throw(stock: Stock, show: Show) -> str:
    skin = f"{show.depth(stock.skin.best)} of skin on the radius"
    largest = stock.largest_throw
    if largest is None:
        return f"Neither throw nor size to finish at is stated: leave half the throw and {skin} to come off."
    if largest <= 0:
        return f"The stock on the outside is no more than {skin}: it does not clean up however true it is set."
    return f"The outside cleans up while it reads no more than {show.length(largest)}, the whole reading: half of that and {skin} is the stock there is."


def _shared(stock: Stock, show: Show) -> str:
    """Sharing the throw between what shows and what is turned."""
    largest, throw = stock.largest_throw, stock.throw
    if not largest or throw is None:
        return "A smaller finished size, if whoever drew it agrees, or another casting."
    return (
        f"Shift it until the outside reads {show.length(largest)}: what was true is then left out by {show.length(throw - largest)}, "
        "and the rim thicker on one side. Or a smaller finished size, if whoever drew it agrees, or another casting."
    )


def stock_figures(stock: Stock) -> tuple[Figure, ...]:
    """Every number of it with its sum."""
    return (*_of_the_stock(stock), *_of_the_throw(stock), *_of_both(stock))


def _of_the_stock(stock: Stock) -> Iterator[Figure]:
    there = stock.there
    if there is None or stock.finished is None:
        return
    sizes = given("outside", stock.outside, "m"), given("finished outside", stock.finished, "m")
    yield figure("rim_stock", there, "m", "depth", "rim_stock", sizes)
    if stock.largest_throw:
        inputs = given("stock", there, "m", "depth"), _skin(stock)
        yield _from_skin("largest_throw", stock.largest_throw, "length", inputs, stock)


def _of_the_throw(stock: Stock) -> Iterator[Figure]:
    throw, skin = stock.throw, stock.skin
    if throw is None:
        return
    inputs = given("throw", throw, "m"), _skin(stock)
    name, band = "clean_up_stock", (throw / 2 + skin.low, throw / 2 + skin.high)
    yield _from_skin(name, throw / 2 + skin.best, "depth", inputs, stock, band)
    left = throw if stock.throw_left is None else stock.throw_left
    first = given("throw", left, "m"), _skin(stock)
    yield _from_skin("first_cut_from_touch", left + skin.best, "depth", first, stock)
    if stock.there is None:
        sizes = given("outside", stock.outside, "m"), *inputs
        largest = stock.outside - throw - 2 * skin.best
        yield _from_skin("largest_clean_outside", largest, "length", sizes, stock)


def _of_both(stock: Stock) -> Iterator[Figure]:
    there, wanted = stock.there, stock.wanted(stock.skin.best)
    if there is None or wanted is None or stock.throw is None:
        return
    margin = given("stock", there, "m", "depth"), given("stock wanted", wanted, "m", "depth")
    yield figure("clean_up_margin", there / wanted, "", "", "clean_up_margin", margin)
    largest = stock.largest_throw
    if largest and stock.verdict is Verdict.NO:
        shared = given("throw", stock.throw, "m"), given("largest throw", largest, "m")
        yield figure("throw_shared", stock.throw - largest, "m", "length", "throw_shared", shared)


def _skin(stock: Stock) -> Input:
    return given("skin", stock.skin.best, "m", "depth")


def _from_skin(
    name: str,
    size: Metre,
    kind: str,
    inputs: tuple[Input, ...],
    stock: Stock,
    band: tuple[Metre, Metre] | None = None,
) -> Figure:
    """A size (m) that the skin is part of; its rule has its name."""
    return figure(name, size, "m", kind, name, inputs, (stock.skin.source,), band)
