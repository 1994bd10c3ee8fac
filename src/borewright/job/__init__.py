"""What a user states: the frozen records, and the reading and writing of the files that hold them.

    records.py       Job, Work, Bore, Piece, Mandrel, Machine, Shelf, CutWish …, in SI
    interrupted.py   Keyway, CrossHole, Spokes, Chamfers;  web.py: what stands between hub and rim
    tools.py         OwnPress, OwnDog, OwnDrill, OwnReamer, OwnGauge …: the rest of a shelf
    file.py          read_job, parse_job
    shelf_file.py    read_shelf, parse_shelf, merge_shelf
    write.py         write_job, job_text (loads tomli-w: import it from there)
    write_shelf.py   write_shelf, shelf_text (likewise)
    csv_table.py     a spreadsheet's export as header and rows;  csv_kinds.py: its columns by kind
    csv_columns.py   which column means what;  csv_shelf.py: its rows as records, or bad and why
    parts_file.py    a list of parts out of a spreadsheet's export, one job a row
    schema.py        the form of both files, job_schema (loads pydantic: import it from there)
    schema_crown.py  the form of a crown
    schema_tools.py  the form of presses, dogs …;  schema_kinds.py: quantities, texts, tables
    form.py          holding tables against the form, one sentence for what does not fit
    toml_text.py     from a path to TOML tables
    typed.py         reading one file's quantities with its units and places
    bore_text.py     a bore stated by its limits: `15 H7`, or a smallest and a largest size
    bore_thread.py   a thread in the bore: `1in x 8`, `M20 x 1.5`
    build_finished.py  [work.finished] -> Finished;  finished_form.py: its length, steps, grooves
    finished_edges.py  the edges that turning leaves on the outside, and how each is broken
    crown_wish.py    the crown wanted on a pulley's face, and that face;  build_crown.py
    build_work.py    [work] -> Work;  build_interrupted.py: its keyway, cross hole and spokes
    build_chamfers.py  the chamfers at the bore's edges, and whether there is metal for them
    build_shop.py    [machine], [hold], shelf -> Machine, Shelf
    build_cuts.py    [[cut]] -> CutWish, each kind with its own keys
    build_tools.py   [[press]], [vice], [hammer], [[dog]], [[reamer]], [[gauge]] -> their records
    build_drills.py  [[drill]], [boring_bar] -> theirs
    stations.py      the measured diameters of a mandrel, read and checked
    hollow.py        how large a mandrel's own hole may be
    outline.py       hub, web and rim as rings; whether rings make a part
    spell.py         SI values as text that reads back exactly

May import quantities, reference, mechanics and errors. Nothing heavy is loaded until a file is
read.
"""

from borewright.job.crown_wish import CrownWish
from borewright.job.file import parse_job, read_job
from borewright.job.interrupted import Chamfers, CrossHole, Keyway, Spokes
from borewright.job.records import (
    Bore,
    BoreLimits,
    BoreReading,
    CutWish,
    Finished,
    Job,
    Machine,
    Mandrel,
    MandrelNote,
    Piece,
    Shelf,
    Work,
)
from borewright.job.shelf_file import merge_shelf, parse_shelf, read_shelf
from borewright.job.tools import (
    OwnBoringBar,
    OwnDog,
    OwnDrill,
    OwnGauge,
    OwnHammer,
    OwnPress,
    OwnReamer,
    OwnVice,
)

__all__ = [
    "Bore",
    "BoreLimits",
    "BoreReading",
    "Chamfers",
    "CrossHole",
    "CrownWish",
    "CutWish",
    "Finished",
    "Job",
    "Keyway",
    "Machine",
    "Mandrel",
    "MandrelNote",
    "OwnBoringBar",
    "OwnDog",
    "OwnDrill",
    "OwnGauge",
    "OwnHammer",
    "OwnPress",
    "OwnReamer",
    "OwnVice",
    "Piece",
    "Shelf",
    "Spokes",
    "Work",
    "merge_shelf",
    "parse_job",
    "parse_shelf",
    "read_job",
    "read_shelf",
]
