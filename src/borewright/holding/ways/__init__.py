"""One file for each way of holding; each fills the record `Held` of `answer`.

    turned_stub   a stub turned in the chuck to this bore
    nut_mandrel   a mandrel with shoulder and nut between centers
    gang          several flat blanks between shoulder and nut
    threaded      a threaded mandrel with a shoulder, for a threaded bore
    cone_centers  between cones in the mouths of the bore
    faceplate     held down on the faceplate, set true by the indicator on the bore
    spigot_plate  a plate with a spigot turned in place to the bore, held down near the rim

May import the files of holding beside this room (part, owned, clamped …), answer, job, mechanics,
reference, quantities, errors; one way does not import another.
"""
