"""A bore that came out wrong: every way to save the piece, judged and ranked.

    wanted           what the bore should have been, and who asks for it
    as_found         what the readings show: too big, too small, oval, tapered, bell-mouthed
    case             the piece as found, and what every way out asks of it
    entry            what the ways out have in common: times, figures, cautions
    accept_or_scrap  leave it as it is;  make another
    other_mandrel    the bore as found on every plain mandrel
    held_out         held as it is: fresh stub, expanding, bonded, set true by indicator, or the best of the rest
    reaming          out to the size wanted;  the next reamer up
    bush             a bush pressed in, or bonded in
    bush_sums        its sizes, its fit, and what that asks of the hub
    bush_figures     the same as figures;  bush_steps: how it is made, held and put in
    mend             a gouged mandrel dressed;  a scored bore polished
    parted           work that slipped, parted;  a crack looked for
    ranked           every way out, in one order
    rescue_words     headline, echo, cautions, what was assumed
    rescue_job       the whole answer

May import choice, words and all that they may, and all below planning.
"""
