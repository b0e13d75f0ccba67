"""The kinds of question: how each reads a typed answer, marks it and states its model answer.

An answer is text and is only ever compared. Knows no learner, no log and no screen.
"""

from helpers.exercises.kinds.amount import ROUNDING, Amount, Slip, size_check
from helpers.exercises.kinds.answers import Answer, NotRead, Verdict
from helpers.exercises.kinds.bands import Bands
from helpers.exercises.kinds.design import Chosen, Design
from helpers.exercises.kinds.kind import ByHand, Kind
from helpers.exercises.kinds.lettered import LETTERS, Choice, ChooseAll, Option, Order, options
from helpers.exercises.kinds.parts import Criterion, Field, Parts, first_that_passes, judged
