"""Tables with provenance, and no model inside. Every number stands beside its source.

    library       Tables, tables(), table_names(): look anything up here
    certificate   what a table answers, where it comes from, its columns and units
    table         rows of a CSV file;  checks: what every row must pass;  names: finding by any name
    ranges        Range: low, best, high, unit, source
    provenance    Source: published, standard, practice, memory, ours
    materials  friction  cutting  mandrels  shop  guidance   the records by family
    holding       HoldingTool, SetupMinutes
    drills  limits  processes  centers  crowns  drives  shrinkage  gears   from the trade
    holding       what holds work, set-up minutes;  rescue: what can go wrong with a bore
    making        steels and round bar that mandrels are made from; center holes that fit
    foundry       stock on a casting by habit and standard; what melting and pouring take
    mends         what a mend of a blocked cut takes, edges a tool can be given
    part_changes  what a change to the part costs;  symptoms: what may be behind a runout
    trade_lookups  load_lookups  making_lookups  screw_lookups  the parts of Tables that ask those
    screws        coarse threads with their drills, the set screw there is room for
    print         describe_table: a table ready to show;  shown_sizes: its lengths in shop units
    data/         NAME.csv with its birth certificate NAME.toml; sources.csv is cited by all

Imports `quantities`, `errors` and the standard library only.
"""

from borewright.reference.centers import Center
from borewright.reference.certificate import Certificate, Column
from borewright.reference.crowns import Crown
from borewright.reference.cutting import CutDefaults, CuttingRatio, ForcePoint, Kienzle
from borewright.reference.drills import RoundTool
from borewright.reference.drives import Dog, Expanding, SetScrew
from borewright.reference.friction import Friction
from borewright.reference.gears import CutterNumber, GearCutter, GearTeeth
from borewright.reference.guidance import Formula, Hazard, Threshold
from borewright.reference.library import Tables, table_names, tables
from borewright.reference.limits import Limits
from borewright.reference.mandrels import PlainMandrel
from borewright.reference.materials import BroadMaterial, Material
from borewright.reference.mends import MendMinutes, ToolEdge
from borewright.reference.print import TableView, describe_table, table_lines
from borewright.reference.processes import Process
from borewright.reference.provenance import SOURCE_KINDS, Source
from borewright.reference.ranges import Range
from borewright.reference.screws import Screw
from borewright.reference.shop import Gauge, Press, Way
from borewright.reference.shrinkage import Shrinkage
from borewright.reference.symptoms import Cause

__all__ = [
    "SOURCE_KINDS",
    "BroadMaterial",
    "Cause",
    "Center",
    "Certificate",
    "Column",
    "Crown",
    "CutDefaults",
    "CutterNumber",
    "CuttingRatio",
    "Dog",
    "Expanding",
    "ForcePoint",
    "Formula",
    "Friction",
    "Gauge",
    "GearCutter",
    "GearTeeth",
    "Hazard",
    "Kienzle",
    "Limits",
    "Material",
    "MendMinutes",
    "PlainMandrel",
    "Press",
    "Process",
    "Range",
    "RoundTool",
    "Screw",
    "SetScrew",
    "Shrinkage",
    "Source",
    "TableView",
    "Tables",
    "Threshold",
    "ToolEdge",
    "Way",
    "describe_table",
    "table_lines",
    "table_names",
    "tables",
]
