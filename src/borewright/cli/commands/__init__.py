"""One file per command; each offers `command`. Loaded only when asked for.

ask          six questions, an answer, a job file and a bench sheet
plan         the whole plan for a job file
fit          one bore on one plain taper mandrel
cut          one turning cut
reference    the tables, with their sources
"""
