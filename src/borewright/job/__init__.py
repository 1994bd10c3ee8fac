"""What a user states: the frozen records, and the reading and writing of the files that hold them.

    records.py       Job, Work, Bore, Piece, Mandrel, Machine, Shelf, CutWish …, in SI
    file.py          read_job, parse_job
    shelf_file.py    read_shelf, parse_shelf, merge_shelf
    write.py         write_job, job_text (loads tomli-w: import it from there)
    schema.py        the form of both files, job_schema (loads pydantic: import it from there)
    form.py          holding tables against the form, one sentence for what does not fit
    toml_text.py     from a path to TOML tables
    typed.py         reading one file's quantities with its units and places
    build_work.py    [work] -> Work
    build_shop.py    [machine], [hold], [[cut]], shelf -> Machine, Shelf, CutWish
    stations.py      the measured diameters of a mandrel, read and checked
    outline.py       hub, web and rim as rings; whether rings make a part
    spell.py         SI values as text that reads back exactly

May import quantities, reference, mechanics and errors. Nothing heavy is loaded until a file is
read.
"""

from borewright.job.file import parse_job, read_job
from borewright.job.records import (
    Bore,
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

__all__ = [
    "Bore",
    "BoreReading",
    "CutWish",
    "Finished",
    "Job",
    "Machine",
    "Mandrel",
    "MandrelNote",
    "Piece",
    "Shelf",
    "Work",
    "merge_shelf",
    "parse_job",
    "parse_shelf",
    "read_job",
    "read_shelf",
]
