"""A plan on any way but the plain taper mandrel, carried through: words, steps, the whole plan.

    carried_words  headline, what to have ready, what was assumed
    carried_steps  the numbered steps: mounting, proving, cutting, letting go
    carried_plan   the whole plan of one such hold

May import words, steps, choice, held and all below planning.
"""
