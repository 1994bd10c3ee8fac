"""What is known of the bore.

    bore_reading  how well it is known: as stated, or by the gauge that read it
    bore_shape    its smallest size along its depth, seen from either face

May import answer, job, mechanics, reference, quantities, errors.
"""
