"""What a number is weighed by: figures that travel, margins, verdicts. Knows no tool.

    figures  table rows and results turned into figures that travel
    judge    a margin against the thresholds -> yes, with care, no
    margins  capability over demand, as draws: where a grip meets a Demand
    turned   a job with its cuts settled, however it is held
    served   its cuts at a share of the usual depth, and what each asks
    crown_cut  the crown of a pulley's face as a cut
    trueness runout by all its shares: in line, and anywhere round
    paces    every speed against what is usual
    too_fast what helps where the lathe's slowest is still too fast
    rim_speed  how fast a rim may turn: cast iron by practice, other metal by strength
    warmed   how warm a cut leaves the work, and how long it cools
    wall_left the wall that stands when all cuts are done
    power    has the lathe the power for a cut in the gear it runs in
    work_mass    what the work weighs, ring by ring
    spring_pass  what one more pass at the same setting leaves
    swing        the first natural frequency of held work as a figure
    chatter      how wide a chip may be before the work itself chatters

May import holding, cutting, answer, job, mechanics, reference, quantities, errors.
"""
