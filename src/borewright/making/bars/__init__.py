"""Pieces off bars: the cutting list of any batch, and blanks of a part from bar.

    cutting_list      pieces out of bars of several lengths: least bar taken, longest rest kept
    cutting_patterns  the ways one bar can be cut, all of them or the best at given prices
    cutting_solved    which ways are used, and how often: integer programs
    cutting_priced    ways found by price where they are too many, and what none can beat
    bar_blanks        the blanks of a batch: next bar sold, length of a piece
    bar_papers        their papers and drawing

May import what making may.
"""
