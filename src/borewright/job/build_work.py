"""From the checked `[work]` table to the record of the part."""

from __future__ import annotations

from typing import TYPE_CHECKING

from borewright.errors.tree import RefusedInput
from borewright.job.bore_text import WIDEST_BAND, limits_between, size_typed
from borewright.job.bore_thread import bore_thread, check_in_bore
from borewright.job.build_chamfers import build_chamfers
from borewright.job.build_crown import check_crown_of
from borewright.job.build_finished import build_finished
from borewright.job.build_interrupted import build_cross_hole, build_keyway, build_spokes
from borewright.job.finished_edges import check_edges_of
from borewright.job.outline import SLACK, Hub, Rim, Span, check_pieces, wheel
from borewright.job.records import (
    Bore,
    BoreLimits,
    BoreReading,
    BoreThread,
    Piece,
    Work,
)
from borewright.job.typed import Reader, Value, maybe
from borewright.quantities.show import Show

if TYPE_CHECKING:
    from borewright.job.schema import BoreTable, RingTable, WorkTable


def build_work(table: WorkTable, reader: Reader) -> Work:
    """The part; RefusedInput where the table contradicts itself."""
    bore = _bore(table.bore, reader)
    pieces = _pieces(table, reader)
    check_pieces(pieces, bore, reader.at("work.outline" if table.outline else "work"))
    finished = build_finished(table.finished, reader, pieces, bore.size)
    around = pieces, bore.size, reader
    work = Work(
        table.material,
        pieces,
        bore,
        table.blank,
        finished,
        table.quantity,
        build_keyway(table.keyway, *around),
        build_cross_hole(table.cross_hole, *around),
        build_spokes(table.spokes, *around),
        table.flaws,
        build_chamfers(table.chamfer, *around),
        _casting_runout(table, reader, max(piece.outside for piece in pieces)),
    )
    check_crown_of(work, reader)
    check_edges_of(work, reader)
    return work


def bore_as_typed(bore: BoreTable | Value) -> Value | None:
    """The value that says the size of the hole, for its family of units.

    >>> bore_as_typed("5/8in"), bore_as_typed("15 H7")
    ('5/8in', '15mm')
    """
    if isinstance(bore, str):
        return size_typed(bore)
    if isinstance(bore, int | float):
        return bore
    if bore.size is not None:
        return bore_as_typed(bore.size)
    if bore.low is not None:
        return bore.low
    return bore.readings[0].size if bore.readings else None


def _bore(table: BoreTable | Value, reader: Reader) -> Bore:
    if isinstance(table, str | int | float):
        plain, stated = reader.bore(table, "work.bore")
        return Bore(plain, stated.half_band if stated else None, limits=stated)
    readings = _readings(table, reader)
    size, limits = _size(table, reader)
    if size is None and not readings:
        raise RefusedInput(reader.at("work.bore"), "no size", "a `size`, or `readings` of it")
    if limits is not None:
        _check_alone(table, reader)
    plain_size = min(r.size for r in readings) if size is None else size
    return Bore(
        size=plain_size,
        uncertainty=limits.half_band if limits else _uncertainty(table, reader),
        measured_with=table.measured_with,
        made_by=table.made_by,
        readings=readings,
        limits=limits,
        thread=_thread(table, plain_size, reader),
    )


def _thread(table: BoreTable, size: float, reader: Reader) -> BoreThread | None:
    """The thread in the bore; RefusedInput where the hole is not one for it."""
    if not table.thread:
        return None
    where = reader.at("work.bore.thread")
    thread = bore_thread(table.thread, where)
    check_in_bore(thread, size, where)
    return thread


def _size(table: BoreTable, reader: Reader) -> tuple[float | None, BoreLimits | None]:
    """The size as stated, or the middle of the limits."""
    if table.low is None and table.high is None:
        none: tuple[None, None] = None, None
        return none if table.size is None else reader.bore(table.size, "work.bore.size")
    if table.low is None or table.high is None:
        found = "`low` alone" if table.high is None else "`high` alone"
        raise RefusedInput(reader.at("work.bore"), found, "both `low` and `high`")
    if table.size is not None:
        found = "`size` together with `low` and `high`"
        raise RefusedInput(reader.at("work.bore"), found, "one or the other")
    low = reader.length(table.low, "work.bore.low")
    high = reader.length(table.high, "work.bore.high")
    limits = limits_between(low, high, reader.at("work.bore"))
    return limits.middle, limits


def _check_alone(table: BoreTable, reader: Reader) -> None:
    """Limits say how well the bore is known; readings and their uncertainty would say it again."""
    for name, said in (
        ("uncertainty", table.uncertainty is not None),
        ("readings", table.readings),
    ):
        if said:
            found = f"`{name}` beside the bore's limits"
            allowed = "one of them: what was measured beats what was asked for"
            raise RefusedInput(reader.at("work.bore"), found, allowed)


def _uncertainty(table: BoreTable, reader: Reader) -> float | None:
    """Half the band of the size; one wider than a tenth of a typical bore is a slip of the pen."""
    half = maybe(reader.length, table.uncertainty, "work.bore.uncertainty")
    if half is not None and half > WIDEST_BAND:
        found, allowed = Show("mm").length(half), f"at most {Show('mm').length(WIDEST_BAND)}"
        raise RefusedInput(reader.at("work.bore.uncertainty"), found, allowed)
    return half


def _readings(table: BoreTable, reader: Reader) -> tuple[BoreReading, ...]:
    return tuple(
        BoreReading(
            depth=reader.length(row.depth, f"work.bore.readings[{n}].depth", zero=True),
            size=reader.length(row.size, f"work.bore.readings[{n}].size"),
            direction=row.direction,
        )
        for n, row in enumerate(table.readings, 1)
    )


def _pieces(table: WorkTable, reader: Reader) -> tuple[Piece, ...]:
    simple = [
        name
        for name in ("outside", "length", "hub", "web", "rim")
        if getattr(table, name) is not None
    ]
    if table.outline is not None and simple:
        found = f"`outline` together with `{'`, `'.join(simple)}`"
        raise RefusedInput(reader.at("work"), found, "one or the other")
    if table.outline is not None:
        return tuple(_ring(r, f"work.outline[{n}]", reader) for n, r in enumerate(table.outline, 1))
    if table.outside is None or table.length is None:
        missing = "length" if table.length is None else "outside"
        allowed = "`outside` and `length`, or an `outline`"
        raise RefusedInput(reader.at("work"), f"no `{missing}` and no `outline`", allowed)
    outside = reader.length(table.outside, "work.outside")
    length = reader.length(table.length, "work.length")
    if all(part is None for part in (table.hub, table.web, table.rim, table.spokes)):
        return (Piece(0.0, length, outside),)
    return _wheel(table, outside, Span(0.0, length), reader)


def _ring(row: RingTable, place: str, reader: Reader) -> Piece:
    return Piece(
        start=reader.length(row.from_, f"{place}.from", zero=True),
        end=reader.length(row.to, f"{place}.to"),
        outside=reader.length(row.outside, f"{place}.outside"),
        inside=maybe(reader.length, row.inside, f"{place}.inside"),
    )


def _wheel(table: WorkTable, outside: float, whole: Span, reader: Reader) -> tuple[Piece, ...]:
    _check_named(table, reader)
    hub, rim = _hub(table, whole, reader), _rim(table, whole, reader)
    web_outside = rim.inside if rim else outside
    if rim and rim.inside >= outside - SLACK:
        _too_large(reader, "work.rim.inside", rim.inside, "the outside", outside)
    if hub and hub.outside >= web_outside - SLACK:
        _too_large(reader, "work.hub.outside", hub.outside, "the web's outside", web_outside)
    web = _web_span(table, rim.span if rim else whole, whole, reader)
    return _reaching(wheel(outside, hub, web, rim), whole, reader)


def _check_named(table: WorkTable, reader: Reader) -> None:
    """RefusedInput where what is named of hub, web, spokes and rim makes no wheel."""
    if table.spokes is not None and (table.hub is None or table.rim is None):
        missing = "hub" if table.hub is None else "rim"
        allowed = "`spokes` together with a `hub` and a `rim`"
        raise RefusedInput(reader.at("work"), f"`spokes` and no `{missing}`", allowed)
    no_web = table.web is None and table.spokes is None
    if no_web or (table.hub is None and table.rim is None):
        allowed = "a `web` together with a `hub`, a `rim` or both"
        found = "no `web`" if no_web else "a `web` alone"
        raise RefusedInput(reader.at("work"), found, allowed)


def _reaching(pieces: tuple[Piece, ...], whole: Span, reader: Reader) -> tuple[Piece, ...]:
    end = max(piece.end for piece in pieces)
    if end < whole.end - SLACK:
        show = Show("mm")
        found = f"hub, web and rim that end at {show.length(end)}"
        allowed = f"one that reaches the length, {show.length(whole.end)}"
        raise RefusedInput(reader.at("work"), found, allowed)
    return pieces


def _hub(table: WorkTable, whole: Span, reader: Reader) -> Hub | None:
    if table.hub is None:
        return None
    span = _span(table.hub.from_, table.hub.to, whole, "work.hub", reader)
    return Hub(reader.length(table.hub.outside, "work.hub.outside"), span)


def _rim(table: WorkTable, whole: Span, reader: Reader) -> Rim | None:
    if table.rim is None:
        return None
    span = _span(table.rim.from_, table.rim.to, whole, "work.rim", reader)
    return Rim(reader.length(table.rim.inside, "work.rim.inside"), span)


def _web_span(table: WorkTable, around: Span, whole: Span, reader: Reader) -> Span:
    """Where the web stands, or the spokes where no web says it."""
    if table.web is None:
        stated = table.spokes.thickness if table.spokes else None
        if stated is None:
            found, allowed = "no thickness", "`thickness`, or a `web` that says where they stand"
            raise RefusedInput(reader.at("work.spokes"), found, allowed)
        return _middle(stated, "work.spokes.thickness", around, reader)
    web = table.web
    stretch = web.from_ is not None or web.to is not None
    if stretch == (web.thickness is not None):
        found = "both a thickness and a stretch" if stretch else "no thickness"
        raise RefusedInput(reader.at("work.web"), found, "`thickness`, or `from` and `to`")
    if web.thickness is None:
        return _span(web.from_, web.to, whole, "work.web", reader)
    return _middle(web.thickness, "work.web.thickness", around, reader)


def _middle(stated: Value, place: str, around: Span, reader: Reader) -> Span:
    """A thickness in the middle of the rim."""
    thickness = reader.length(stated, place)
    if thickness > around.end - around.start + SLACK:
        room = around.end - around.start
        _too_large(reader, place, thickness, "the length around it", room)
    middle = (around.start + around.end) / 2
    start = middle - thickness / 2
    return Span(start if start > SLACK else 0.0, middle + thickness / 2)


def _span(start: Value | None, end: Value | None, whole: Span, place: str, reader: Reader) -> Span:
    span = Span(
        whole.start if start is None else reader.length(start, f"{place}.from", zero=True),
        whole.end if end is None else reader.length(end, f"{place}.to"),
    )
    if span.end <= span.start + SLACK or not span.within(whole):
        show = Show("mm")
        found = show.band(span.start, span.end, "length")
        allowed = f"a stretch within the length, 0 to {show.length(whole.end)}"
        raise RefusedInput(reader.at(place), found, allowed)
    return span


MOST_RUNOUT = 0.1
"""A casting that runs out by more of its outside was mistyped or is scrap (ours)."""


def _casting_runout(table: WorkTable, reader: Reader, outside: float) -> float | None:
    """How much the outside runs out as cast; RefusedInput where it is none, or past belief."""
    runout = maybe(reader.length, table.casting_runout, "work.casting_runout")
    if runout is None:
        return None
    if table.blank != "casting":
        found = "a runout as cast of a blank that is not said to be a casting"
        raise RefusedInput(reader.at("work.casting_runout"), found, 'it with `blank = "casting"`')
    if runout > MOST_RUNOUT * outside:
        most = MOST_RUNOUT * outside
        _too_large(reader, "work.casting_runout", runout, "a tenth of the outside", most)
    return runout


def _too_large(reader: Reader, place: str, found: float, limit: str, size: float) -> None:
    show = Show("mm")
    allowed = f"a size below {limit}, {show.length(size)}"
    raise RefusedInput(reader.at(place), show.length(found), allowed)
