"""What a part is made from: the casting and its pattern.

    casting           the casting of a job, put together from the files below
    casting_asked     what is stated beside the job
    wheel             the finished wheel;  stock: metal left by face;  rings: as cast, with draft
    mould             which face is up, parting, corners, riser;  mould_words: said
    hold              core or solid, a boss to hold by
    shrink            which shrinkage is taken;  melt: weights and spares
    casting_papers    its sheets;  casting_words: what sheets and drawings share
    casting_figures   its numbers with their rules
    casting_drawn     the casting drawn;  pattern_drawn: its pattern and core;  drawn_sizes: shared
    casting_job       the casting's own job, for a plan

May import drawing, report, answer, job, mechanics, reference, quantities, errors.
"""
