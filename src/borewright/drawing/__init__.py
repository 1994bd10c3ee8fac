"""Pictures: a plan becomes a scene, a scene becomes SVG.

    scene         the primitives, in mm on paper: lines, paths, circles, arcs, hatching, words
    svg           a scene as SVG text
    measure       how wide words are, from the font itself
    hatch         section lines across a region
    outline       the work's section and silhouette from its rings
    frame         scale, and metres to paper
    slip          where the cut would let go
    dimension     dimension lines in rows
    callout       labels on stems, kept apart
    mandrel_view  the mandrel between centres from the side, with its dog
    work_view     the work from the side, half in section
    interrupted   spokes, keyway and cross hole in both views
    face_letters  A and B beside its faces
    side_labels   the labels over the side view
    side_rows     the dimensions under it
    breaks        upright lines broken where words stand
    side_view     all of these
    end_view      seen from the headstock: slip circles, dog, proof load
    inset         interference along the bore
    sheet_layout  the whole drawing
    pressed_sheet the picture of the pressed joint: words, section, chart, table
    pressed_frame its scales;  pressed_section: its bands and mandrel;  band_numbers: their numbers
    pressed_chart the pressure along the bore;  band_table: what each band is
    strip         the paper strip that makes a bore gauge of a mandrel, at full size

May import answer, job, mechanics, reference, quantities, errors; never `report`.
"""

from borewright.drawing.end_view import end_view
from borewright.drawing.inset import inset
from borewright.drawing.scene import Scene
from borewright.drawing.sheet_layout import draw_plan
from borewright.drawing.side_view import side_view
from borewright.drawing.svg import svg

__all__ = ["Scene", "draw_plan", "end_view", "inset", "side_view", "svg"]
