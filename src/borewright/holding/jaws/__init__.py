"""Work in the jaws of a chuck, from outside or from within.

    grasp    what jaws can take hold of: hub, inside of the rim, bore
    jawed    how hard, what that holds, how far the work springs
    chucked  what every chuck says of work in its jaws

May import the files beside the rooms (part, owned), bores, answer, job, mechanics, reference.
"""
