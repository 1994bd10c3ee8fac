"""Every hold weighed and ranked, and what of the shop it takes.

    candidates   every hold weighed and ranked, with the reason that decides its row
    arrangement  which press and which lathe of the shelf: the first that serves
    load_passes  passes of a tooth space that is left open
    better_ways  when one chucking, a stub or another way would serve better

May import questions, taper, shop, weighing and all below planning.
"""
