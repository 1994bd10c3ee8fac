"""A hold of any way but the plain taper, weighed: its cuts, and the same questions answered.

    held_trial      one hold with the cuts that reach it and that it serves
    held_bend       bend, of one stiffness at the tool
    held_questions  seat bore push crack slip rock bend heat true reach speed, of any hold

May import questions, taper, weighing and all below planning.
"""
