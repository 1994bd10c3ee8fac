"""What is said around the steps.

    words        headline, echo of what was typed, what to have ready
    push_advice  the push to look for, and the proof load
    load_words   what loads take for granted, and what to have ready for them
    cautions     the hazards of this work and these operations

May import steps, choice, questions, taper, shop, weighing and all below planning.
"""
