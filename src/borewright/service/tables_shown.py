"""The reference tables, with their sources, for showing."""

from borewright.reference.library import table_names
from borewright.reference.print import TableView, describe_table, table_lines

__all__ = ["TableView", "describe_table", "table_lines", "table_names"]
