"""A set of mandrels for a list of bores.

    design        how many of each size, and what each is to be; the order of making
    steel         the bars to buy, and what is cut from which
    papers        all of it as sheets

May import what making may.
"""
