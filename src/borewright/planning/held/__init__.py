"""A hold of any way but the plain taper, weighed: its cuts, and the same questions answered.

    held_trial      one hold with the cuts that reach it and that it serves
    held_heat       heat of any hold: what the warmth of the cuts takes from it
    at_face         what stands against a face that is cut, so that the tool stops short of it
    clash           steps and grooves whose tool would run into what holds the work
    held_bend       bend, of one stiffness at the tool
    held_questions  seat bore push crack slip rock bend heat true reach speed, of any hold
    held_true       how far rim runs out to bore, and by which shares

May import questions, heating, taper, weighing and all below planning.
"""
