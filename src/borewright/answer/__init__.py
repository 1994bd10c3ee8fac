"""The frozen records of what borewright says, and the draws they are made of.

    held       Held, Grip, Need, Check: what any way of holding makes of a job
    held_picture  HeldPicture: the geometry of work held in any way
    plan       Plan: the whole answer for one job
    figure     Figure, Input, Assumption, Caution
    bore_route BoreRoute, BoreStep: how the bore comes to its window
    records    Verdict, Question, Candidate, Need, TaperGrip, Demand, Step, Cut …
    rescue     Rescue, WayOut: a bore that came out wrong, every way out ranked
    picture    Band, Ring, Layout: the geometry that is drawn
    pressed    PressedPicture, PressedShape: what the pressed joint does to the work
    chart      Chart, ChartBar, ChartCell …: the wall chart of a shelf
    strip      Strip, Tick: the paper strip that makes a bore gauge of a mandrel
    crown      PulleyCrown, Stepped: a pulley's crown and how it is cut
    cut_words  how the depth and feed of a cut are said, and what diameter it leaves
    first_hold FirstHold, JawPlace: the first hold of a casting
    schedule   Schedule, Taken, LineChart: how the cuts are taken, how warm it gets
    change     Change: what to change of the part or the order, and what it brings
    papers     Papers, Sheet and their blocks: what is handed out for a thing to be made
    drawn_part DrawnPart: a turned part as a workshop drawing shows it
    made_mandrel  MadeMandrel: a mandrel to be made;  made_set: a set of them
    made_casting  MadeCasting: a casting to be made, its pattern, mould and melt
    made_bar   BarBlanks: blanks from bar, with the cutting list
    streams    which independent stream of draws each uncertain input uses

May import job, mechanics, reference, quantities, errors. Names load from their files, so that a
caller who needs no arrays does not pay for them.
"""
