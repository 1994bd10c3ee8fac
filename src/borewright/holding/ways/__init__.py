"""One file for each way of holding; each fills the record `Held` of `answer`.

    turned_stub   a stub turned in the chuck to this bore
    collet_stub   the same stub in a collet: it goes back true

May import the files of holding beside this room (part, owned, clamped …), answer, job, mechanics,
reference, quantities, errors; one way does not import another.
"""
