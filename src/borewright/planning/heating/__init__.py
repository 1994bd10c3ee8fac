"""How warm all cuts in order leave work and mandrel, and what that leaves of the grip.

    bodies      the work and the bar it sits on as two bodies: what they hold and what they lose
    bursts      every cut as bursts of heat with the pauses of a hand between them
    loosened    what is left of a grip when the work is so warm, on a taper or on any other hold
    heat_run    the schedule gone through: warmth and grip at the end of every stretch
    waits       how long to stand before a cut, and what to do where no wait is enough
    warm_size   the size to read on warm work for the finished size cold
    heat_words  the wait and the way out in a sentence
    heat_chart  temperature and grip against time
    in_schedule a schedule filled with all of it

May import taper, shop, weighing and all below planning.
"""
