"""Where a grip and a Demand meet: margins, verdicts, the chosen travel, the steps.

    weighing/    figures, margins, verdicts: knows no tool
    shop/        what the shop owns, or is taken to own
    taper/       one hold on a plain taper mandrel with its travel chosen
    heating/     warmth through all cuts in order, and what it leaves of the grip
    bore_route/  from the hole as it stands to the bore that the holding needs
    questions/   one file per question: seat bore push crack slip rock bend heat true reach speed
    held/        any other hold, with the cuts it serves, asked the same questions
    passes/      depth, feed and speed of every cut in the least time within all limits
    choice/      every hold weighed and ranked by one key; which press and lathe
    changes/     the cheapest change to the part or the order that removes the trouble
    steps/       the numbered steps, in the order a hand does them
    words/       headline, echo, what to have ready, push and proof load, cautions
    carried/     a plan on any way but the taper, carried through
    rescue/      a bore that came out wrong: every way out, ranked
    picture/     what is drawn
    chart/       the wall chart of a shelf
    assemble     the whole plan for a job

Imports go up this list only (checked). May import holding, cutting, making, drawing, report, answer, job,
mechanics, reference, quantities, errors.
"""
