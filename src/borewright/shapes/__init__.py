"""Compliances found or built: in memory, in a file, else by finite elements. No SQL, no answers.

    key      the name of a shape: outline over its bore, Poisson's ratio, scheme
    store    files of compliances: whole or absent, checked, bounded, shared between processes
    find     memory, then file, then build

May import job, mechanics, reference, quantities, errors.
"""
