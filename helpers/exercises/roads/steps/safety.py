"""Steps of a touch: from the mains to the current through a body, a barrier with one part shorted,
and the distance that keeps live parts from a hand."""

from math import inf, pi, sqrt

from helpers.exercises.roads.road import Step, Turn
from helpers.exercises.roads.steps.general import given, knowing, label, over
from helpers.exercises.roads.steps.ohms import current_through
from helpers.physics import hazards, insulation, ratings, resistors

TOUCH = (
    Turn("took the crest for the label", "The limits are rms values: which voltage goes with them?",
         lambda value, volts, n: sqrt(2) * volts, usual=True),
    Turn("took the mean for the label", "The limits are rms values: which voltage goes with them?",
         lambda value, volts, n: 2 * sqrt(2) / pi * volts),
    Turn("counted one half-cycle only", "What in this circuit would stop the other half-cycle?",
         lambda value, volts, n: volts / 2),
)  # fmt: skip


def touch_volts():
    """The label of the mains: harm is sorted by rms values."""
    return knowing(label(), *TOUCH)


def name_of_mains():
    """The same where the highest is asked for, so that nothing is added unasked."""
    return given(lambda n: n.supply.volts_rms, of="voltage", called="the volts of the mains",
                 turns=TOUCH)  # fmt: skip


def through_body(body):
    """The current that the ohms of a body let through."""
    return knowing(
        current_through(body),
        Turn("took the RCD's current", "That is where it opens. Until it has, what decides the "
             "current?", lambda value, body, n: hazards.RESIDUAL_AMPS_RMS, share=0.0),
        Turn("took the network for the body", "The network stands for a finger in a test. Which "
             "ohms does the question give?",
             lambda value, body, n: value / hazards.TOUCH_NETWORK_OHMS),
        Turn("took dry hands for wet ones", "Wet skin lets more through than dry. Which ohms does "
             "the question give?", lambda value, body, n: value / hazards.SHOCK_BODY_OHMS),
    )  # fmt: skip


def one_left(ohms, called="what one part leaves in the way"):
    """Start from two equal parts, of which one has failed short."""
    return given(
        ohms, called=called,
        turns=(
            Turn("counted both parts", "How many ohms has a part that failed short?",
                 lambda value, ohms, n: 2 * ohms, usual=True),
            Turn("took them as side by side", "How does the current pass the two parts here?",
                 lambda value, ohms, n: ohms / 2),
            Turn("took both as shorted", "How many parts have failed?", lambda value, ohms, n: 0.0),
        ),
    )  # fmt: skip


def with_network(called="the ohms that are left"):
    """The network that stands for a finger, behind the part that is left."""
    return Step(
        called, "resistance", lambda value, network, n: value + network, "{value} + {operand}",
        "({value} + {operand})", operand=hazards.TOUCH_NETWORK_OHMS,
    )  # fmt: skip


NETWORK_LEFT_OUT = Turn(
    "left out the network", "What stands for the finger, and is it in the way as well?",
    lambda value, network, n: value,
)  # fmt: skip


def _by_standard(value, amps, n):
    if abs(amps / hazards.FELT_AMPS_RMS - 1) < 0.03:
        raise ValueError("the limit that is asked for is the standard's own")
    return value / hazards.FELT_AMPS_RMS


def ohms_of_part(amps, called="the ohms of a part that holds alone"):
    """The ohms that hold a limit with the other part shorted."""
    return knowing(
        over(amps, "resistance", called),
        Turn("shared the ohms between the parts", "The two together would hold the limit. Which "
             "ohms are left when one is shorted?", lambda value, amps, n: value / amps / 2,
             usual=True),
        Turn("took the limit of the standard", "Which limit does the question give?", _by_standard,
             share=0.0),
        Turn("doubled them for two parts", "Which ohms are left when one of the two is shorted?",
             lambda value, amps, n: 2 * value / amps, share=0.0),
        Turn("took in a tolerance", "That is on the safe side. Does the question give one?",
             lambda value, amps, n: value / amps / 0.95),
        Turn("rounded up to a value of a series", "That is on the safe side. Which rounding does "
             "the question ask for?",
             lambda value, amps, n: resistors.next_up(value / amps, "E12")),
    )  # fmt: skip


WRONG_CATEGORY = ("read the row of another category", "Is it plugged in, built in, or where the "
                  "mains enters?")  # fmt: skip


def distance(where, called="the distance to keep"):
    """Start from both distances between live parts and a hand, of which the larger counts.

    `where` leads from the numbers to category and whether along a printed board.
    """

    def both(n):
        far = insulation.towards_a_hand(n.supply, *where(n))
        return far.clearance_metres, far.creepage_metres

    def by_name(value, metres, n):
        board = where(n)[1]
        creepage = insulation.creepage_metres(n.supply.volts_rms, reinforced=True,
                                              printed_board=board)  # fmt: skip
        if creepage == both(n)[1]:
            raise ValueError("name and highest mains lead to the same row")
        return creepage

    def basic(n):
        impulse = insulation.rated_impulse_volts(n.supply.volts_rms, where(n)[0])
        return max(insulation.clearance_metres(impulse), both(n)[1] / 2)

    def row(beside):
        def take(value, metres, n):
            category, board = where(n)
            place = insulation.CATEGORIES.index(category) + beside
            if not 1 <= place <= 3:
                raise ValueError("the lesson's table has no such row")
            far = insulation.towards_a_hand(n.supply, insulation.CATEGORIES[place], board)
            read = max(far.clearance_metres, far.creepage_metres)
            return inf if read in (metres, min(both(n))) else read

        return take

    def on_plastic(value, metres, n):
        category, board = where(n)
        read = insulation.towards_a_hand(n.supply, category).metres
        return read if board and read != metres else inf

    return given(
        lambda n: max(both(n)), of="length", called=called,
        turns=(
            Turn("took the smaller of the two", "Both have to be kept. Which of them is larger?",
                 lambda value, metres, n: min(both(n))),
            Turn("read the row of the supply's name", "Which volts can your mains reach, and which "
                 "row is that?", by_name),
            Turn("took the basic distance", "Towards a hand, is one barrier enough?",
                 lambda value, metres, n: basic(n)),
            Turn(*WRONG_CATEGORY, row(-1), 0.0), Turn(*WRONG_CATEGORY, row(1), 0.0),
            Turn("read the column of plastic", "That is for plastic. Which surface does the "
                 "question name?", on_plastic),
            Turn("added the two distances", "Can one and the same way keep both at once?",
                 lambda value, metres, n: sum(both(n))),
            Turn("added the basic distance to the reinforced", "Is basic insulation not part of "
                 "the reinforced one already?", lambda value, metres, n: metres + basic(n)),
        ),
    )  # fmt: skip


def understated_touch(value, n):
    """Say what is wrong with a touch current that is far too small."""
    if value < 0.6 * n.supply.volts_rms / n.ohms:
        return (
            "far more than this can flow, and it can stop a heart. No RCD holds it down: it only "
            "shortens it."
        )
    return None


WEAK_DROPPER = "a dropper that is rated for so little heat gets too hot, and can burn."


def called_too_low(right, share, danger):
    """Say a danger where less than a share of the right value was answered."""
    return lambda value, n: danger if value < share * right(n) else None


def trusted_too_far(value, n):
    """Say a danger where more was answered than the air leaves of a part's rating."""
    if value > 1.005 * ratings.derated_watts(n.rated_watts, n.air_celsius):
        return "a part that has to take more than the air leaves of its rating overheats."
    return None
