"""What a part is made from: the casting and its pattern, or pieces off a bar.

    cutting_list      pieces out of bars of several lengths: least bar taken, longest rest kept
    cutting_patterns  the ways one bar can be cut, all of them or the best at given prices
    cutting_solved    which ways are used, and how often: integer programs
    bar               blanks of a batch from bar;  bar_papers: their papers and drawing
    cutting_priced    ways found by price where they are too many, and what none can beat

May import drawing, report, answer, job, mechanics, reference, quantities, errors.
"""
