"""Use cases, one small function each: the only vocabulary of the doors.

    planned       plan: a job, and perhaps a shelf -> the whole plan
    fitted        fit: one bore on one mandrel -> position, force, stress, window
    cut_forces    cut: one turning cut -> forces, torque, power
    answers       ask: six plain answers -> a job, with what had to be assumed
    files         a plan's sheet and drawing, written whole or not at all
    tables_shown  the reference tables, with their sources

May import every room below. Nothing heavy is loaded until a use case is called.
"""
