"""Positive drives: what takes the torque off the friction of a hold that finds the bore.

    offered     which drives a way of holding can take, and each of them for a job
    second_dog  a second dog on the hub, driven by the dog of the mandrel, or by a jaw
    flat_screw  a set screw through the hub on a flat
    stud        studs in the driver plate, bearing on spokes or through the web

May import the files of holding beside this room, answer, job, mechanics, reference, quantities,
errors; one drive does not import another.
"""
