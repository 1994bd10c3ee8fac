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
    drive_view    studs or a second dog beside the mandrel, in its end view
    proof_arm     the arm and weight that prove the grip, in both end views
    sheet_layout  the whole drawing

Work held in any way but the plain taper:

    held_look     names, edges and section lines by role
    held_shape    sections joined by role, silhouettes, what lies open, what the tailstock sees
    held_frame    where the side view stands; the tailstock's center
    held_pieces   the pieces from the side, half in section
    held_labels   their names on stems, and the line over what is turned
    held_faces    A and B beside the faces
    held_rows     the dimensions under it
    held_view     the side view: all of these
    held_marks    jaws, straps, screws … as shapes seen from the end
    held_end      seen from the tailstock: marks, slip circles, proof load, rotation
    held_sheet    the whole drawing of such a plan

The pressed joint, and a gauge on paper:

    pressed_sheet the picture of the pressed joint: words, section, chart, table
    pressed_frame its scales;  pressed_section: its bands and mandrel;  band_numbers: their numbers
    pressed_chart the pressure along the bore;  band_table: what each band is
    strip         the paper strip that makes a bore gauge of a mandrel, at full size

A pulley's crown at full size:

    crown_pieces  the two pieces of its template: a gauge, and the form that the gauge fits
    crown_sheet   the page: pieces, stretched view with its stairs, list of cuts
    scale_marks   lines of known length to hold a rule to
    dxf           a scene as DXF, in real sizes

Workshop drawings of what is to be made:

    workshop      one turned part on one page, with sizes, limits and title block
    dimension_parts  a dimension as lines, heads and words

A line chart:

    line_chart    the whole chart;  line_frame: its scales and lines on paper
    line_axis     a scale: the shop's unit, its range, round ticks
    line_trace    a line on paper and distances to it;  line_labels: words at the lines
    line_marks    uprights, hatched bands, words over the frame

May import answer, job, mechanics, reference, quantities, errors; never `report`.
"""

from borewright.drawing.end_view import end_view
from borewright.drawing.inset import inset
from borewright.drawing.scene import Scene
from borewright.drawing.sheet_layout import draw_plan
from borewright.drawing.side_view import side_view
from borewright.drawing.svg import svg

__all__ = ["Scene", "draw_plan", "end_view", "inset", "side_view", "svg"]
