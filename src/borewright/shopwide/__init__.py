"""Many parts and many mandrels at once.

    parts     every part of a list planned against one shelf

May import planning and every room below it; never sampling.
"""
