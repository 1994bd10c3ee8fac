"""Ways of holding: each turns work and a tool into a grip, and never knows of a cut.

    registry   the ways that are computed, by id
    way        what every way of holding offers to the plan
    ways/      one file for each way beside the plain taper mandrel
    drives/    positive drives beside a hold: a second dog, studs
    taper/     the plain taper mandrel: seat, contact, grip
    bonding/   what sticks work on
    bars/      stubs, and bars between centers, turned to this bore
    fits/      bores pressed from within: rings, sleeves, friction
    faces/     work clamped by its faces: screws, nuts, plates
    jaws/      work in the jaws of a chuck
    owned      whether the shelf has what a way needs, or it is made, or bought
    no_middle  whether anything round can find the middle of the bore
    between    a stepped bar between centers: how far it gives where the work stands
    close_fit  what a close fit takes of a tilt by itself
    part       the part as a way sees it: bore, faces, what sticks out, metal
    figured    results turned into figures that travel
    bores/     what is known of the bore: its readings, its shape

Imports go up this list only (checked). May import answer, job, mechanics, reference, quantities,
errors; `taper` also shapes.
"""
