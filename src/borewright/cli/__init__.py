"""The command line: parse, call one use case, print. No logic.

    app           the group of commands, loaded one by one; exit codes
    refusals      what click refuses, in the form of every other refusal
    typed         click types that read quantities with units
    outline_text  the text of `fit --outline`;  stations_text: of `--at` and `--bore-at`
    out           printing: ASCII stand-ins, JSON, one-line refusals
    commands/     one file per command

May import service, report, answer, job, reference, quantities, errors.
"""
