"""The plain taper mandrel: where the work touches and sits, how hard it grips, at any travel.

    plain_taper       one mandrel, one face leading, asked for its grip at any travel
    taper_contact     the hold as elastic bodies, for every draw
    taper_rings       the same by rings side by side: the pencil check
    drawn_state       the pressed joint at one travel: pressure, gap and contact along the bore
    contact_curves    what a joint does against its overlap, for every modulus that is drawn
    lift_arm          how much tilt a joint stands, over its normal force
    elastic_joint     a bore on a mandrel as two elastic bodies
    pressed_state     what a joint does at one setting, whichever model says it
    facts             what the tables say of this work on a hard mandrel, as draws
    mandrels          a size on the shelf turned into a full mandrel
    measured_mandrel  a mandrel measured at stations: profile, window, flat stretches
    measured_words    what such a mandrel shows of its straightness, in sentences

May import bores, shapes, answer, job, mechanics, reference, quantities, errors.
"""
