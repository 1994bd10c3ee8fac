"""Work in the jaws of a chuck, from outside or from within.

    grasp    what jaws can take hold of: hub, inside of the rim, bore
    jawed    how hard, what that holds, how far the work springs
    chucked  what every chuck says of work in its jaws
    as_cast  by what a rough casting is set true, where along it the jaws go
    drilled_out  the drill that opens a bore in the hold, and its torque
    chuck_there  which chuck holds a blank in one chucking
    one_setting  the steps of bore and rim in one setting

May import the files beside the rooms (part, owned), bores, answer, job, mechanics, reference.
"""
