"""Work clamped by its faces: by a screw, a nut, straps or bolts.

    clamped         between two faces by a screw or nut: how hard, what that holds
    cap             what spans the bore under one bolt: washer or clamp plate, its size
    nutted          one work or several between the shoulder and nut of a mandrel
    on_plate        held down on a plate by straps, bolts or one bolt; its balance
    on_plate_words  the steps, needs and drawing of it

May import the files beside the rooms (part, owned), bores, answer, job, mechanics, reference.
"""
