"""A soft mandrel from bar: turned to one bore with a slight taper, or as drawn with a set screw.

    asked       what is asked of a soft mandrel
    ends        the bar past the work: dog, flat, center holes, or the chuck
    turned      the bar that is turned to the bore
    as_drawn    the bar as it comes, its clearance, its flat and its screw
    screwed     the set screw in the hub, or what would be room for one
    drawn       either as a workshop drawing
    route       the order of making it, as words
    papers      route, what is measured, cautions, pencil lines
    figures     its numbers as figures with their rules, and as JSON

May import what `making` may, and its neighbours cannot, facts, center_holes.
"""
