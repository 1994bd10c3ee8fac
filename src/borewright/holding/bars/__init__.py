"""Bars turned to this bore: stubs in the chuck, soft bars between centers.

    stub             a stub turned to the bore where it stands: sizes, turning, stiffness, clamp
    stub_picture     such a stub as drawn
    between_centers  a plain bar between centers that carries work: stiffness, drawing
    soft_bar         a soft bar between centers: needs, centering, drawing
    soft_screwed     the hold of a bar as drawn with its set screw
    flatted_bar      a bar as drawn with a flat under a set screw

May import faces, fits, the files beside the rooms (part, owned), bores, answer, job, mechanics,
reference.
"""
