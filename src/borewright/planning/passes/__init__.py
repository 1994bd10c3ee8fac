"""The passes of every cut: depths, feed and speed out of the lathe's own lists, in the least time.

    setting     what the lathe can be set to for one run of cuts, with the time it takes
    holding     what a hold under trial says of one cut: slip, rock, bend, warmth
    limit       one limit;  limits: how far one setting is from every limit
    problem     what one run asks, whole, so that it can be changed and asked again
    least_time  the fastest setting within all limits, and what keeps it from being faster
    bench       what all runs on one hold share; the setting of one run
    runs        the runs of a plan: what is cut from where to where, rough and finish together
    by_hand     grooves, crown and edges: what is plunged or fed by hand
    stops       where each cut ends short of what holds the work
    left_over   what the cuts leave undone of the finished sizes
    shift_up    where facing may change to a faster speed; cutting that takes half a day
    way_out     what each limit is called, and the way out where nothing that can be set meets it
    search      the cheapest change that unblocks a cut, tried by itself or two together
    mends       every change that is tried;  ladders, other_holds: finer feeds, slower speeds, holds
    mend_words  the changes in a sentence, or that none does;  what could be had as it is
    scheduled   the whole schedule of a trial, its cuts set

Exact over what can be set: settings are tried from the fastest on, and the first within all limits
is taken. May import weighing, taper, held, questions, cutting, answer, job, mechanics, reference.
"""
