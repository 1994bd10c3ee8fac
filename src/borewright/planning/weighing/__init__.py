"""What a number is weighed by: figures that travel, margins, verdicts. Knows no tool.

    figures  table rows and results turned into figures that travel
    judge    a margin against the thresholds -> yes, with care, no
    margins  capability over demand, as draws: where a Grip meets a Demand
    power    has the lathe the power for a cut in the gear it runs in

May import holding, cutting, answer, job, mechanics, reference, quantities, errors.
"""
