"""The numbered steps, in the order a hand does them.

    steps           all of them, from which end is which to pressing off
    prove_steps     pencil line, setting up, proof load
    load_steps      on the grinder and on the dividing head
    load_tooth      what a finished tooth measures
    support_step    the step that sets the hub on its ring
    parallel_step   the lathe set parallel, where a taper of its own would show
    balance_step    a casting or a spoked wheel balanced at rest
    first_hold      the first hold of a casting still to be bored, step by step
    casting_grip    where the jaws go on a casting
    first_hold_words  the hold in words: which chuck, what it leaves for the next
    casting_stock   does the stock on a casting take up its throw and its skin
    crown_step      the crown on a pulley's face
    finished_words  the size to finish at, its limits, and what each cut leaves

May import questions, taper, shop, weighing and all below planning.
"""
