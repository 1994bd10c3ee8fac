"""Cuts, and what each asks of a hold: a Demand. Never knows how the work is held.

    schedule    the cuts of a plan: those it chooses, or what is asked for
    turning     the turning it chooses: faces, outside, steps, grooves, in order
    edges       edges broken and chamfered, and which way that pushes
    led         which way edges and steps push, by the face towards the headstock
    base        one lathe cut: tool, speed and feed from the lathe's own lists
    stock       the metal to come off, and how deep a pass it bears
    directions  what a force along the mandrel does to the seat
    loads       grinding and gear-cutting passes, as a job file asks for them
    load_demand what those ask of the hold
    knock       peak over steady force where a hole interrupts the cut
    demand      torque, axial, radial and tangential force of one cut, as draws

May import answer, job, mechanics, reference, quantities, errors.
"""
