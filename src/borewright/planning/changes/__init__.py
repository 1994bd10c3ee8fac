"""The cheapest change to the blank or to the order of work that removes the trouble.

    changes       which variants bring something, ranked by the depth of cut gained
    plain_yes     whether there is anything to change
    deepest       the deepest cut with the usual reserve, before and after
    variant       a changed job with its reason: what every variant is
    hub           a boss left on and turned off last, a longer hub, a larger one
    bore          opened to the next mandrel, chamfered first, keyway or hole cut last
    order         the rim roughed before mounting, the sprue moved

May import steps, choice, questions, taper, shop, weighing and all below planning.
"""
