"""Ways of holding: each turns work and a tool into a grip, and never knows of a cut.

    way            what every way of holding offers to the plan
    registry       the ways that are computed, by id
    drives/        positive drives beside a hold: a second dog, studs
    ways/          one file for each way beside the plain taper mandrel
    part           the part as a way sees it: bore, faces, what sticks out, metal
    owned          whether the shelf has what a way needs, or it is made, or bought
    clamped        work clamped between faces by a screw or nut
    nutted         one work or several between the shoulder and nut of a mandrel
    on_plate       work held down on a plate by straps, bolts or one bolt; its balance
    on_plate_words the steps, needs and drawing of it
    between        a stepped mandrel between centers: how far it gives
    grasp          what jaws can take hold of: hub, inside of the rim, bore
    jawed          work in jaws: how hard, what that holds, how far it springs
    chucked        what every chuck says of work in its jaws
    stub           a stub turned to the bore where it stands: sizes, turning, stiffness, clamp
    stub_picture   such a stub as drawn
    no_middle      whether anything round can find the middle of the bore
    between_centers  a bar between centers that carries work: stiffness, drawing
    pressed_ring   a bore pressed from within: stress, growth, lobes, what warmth takes
    bonds          what sticks work on: shear, warmth, how it lets go
    bond_picture   work stuck on, as drawn
    friction_fit   a bore held by friction on a plain round: torque, thrust, tilt
    flatted_bar    a bar as drawn with a flat under a set screw
    soft_bar       a soft bar between centers: needs, centering, drawing
    soft_screwed   the hold of a bar as drawn with its set screw
    soft_bonded    the hold of a bar with the work bonded on it
    sleeve         the slit sleeve of a usual expanding mandrel
    facts          what the tables say of this work on a hard mandrel, as draws
    bore_reading   how well the bore is known: as stated, or by the gauge that read it
    bore_shape     the bore's smallest size along its depth, seen from either face
    mandrels       a size on the shelf turned into a full mandrel
    measured_mandrel  a mandrel measured at stations: profile, window, flat stretches
    measured_words what such a mandrel shows of its straightness, in sentences
    pressed_state  what a joint does at one setting, whichever model says it
    elastic_joint  a bore on a mandrel as two elastic bodies
    contact_curves its curves for every modulus that is drawn
    lift_arm       how much tilt a joint stands, over its normal force
    taper_contact  a taper hold as elastic bodies, at any travel, for every draw
    taper_rings    the same by rings side by side: the pencil check
    drawn_state    the pressed joint at one travel: pressure, gap and contact along the bore
    plain_taper    the plain taper mandrel

May import answer, job, mechanics, reference, quantities, errors.
"""
