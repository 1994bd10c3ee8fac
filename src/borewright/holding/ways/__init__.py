"""One file for each way of holding; each fills the record `Held` of `answer`.

    turned_stub   a stub turned in the chuck to this bore
    three_jaw     the scroll chuck
    four_jaw      the independent chuck, set true by indicator
    soft_jaws     jaws cut in place to what they grip
    endwise       clamped by the faces to a plate
    one_chucking  bore, rim and one face without letting go

May import the files of holding beside this room (part, owned, clamped …), answer, job, mechanics,
reference, quantities, errors; one way does not import another.
"""
