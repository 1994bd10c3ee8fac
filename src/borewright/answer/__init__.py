"""The frozen records of what borewright says, and the draws they are made of.

    records    Figure, Verdict, Question, TaperGrip, Demand, Step, Caution, Cut, Plan …
    held       Held, Grip, Need, Check: what any way of holding makes of a job
    held_picture  HeldPicture: the geometry of work held in any way
    figure     Figure, Input, Assumption, Caution
    bore_route BoreRoute, BoreStep: how the bore comes to its window
    records    Verdict, Question, Grip, Demand, Step, Caution, Cut, Plan …
    picture    Band, Ring, Layout: the geometry that is drawn
    pressed    PressedPicture, PressedShape: what the pressed joint does to the work
    chart      Chart, ChartBar, ChartCell …: the wall chart of a shelf
    strip      Strip, Tick: the paper strip that makes a bore gauge of a mandrel
    cut_words  how the depth and feed of a cut are said, and what diameter it leaves
    first_hold FirstHold, JawPlace: the first hold of a casting
    change     Change: what to change of the part or the order, and what it brings
    streams    which independent stream of draws each uncertain input uses

May import job, mechanics, reference, quantities, errors. Names load from their files, so that a
caller who needs no arrays does not pay for them.
"""
