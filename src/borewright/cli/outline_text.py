"""The text of `--outline`: 'from,to,outside[,inside]; …' along z from the leading face."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from borewright.errors import RefusedInput
from borewright.job.outline import check_pieces
from borewright.job.records import Bore, Piece
from borewright.quantities.read import read_length

if TYPE_CHECKING:
    from borewright.service.fit_records import Piece as FitPiece

WHERE = "--outline"


def read_outline(text: str, bore: float, bare: Any) -> tuple[FitPiece, ...]:
    """The pieces; RefusedInput, naming the piece, for one that cannot be read or does not fit.

    >>> read_outline("0mm,30mm,40mm; 10mm,20mm,100mm,40mm", 0.018, None)
    ((0.0, 0.03, 0.04, None), (0.01, 0.02, 0.1, 0.04))
    """
    parts = [p for p in text.split(";") if p.strip()]
    if not parts:
        raise RefusedInput(
            WHERE, "nothing", "pieces 'from,to,outside[,inside]' with ; between them"
        )
    pieces = tuple(_piece(part, k, bare) for k, part in enumerate(parts, 1))
    check_pieces(pieces, Bore(bore), WHERE)
    return tuple((p.start, p.end, p.outside, p.inside) for p in pieces)


def _piece(part: str, number: int, bare: Any) -> Piece:
    where = f"{WHERE} piece {number}"
    cells = [c.strip() for c in part.split(",")]
    if len(cells) not in (3, 4):
        raise RefusedInput(
            where, f"{len(cells)} values", "from,to,outside or from,to,outside,inside"
        )
    start = 0.0 if cells[0] == "0" else read_length(cells[0], f"{where} from", bare=bare, zero=True)
    end, outside = (
        read_length(c, f"{where} {w}", bare=bare)
        for c, w in zip(cells[1:3], ("to", "outside"), strict=True)
    )
    inside = read_length(cells[3], f"{where} inside", bare=bare) if len(cells) == 4 else None
    return Piece(start, end, outside, inside)
