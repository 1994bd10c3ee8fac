"""The plan's questions, one file each; every one turns a trial into a Question.

seat     does it bear on enough of its bore, and where will it sit
bore     will this mandrel take this bore: fall through, not go on, no room for dog or tool
push     can the press do it
crack    does the bore stand it
slip     does the grip drive the cut
rock     does the cut tilt the work on its grip
bend     does the mandrel stay straight enough
bend_figures  sizes left, first frequency, what the centers carry, as figures
heat     does the grip outlast the warmth of the cut; when it drops off by itself
true     how far the rim will run out to the bore
reach    does the lathe take it
speed    does the lathe go slow enough
load_figures  the force of a wheel or form cutter as figures
asked    all of them, in the order they are asked
"""

from borewright.planning.questions.asked import ask_all

__all__ = ["ask_all"]
