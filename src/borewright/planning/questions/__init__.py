"""The plan's questions, one file each; every one turns a trial into a Question.

seat     does it bear on enough of its bore, and where will it sit
bore     will this mandrel take this bore: fall through, not go on, no room for dog or tool
push     can the press do it
crack    does the bore stand it
slip     does the grip drive the cut
bend     does the mandrel stay straight enough
reach    does the lathe take it
asked    all of them, in the order they are asked
"""

from borewright.planning.questions.asked import ask_all

__all__ = ["ask_all"]
