"""Making what helps at the bench; imports neither holding nor cutting.

    strip         a paper strip, bore against position, that makes a bore gauge of a mandrel
    strip_words   the sentences beside it

May import drawing, report, answer, job, mechanics, reference, quantities, errors.
"""
