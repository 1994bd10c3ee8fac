"""What a part is made from: the casting and its pattern.

    casting           the casting of a job, put together from the files below
    casting_asked     what is stated beside the job
    wheel             the finished wheel;  stock: metal left by face;  rings: as cast, with draft
    mould             which face is up, parting, corners;  mould_words: said
    feed              the riser, how large and where it stands;  feed_words: said
    core              cored, left open for sand, or solid;  boss: one to hold by, where asked for
    holds             what of the casting jaws could take
    shrink            which shrinkage is taken;  melt: weights and spares
    care              why it is to be made with care, and what hurts
    casting_papers    its sheets;  pattern_papers, melt_papers: two of them
    casting_words     what sheets and drawings share
    casting_figures   its numbers with their rules
    casting_drawn     the casting drawn;  pattern_drawn: its pattern and core;  drawn_sizes: shared
    casting_job       the casting's own job, for a plan

May import drawing, report, answer, job, mechanics, reference, quantities, errors.
"""
