"""One hold on a plain taper mandrel with its travel chosen, and what belongs to pressing.

    trial        one hold with its travel, its cuts and its forces: what questions look at
    travel       how far to press: far enough for the cut, not so far that the bore is hurt
    rings_check  the pencil check: what rings side by side say, and why they differ
    press_room   daylight, throat, ram travel, table slot; the opening of a vice
    support      the ring under the hub
    mouths       the chamfer in which a facing tool stops
    dishing      what the push would do to a web or to spokes if the rim were held
    soundness    keyways, cross holes, spokes and flaws: when they forbid the press, and in words
    bore_words   a bore stated by its limits
    bending      what the mandrel gives under the tool, how it swings, what its centers carry

May import shop, weighing and all below planning.
"""
