"""Use cases of what the shop makes itself.

What they give is a `Made`: words, drawings, numbers.

    outputs       drawings and papers as files: SVG, DXF, PDF
    hints         what of a plan the shop can make, and the command that draws it
    mandrel       a plain taper mandrel: drawing, route, acceptance, strip, a shelf to try it with
    mandrel_set   a set of them for a list of bores
    casting_blank casting and pattern of a job, with the casting's own job
    bar_blank     blanks of a batch from bar
    bored_work    the bored work that something is made for, from a file or from sizes typed
    stub          a stub turned in the chuck to one bore, plain or expanding
    soft          a soft mandrel from bar, turned to the bore or as drawn
    gauge         a go and not-go plug, or a stepped one
    strip         the paper strip that makes a bore gauge of one mandrel
"""
