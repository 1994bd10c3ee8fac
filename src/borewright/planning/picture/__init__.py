"""What is drawn.

    layout          the geometry of mandrel, work and limits
    pictured        the pressed joint, for its picture
    pictured_notes  what that picture does not show
    grip_chart      grip against radius;  push_chart: push against position;  charts: both
    schedule_filled a schedule with its heat and its charts
    tinted          its tension as numbered bands, and the outlines to fill

May import words, choice, questions, taper, shop, weighing and all below planning.
"""
