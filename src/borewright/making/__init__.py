"""Making what helps at the bench; imports neither holding nor cutting.

    mandrel       a plain taper mandrel: form, drawing, route, acceptance
    mandrel_set   a set of mandrels for a list of bores
    shop_sizes    sizes brought to what a rule says; hot temperatures as words
    strip         a paper strip, bore against position, that makes a bore gauge of a mandrel
    strip_words   the sentences beside it
    crown         a pulley's crown: rule, form, setting of the top slide, stairs on the dial
    crown_words   why it works, which pulley gets it, how it is set, cut and checked
    bars          cutting lists, and blanks of a part from bar
    blank         the casting of a part and its pattern
    cannot        the answer no, with what does instead
    cautioned     the cautions of an operation as a block of the papers
    facts         figures of making by name
    center_holes  which center hole goes into the end of a bar
    fine_feed     the top slide as a fine feed, as a table
    stub          a stub turned in the chuck to one bore, plain or expanding
    soft          a soft mandrel from bar, turned to one bore or as drawn
    gauge         a go and not-go plug, a stepped plug

May import drawing, report, answer, job, mechanics, reference, quantities, errors.
"""
