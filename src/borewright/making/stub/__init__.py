"""A stub turned in the chuck to one bore and left there: plain with a screw, or slit and opened.

    asked       what is asked of a stub
    sizes       its sizes from the bore, or why there is none
    slit        the expanding one: slits, wall, plug, how far it may be opened
    plug        its plug, turned first, and the mouth that is bored to it
    drawn       stub, washer and plug as workshop drawings
    route       the order of turning, as words
    papers      route, last tenths, acceptance, cautions on one set of papers
    figures     its numbers as figures with their rules, and as JSON

May import what `making` may, and its neighbours made, fine_feed.
"""
