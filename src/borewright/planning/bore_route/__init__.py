"""From the hole as it stands to the bore that the holding needs.

    wanted   what the bore must come to, and what it comes from; None where it is there already
    kit      the drills, reamers, bar and gauge of the shelf, or those taken to be there
    passes   one tool through the hole: the size it leaves and the rule behind it
    opening  the hole that a bar or a reamer starts from: spot, pilot, drill
    ways     every way to the window, its chance, and the order they are ranked in
    steps    a way as the steps a hand takes: stock, spindle speed, feed, form
    plug     go and not-go, the stepped plug, how well the gauge knows the window
    words    ream or bore, what to do before mounting, why not another way
    route    the whole route

The windows come in as numbers. May import taper, shop, weighing and all below planning.
"""
