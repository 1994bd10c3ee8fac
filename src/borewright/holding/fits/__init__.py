"""Bores held from within by pressure: sleeves, plugs, turned bars.

    pressed_ring  a bore pressed from within: stress, growth, lobes, what warmth takes
    friction_fit  a bore held by friction on a plain round: torque, thrust, tilt
    cone_reach    how far two cones reach into the mouths of one bore
    sleeve        the slit sleeve of a usual expanding mandrel

May import the files beside the rooms (part, owned), bores, answer, job, mechanics, reference.
"""
