"""What the shop owns, or is taken to own, and the names a job uses for it.

    shop   press, mandrels and lathe, as stated or as taken
    owned  what the shelf says of the very mandrel, dog, reamer and lathe that a plan uses
    names  names in a job held against the tables

May import weighing and all below planning.
"""
