"""One file for each way of holding; each fills the record `Held` of `answer`.

    turned_stub   a stub turned in the chuck to this bore
    collet_stub   the same stub in a collet: it goes back true
    expanding     a slit sleeve on a cone between centers
    bonded        stuck to a plate by its face, or on a stub by its bore
    soft_mandrel  a soft bar between centers: turned to the bore, with a set screw, or bonded
    warm_fit      warmed, dropped on a plug that is larger than the bore, warmed off again

May import the files of holding beside this room (part, owned, clamped …), answer, job, mechanics,
reference, quantities, errors; one way does not import another.
"""
