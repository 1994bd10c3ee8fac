"""Tables with provenance, and no model inside. Every number stands beside its source.

    library       Tables, tables(), table_names(): look anything up here
    certificate   what a table answers, where it comes from, its columns and units
    table         rows of a CSV file;  checks: what every row must pass;  names: finding by any name
    ranges        Range: low, best, high, unit, source
    provenance    Source: published, standard, practice, memory, ours
    materials  friction  cutting  mandrels  shop  guidance   the records by family
    print         describe_table: a table ready to show
    data/         NAME.csv with its birth certificate NAME.toml; sources.csv is cited by all

Imports `quantities`, `errors` and the standard library only.
"""

from borewright.reference.certificate import Certificate, Column
from borewright.reference.cutting import CutDefaults, CuttingRatio, Kienzle
from borewright.reference.friction import Friction
from borewright.reference.guidance import Formula, Hazard, Threshold
from borewright.reference.library import Tables, table_names, tables
from borewright.reference.mandrels import PlainMandrel
from borewright.reference.materials import Material
from borewright.reference.print import TableView, describe_table, table_lines
from borewright.reference.provenance import SOURCE_KINDS, Source
from borewright.reference.ranges import Range
from borewright.reference.shop import Gauge, Press, Way

__all__ = [
    "SOURCE_KINDS",
    "Certificate",
    "Column",
    "CutDefaults",
    "CuttingRatio",
    "Formula",
    "Friction",
    "Gauge",
    "Hazard",
    "Kienzle",
    "Material",
    "PlainMandrel",
    "Press",
    "Range",
    "Source",
    "TableView",
    "Tables",
    "Threshold",
    "Way",
    "describe_table",
    "table_lines",
    "table_names",
    "tables",
]
