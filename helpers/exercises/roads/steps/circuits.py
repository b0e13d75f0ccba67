"""Steps of the better circuits: bridge, capacitor dropper and its pulse, its bleeder, neon lamp."""

from math import acos, asin, cos, degrees, exp, pi, radians, sin, sqrt

from helpers.exercises.roads.road import Road, Step, Turn
from helpers.exercises.roads.steps.dimmer import RADIANS
from helpers.exercises.roads.steps.general import factor, given, times
from helpers.physics import capacitors, neon

BOTH_HALVES = (
    Turn("counted one half-cycle only", "What does the bridge do with the second half-cycle?",
         factor(1 / pi), usual=True),
    Turn("took the crest for the mean", "The crest lasts an instant. What is left as a mean?",
         factor(1.0), usual=True),
    Turn("used the quick sum, volts over ohms", "Volts over ohms is an rms value here. What share "
         "of it is the mean?", factor(1 / sqrt(2))),
    Turn("halved the quick sum", "Volts over ohms is an rms value here. What share of it is the "
         "mean?", factor(0.5 / sqrt(2))),
    Turn("halved the crest", "Is a sine a triangle?", factor(0.5)),
    Turn("took 0.9 of the crest", "0.9 belongs to the label. What belongs to the crest?",
         factor(0.9)),
)  # fmt: skip


def full_wave_mean(called="the mean over a whole cycle"):
    """From the crest of a whole wave, both halves the same way round, to its mean."""
    return Step(called, "current", factor(2 / pi), "{value} × 2 / π", "{value} * 2 / pi",
                turns=BOTH_HALVES)  # fmt: skip


def for_both_halves(called="the ohms behind a bridge"):
    """From a dropper behind a diode to the one that gives the same mean behind a bridge."""
    return Step(
        called, "resistance", factor(2.0), "2 × {value}", "2 * {value}",
        turns=(
            Turn("kept the ohms", "The bridge brings a second half-cycle. What has to be done for "
                 "the same mean?", factor(1.0), usual=True),
            Turn("halved the ohms", "With a second half-cycle, does the dropper need more ohms or "
                 "fewer?", factor(0.5)),
            Turn("took four times the ohms", "How many times the light would the old dropper give?",
                 factor(4.0)),
        ),
    )  # fmt: skip


def charge_turned(farads, called="the charge that each half-cycle turns over"):
    """From the crest to the charge that moves when a capacitor goes from one crest to the other."""
    return Step(
        called, "charge", lambda value, farads, n: 2 * farads * value, "2 × {operand} × {value}",
        "2 * {operand} * {value}", operand=farads,
        turns=(
            Turn("counted the charge of one crest only", "From where to where does the capacitor "
                 "go in a half-cycle?", lambda value, farads, n: farads * value, usual=True),
            Turn("counted the swing twice", "How far is it from one crest to the other?",
                 lambda value, farads, n: 4 * farads * value),
            Turn("divided by the farads", "More farads: more charge, or less?",
                 lambda value, farads, n: value / farads, share=0.0, any_decade=True),
        ),
    )  # fmt: skip


def _hertz(n):
    return n.supply.hertz


def _other_hertz(hertz):
    return 50.0 if hertz == 60.0 else 60.0


OTHER_HERTZ = ("took the other mains frequency", "How many cycles a second has your mains?")


def each_half_cycle(called="the mean current"):
    """From a charge that moves twice in every cycle to the mean current."""
    return Step(
        called, "current", lambda value, hertz, n: 2 * hertz * value, "{value} × 2 × {operand}",
        "{value} * 2 * {operand}", operand=_hertz, operand_of="frequency",
        turns=(
            Turn("counted the charge once a cycle", "How often in one cycle is it turned over?",
                 lambda value, hertz, n: hertz * value, usual=True),
            Turn("multiplied by 2π", "2π leads to the capacitor's ohms. What makes a mean from a "
                 "charge?", lambda value, hertz, n: 2 * pi * hertz * value),
            Turn("multiplied the volts of the mains by farads and hertz", "How much charge does "
                 "each half-cycle turn over?",
                 lambda value, hertz, n: value * hertz / sqrt(8), 0.0),
            Turn("multiplied the volts of the mains by farads and hertz", "How much charge does "
                 "each half-cycle turn over?",
                 lambda value, hertz, n: value * hertz / pi, 0.0),  # and took its mean
            Turn("took the crest of the current", "The crest lasts an instant. What is left as a "
                 "mean?", lambda value, hertz, n: pi * hertz * value),
            Turn(*OTHER_HERTZ, lambda value, hertz, n: 2 * _other_hertz(hertz) * value),
        ),
    )  # fmt: skip


def reactance(called="the capacitor's ohms"):
    """From farads to the ohms of a capacitor at the frequency of the mains."""
    return Step(
        called, "resistance", lambda value, hertz, n: 1 / (2 * pi * hertz * value),
        "1 / (2π × {operand} × {value})", "1 / (2 * pi * {operand} * {value})",
        operand=_hertz, operand_of="frequency",
        turns=(
            Turn("left out 2π", "What stands beside the hertz in the capacitor's ohms?",
                 lambda value, hertz, n: 1 / (hertz * value)),
            Turn("took π for 2π", "What stands beside the hertz in the capacitor's ohms?",
                 lambda value, hertz, n: 1 / (pi * hertz * value)),
            Turn(*OTHER_HERTZ, lambda value, hertz, n: 1 / (2 * pi * _other_hertz(hertz) * value)),
        ),
    )  # fmt: skip


def heat_of(ohms, called="the heat"):
    """From an rms current to the heat of a resistor."""
    return Step(
        called, "power", lambda value, ohms, n: value * value * ohms, "({value})² × {operand}",
        "({value})**2 * {operand}", operand=ohms, operand_of="resistance",
        turns=(
            Turn("forgot to square the current", "Amps times ohms are volts. What makes watts?",
                 lambda value, ohms, n: value * ohms, share=0.0, any_decade=True),
            Turn("multiplied the mains by the current", "Does the capacitor keep what it takes, or "
                 "give it back?", lambda value, ohms, n: n.supply.volts_rms * value, share=0.0),
            Turn("took the crest of the current", "Which value decides heat: crest, rms or mean?",
                 lambda value, ohms, n: 2 * value * value * ohms),
            Turn("squared the mean", "Which value decides heat: crest, rms or mean?",
                 lambda value, ohms, n: 8 / pi**2 * value * value * ohms),
            Turn("halved it as for a half-wave", "How many half-cycles pass a bridge?",
                 lambda value, ohms, n: value * value * ohms / 2),
            Turn("took the whole mains across it", "How many volts does the capacitor take for "
                 "itself?", lambda value, ohms, n: n.supply.volts_rms**2 / ohms, share=0.0),
        ),
    )  # fmt: skip


def at_edge(angle, called="the jump at the edge"):
    """From the crest to how high the wave stands at an angle."""
    return Step(
        called, "voltage", lambda value, angle, n: value * sin(radians(angle)),
        "{value} × sin {operand}", "{value} * sin(radians({operand}))", operand=angle,
        operand_of="angle",
        turns=(
            Turn("took the crest as it stands", "How high is the wave at this angle: at its crest, "
                 "or past it?", lambda value, angle, n: value),
            Turn("took the cosine for the sine", "Which of the two is highest where the wave is "
                 "highest?", lambda value, angle, n: value * abs(cos(radians(angle)))),
            Turn("took the share of the time", "How does a wave fall from its crest: in a straight "
                 "line?", lambda value, angle, n: value * (1 - angle / 180)),
            Turn("took the volts of the mains as they stand", "How high does the wave stand at "
                 "this angle?", lambda value, angle, n: value / sqrt(2)),
            Turn(*RADIANS, lambda value, angle, n: value * sin(angle)),
        ),
    )  # fmt: skip


def heat_of_jumps(farads, called="the heat of the jumps"):
    """From a jump that comes twice a cycle to the heat that a capacitor's charging leaves."""
    return Step(
        called, "power", lambda value, farads, n: farads * value * value * n.supply.hertz,
        "½ × {operand} × ({value})² × jumps in a second", "{operand} * {value}**2",
        operand=farads,
        turns=(
            Turn("counted one jump a cycle", "How many edges has a cycle behind a dimmer?",
                 lambda value, farads, n: farads * value * value * n.supply.hertz / 2, usual=True),
            Turn("left out the half", "What stays in the capacitor, and what becomes heat?",
                 lambda value, farads, n: 2 * farads * value * value * n.supply.hertz),
            Turn("forgot to square the volts", "What makes an energy from farads and volts?",
                 lambda value, farads, n: farads * value * n.supply.hertz, share=0.0,
                 usual=True, any_decade=True),
            Turn("gave the energy of one jump", "How many such jumps come in a second?",
                 lambda value, farads, n: farads * value * value / 2),
            Turn(*OTHER_HERTZ, lambda value, farads, n: (
                farads * value * value * _other_hertz(n.supply.hertz))),
        ),
    )  # fmt: skip


def seconds_of(ohms, farads):
    """The time constant of a capacitor and its bleeder."""
    return Road(
        given(farads),
        times(ohms, "time", "the time constant", "resistance", (
            Turn("divided ohms by farads", "Does a larger capacitor empty faster, or more slowly?",
                 lambda value, ohms, n: ohms / value, share=0.0, any_decade=True),
        )),
    )  # fmt: skip


def left_after_a_second(ohms, farads, called="the volts that are left"):
    """From the volts at the pull of the plug to those one second later."""
    late = capacitors.PIN_SECONDS
    return Step(
        called, "voltage", lambda value, tau, n: value * exp(-late / tau),
        "{value} × e to the −1 s / {operand}", "{value} * exp(-1 / {operand})",
        operand=seconds_of(ohms, farads), operand_of="time",
        turns=(
            Turn("took one time constant for the second", "How many time constants fit into one "
                 "second here?", lambda value, tau, n: value * exp(-1)),
            Turn("turned the exponent upside down", "With a larger capacitor, is more left or "
                 "less?", lambda value, tau, n: value * exp(-tau / late)),
            Turn("gave what is gone", "Which volts does a hand meet: those that left, or those "
                 "that stayed?", lambda value, tau, n: value * (1 - exp(-late / tau))),
            Turn("multiplied by the time constant", "Does it fall by as much in each second, or by "
                 "the same share?", lambda value, tau, n: value * tau),
            Turn("took two to the power for e", "Which number is raised to the power?",
                 lambda value, tau, n: value * 2 ** (-late / tau)),
            Turn("took ten to the power for e", "Which number is raised to the power?",
                 lambda value, tau, n: value * 10 ** (-late / tau), share=0.0),
            Turn("took the crest as it stands", "What has the bleeder taken after one second?",
                 lambda value, tau, n: value),
        ),
    )  # fmt: skip


def read_jump(name, step):
    """Start from a jump that is read off a grid; `step` gives the volts of a division."""
    worth = "What does the line under the grid say of the height of a division?"
    return given(name, called="the jump", turns=(
        Turn("gave the divisions", "How many volts is a division worth?",
             lambda value, volts, n: volts / step(n)),
        Turn("left out the small marks", "How far does the trace stand above the last line?",
             lambda value, volts, n: step(n) * (volts // step(n))),
        Turn("counted one division too many", "Where is the middle line?",
             lambda value, volts, n: volts + step(n)),
        Turn("counted one division too few", "Where is the middle line?",
             lambda value, volts, n: volts - step(n)),
        Turn("read the crest, not the jump", "Where does the trace stand right after the edge?",
             lambda value, volts, n: sqrt(2) * n.supply.volts_rms),
        Turn("made an rms value of the jump", "Is the height at the edge an rms "
             "value, or what stands there?",
             lambda value, volts, n: volts / sqrt(2), share=0.0),
        Turn("counted each division as twice its volts", worth, lambda value, volts, n: 2 * volts),
        Turn("counted each division as half its volts", worth, lambda value, volts, n: volts / 2),
        Turn("gave the label of the mains", "Where does the trace stand right after the edge?",
             lambda value, volts, n: n.supply.volts_rms, share=0.0),
    ))  # fmt: skip


def goes_out(strike, called="the angle"):
    """From the crest to the firing angle beyond which a neon lamp no longer strikes."""
    return Step(
        called, "angle", lambda value, strike, n: 180 - degrees(asin(strike / value)),
        "180° − sin⁻¹ ({operand} / {value})", "180 - degrees(asin({operand} / {value}))",
        operand=strike, operand_of="voltage",
        turns=(
            Turn("left out the 180°", "Does the wave pass these volts on its way up, or on its way "
                 "down?", lambda value, strike, n: degrees(asin(strike / value))),
            Turn("took the cosine for the sine", "Which of the two is highest where the wave is "
                 "highest?", lambda value, strike, n: 180 - degrees(acos(strike / value))),
            Turn("took the volts that keep it lit", "Is it to stay lit, or to strike anew?",
                 lambda value, strike, n: 180 - degrees(asin(neon.MAINTAIN_VOLTS / value))),
            Turn("took the share of the volts for the angle's", "Does the sine fall in a straight "
                 "line?", lambda value, strike, n: 180 * (1 - strike / value)),
        ),
    )  # fmt: skip
