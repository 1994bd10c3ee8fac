"""One file for each way of holding; each fills the record `Held` of `answer`.

    turned_stub   a stub turned in the chuck to this bore
    nut_mandrel   a mandrel with shoulder and nut between centers
    gang          several flat blanks between shoulder and nut
    threaded      a threaded mandrel with a shoulder, for a threaded bore
    cone_centers  between cones in the mouths of the bore
    faceplate     held down on the faceplate, set true by the indicator on the bore
    spigot_plate  a plate with a spigot turned in place to the bore, held down near the rim
    three_jaw     the scroll chuck
    four_jaw      the independent chuck, set true by indicator
    soft_jaws     jaws cut in place to what they grip
    endwise       clamped by the faces to a plate
    one_chucking  bore, rim and one face without letting go
    collet_stub   the same stub in a collet: it goes back true
    expanding     a slit sleeve on a cone between centers
    bonded        stuck to a plate by its face, or on a stub by its bore
    soft_mandrel  a soft bar between centers: turned to the bore, with a set screw, or bonded
    warm_fit      warmed, dropped on a plug that is larger than the bore, warmed off again

May import the files of holding beside this room (part, owned, clamped …), answer, job, mechanics,
reference, quantities, errors; one way does not import another.
"""
