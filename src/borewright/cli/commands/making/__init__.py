"""One file for each thing that `borewright make` makes; each offers `command`.

Loaded only when asked for.

    shared       the options that all of them have, and what becomes of their answers
    blank        the casting or the bar from which a part is made
    bored        the work that stub, soft mandrel and gauge are made for
    gauge        a go and not-go plug, or a stepped one
    mandrel      a plain taper mandrel with its papers
    set          mandrels for a list of bores
    soft         a soft mandrel from bar, turned to this bore or as drawn
    strip        a paper strip that makes a bore gauge of a mandrel
    stub         a stub turned in the chuck to one bore
"""
