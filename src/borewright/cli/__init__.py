"""The command line: parse, call one use case, print. No logic.

app           the group of commands, loaded one by one; what a refusal looks like
typed         click types that read quantities with units
out           printing: ASCII stand-ins, JSON, one-line refusals
commands/     one file per command
"""
