"""What sticks work on: glue, retaining compound, wax.

    bonds         shear, warmth, how each lets go
    bond_picture  work stuck on, as drawn
    soft_bonded   the hold of a soft bar with the work bonded on it

May import bars, the files beside the rooms (part, owned), bores, answer, job, mechanics, reference.
"""
