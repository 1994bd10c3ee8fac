"""One file per command; each offers `command`. Loaded only when asked for.

ask          six questions, an answer, a job file and a bench sheet
plan         the whole plan for a job file
rescue       every way out when a bore came out wrong
picture      what the pressed joint does to the work, drawn
fit          one bore on one plain taper mandrel
cut          one turning cut
load         one grinding or gear-cutting pass
crown        the crown of a flat-belt pulley
parallel     two test bands, and the tailstock's set-over
runout       whose runout it is, and what may be behind it
balance      wax on a heavy-sided wheel, as a hole or a weight
mandrel      diameters measured along a mandrel
make         what the shop makes itself;  making: one file per thing
shelf        what the shop owns: imported, shown, doubted
shelf_parts  a list of parts against one shelf
shelf_chart  one page for the wall: the shelf's bores, and how deep a cut holds
reference    the tables, with their sources
"""
