"""Where a Grip and a Demand meet: margins, verdicts, the chosen travel, the steps.

    trial           one hold with its travel chosen, its cuts and its forces: what questions look at
    rings_check     the pencil check: what rings side by side say, and why they differ
    travel          how far to press: far enough for the cut, not so far that the bore is hurt
    margins         capability over demand, as draws
    judge           a margin against the thresholds -> yes, with care, no
    questions/      one file per question: seat bore push crack slip rock bend heat true reach speed
    figures         table rows and results turned into figures that travel
    push_advice     the push to look for, and the proof load
    candidates      every hold weighed and ranked, with the reason that decides its row
    arrangement     which press and which lathe of the shelf: the first that serves
    paces           every speed of a plan against what is usual
    power           has the lathe the power for a cut in the gear it runs in
    owned           what the shelf says of the very mandrel, dog, reamer and lathe that a plan uses
    better_ways     when one chucking, a stub or another way would serve better
    bore_words      a bore stated by its limits
    names           names in a job held against the tables
    press_room      daylight, throat, ram travel, table slot; the opening of a vice
    shop            what the shop owns, or is taken to own
    prove_steps     pencil line, setting up, proof load
    load_steps      steps on the grinder and on the dividing head
    load_tooth      what a finished tooth measures;  load_passes: passes of a space left open
    load_words      what loads take for granted, and what to have ready for them
    soundness       keyways, cross holes, spokes and flaws: when they forbid the press, and in words
    support         the ring under the hub;  support_step: the step that sets the hub on it
    dishing         what the push would do to a web or to spokes if the rim were held
    steps           the numbered steps, in the order a hand does them
    finished_words  the size to turn to, and what each cut leaves
    words           headline, echo of what was typed, what to have ready
    finished_words  the size to finish at, its limits, and what the last pass leaves
    cautions        the hazards of this work and these operations
    layout          the geometry that is drawn
    pictured        the picture of the pressed joint;  pictured_notes: what it does not show
    tinted          its tension as numbered bands, and the outlines to fill
    chart           the wall chart of a shelf;  chart_words: what it takes for granted
    chart_bars      which bores each mandrel takes and where they touch, and the gaps between
    chart_cells     the deepest cut that holds at an outside;  chart_hub: the hub it is worked with
    assemble        the whole plan for a job

May import holding, cutting, drawing, report, answer, job, mechanics, reference, quantities, errors.
"""
