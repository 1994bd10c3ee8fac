"""Every hold weighed and ranked, and what of the shop it takes.

    candidates    every plain taper mandrel that the bore comes near, asked every question
    held_rows     every other way of holding, asked the same
    deciding      of several answers the worst, and the one that is said first
    ranking       one order of all rows: hard limits, risk, truth, time
    mandrel_needs what a plain mandrel needs beside itself: what turns it, a tailstock center
    gives         what each gives: torque, thrust by sense, stiffness, strength
    weighing_all  all of it for a job, best first; what `use` allows
    arrangement   which press and which lathe of the shelf: the first that serves
    recommended   which row is recommended, and which other ways serve too
    timed         the recommended hold with its cuts set to take the least time, asked again
    load_passes   passes of a tooth space that is left open

May import held, questions, taper, shop, weighing and all below planning.
"""
