"""Steps behind a dimmer: from the firing angle to the shares of heat, volts and light."""

from dataclasses import replace
from math import acos, cos, degrees, inf, pi, radians, sin, sqrt

from helpers.exercises.roads.road import Road, Step, Turn
from helpers.exercises.roads.steps.general import UNASKED_HIGH, factor, given, times

FORM_FACTOR = pi / sqrt(8)  # rms over mean of a whole sine [-]


def _time(angle):
    return 1 - angle / 180


def _light(angle):
    return (1 + cos(radians(angle))) / 2


def _sine(angle):
    return sin(2 * radians(angle)) / (2 * pi)


def _heat(angle):
    return _time(angle) + _sine(angle)


def _volts(angle):
    return sqrt(_heat(angle))


def _share(name, asks, formula, share=0.5):
    """Return a turn that takes another formula of the angle."""
    return Turn(name, asks, lambda angle, operand, n: formula(angle), share)


TIME = ("took the share of the time",
        "Do the start and the end of a half-cycle carry as much as its middle?")  # fmt: skip
LIGHT = "took the share of the light"
VOLTS = "took the share of the volts"
TIME_SHARE = _share(*TIME, _time)
RADIANS = ("let the calculator take degrees for radians",
           "What does your calculator give for the sine of 30°?")  # fmt: skip
CUT_AWAY = ("took what is cut away", "Which part of the half-cycle is let through?")
WRONG_END = ("took the angle let through for the angle cut",
             "Where is the dimmer fully open: at 0° or at 180°?")  # fmt: skip
LEFT_OUT = _share("left the dimmer out", "What does the dimmer take away?", lambda a: 1.0)


def _worth(angle_a_division):
    return Turn(f"counted each division as {angle_a_division}°",
                "What does the line under the grid say?",
                lambda value, given, n: given / 30 * angle_a_division)  # fmt: skip


def read_angle(name):
    """Start from a firing angle that is read off a grid of 30° a division."""
    return given(name, called="the firing angle", turns=(
        Turn(*WRONG_END, lambda value, given, n: 180 - given),
        Turn("counted from the start of the cycle", "Each half-cycle counts anew: from where?",
             lambda value, given, n: 180 + given),
        Turn("gave the divisions", "How many degrees is a division worth?",
             lambda value, given, n: given / 30),
        *map(_worth, (10, 20, 36, 45)),
        Turn("doubled the angle", "How many degrees has one half-cycle?",
             lambda value, given, n: 2 * given),
        Turn("halved the angle", "How many degrees has one half-cycle?",
             lambda value, given, n: given / 2),
        Turn("counted from the crest", "Where does a firing angle begin?",
             lambda value, given, n: abs(given - 90)),
        Turn("gave the milliseconds", "How many degrees has the time of one half-cycle?",
             lambda value, given, n: 1000 * given / 360 / n.supply.hertz, share=0.0),
        Turn("left out the small marks", "How far does the edge stand behind the last line?",
             lambda value, given, n: 30 * (given // 30)),
        Turn("counted one division too many", "Where does the half-cycle begin?",
             lambda value, given, n: given + 30),
        Turn("counted one division too few", "Where does the half-cycle begin?",
             lambda value, given, n: given - 30),
    ))  # fmt: skip


IN_THE_FORMULA = (  # looked for where the share of the heat itself is asked; elsewhere too rare
    _share("squared once too often", "Is it a share of the volts, or of the heat already?",
           lambda a: _heat(a) ** 2),
    _share("squared the share of the light", "Is it the mean that heat goes with?",
           lambda a: _light(a) ** 2),
    _share("squared the share of the time", TIME[1], lambda a: _time(a) ** 2),
    _share("divided by 360, not by 180", "How many degrees has a half-cycle?",
           lambda a: _time(a) / 2 + _sine(a)),
    _share("divided the sine by π, not by 2π", "What is the sine divided by?",
           lambda a: _time(a) + 2 * _sine(a)),
)  # fmt: skip


def heat_share(called="the share of the heat"):
    """From the firing angle to the share of the full heat that is left."""
    ends = "Put both ends of the knob into your formula: what has to come out?"
    return Step(
        called, "ratio", lambda angle, operand, n: _heat(angle),
        "1 − {value}/180° + sin(2 × {value})/6.283",
        "phase_cut.wave(mains.Supply(1.0, 50.0), phase_cut.Dimmer('leading', {value}))"
        ".power_fraction",
        turns=(
            TIME_SHARE,
            _share(LIGHT, "Heat goes with the square. Does light?", _light),
            _share(VOLTS, "How do you get from volts to heat?", _volts),
            _share("took the sign of the sine the other way", ends, lambda a: _time(a) - _sine(a)),
            _share("left out the 1 − at the start", ends, lambda a: a / 180 + _sine(a)),
            _share("took the sine of the angle, not of twice it", "Which angle stands in the sine?",
                   lambda a: _time(a) + sin(radians(a)) / 2 / pi),
            _share(*RADIANS, lambda a: _time(a) + sin(2 * a) / 2 / pi),
            _share(*CUT_AWAY, lambda a: 1 - _heat(a)),
            LEFT_OUT,
        ),
    )  # fmt: skip


def light_share(called="the share of the light"):
    """From the firing angle to the share of the full mean that is left."""
    return Step(
        called, "ratio", lambda angle, operand, n: _light(angle), "(1 + cos {value})/2",
        "phase_cut.wave(mains.Supply(1.0, 50.0), phase_cut.Dimmer('leading', {value}))"
        ".volts_mean / mains.mean(1.0)",
        turns=(
            TIME_SHARE,
            _share("took the share of the heat", "Light goes with the mean. Does heat?", _heat),
            _share(VOLTS, "Light goes with the mean. Do rms volts?", _volts),
            _share("forgot to halve", "Try 0° in your formula: what has to come out?",
                   lambda a: 2 * _light(a)),
            _share(*RADIANS, lambda a: (1 + cos(a)) / 2),
            _share("took the sine for the cosine", "Try 0° in your formula: what has to come out?",
                   lambda a: (1 + sin(radians(a))) / 2),
            _share("took the cosine alone", "Try 180° in your formula: what has to come out?",
                   lambda a: abs(cos(radians(a)))),
            _share("left out the 1", "Try 180° in your formula: what has to come out?",
                   lambda a: -cos(radians(a)) / 2 if a > 90 else inf, share=0.0),
            _share("took 0.45 on top", "0.45 leads to the mean at full. Which share is asked for?",
                   lambda a: 0.45 * _light(a)),
            _share(*CUT_AWAY, lambda a: 1 - _light(a)),
            LEFT_OUT,
        ),
    )  # fmt: skip


def angle_of_light():
    """From the share of the mean back to the firing angle."""
    return Step(
        "the firing angle", "angle", lambda share, operand, n: degrees(acos(2 * share - 1)),
        "arccos(2 × {value} − 1)",
        "phase_cut_inverse.for_mean({value} * mains.mean(1.0), mains.Supply(1.0, 50.0))"
        ".angle_degrees",
        turns=(
            Turn("took the share shown for the share of the time",
                 "Is the mean the same all along a half-cycle?",
                 lambda share, operand, n: 180 * (1 - share)),
            Turn(*WRONG_END, lambda share, operand, n: degrees(acos(1 - 2 * share))),
            Turn("did not take the 1 away",
                 "Try a share of 1 in your formula: what has to come out?",
                 lambda share, operand, n: degrees(acos(2 * share)), share=0.0),
        ),
    )  # fmt: skip


def root(angle, called="the share of the volts"):
    """From a share of the heat to the share of the volts or amps; the angle is for wrong turns."""
    return Step(
        called, "ratio", lambda value, angle, n: sqrt(value), "√{value}", "({value})**0.5",
        operand=angle,
        turns=(
            Turn("forgot the root", "Heat goes with the square of the volts. What leads back?",
                 factor(1.0)),
            Turn("squared instead of taking the root", "Which way leads from heat back to volts?",
                 lambda value, angle, n: value * value),
            Turn(*TIME, lambda value, angle, n: _time(angle)),
            Turn(LIGHT, "Which of rms and mean does heat go with?",
                 lambda value, angle, n: _light(angle)),
            Turn("took the volts at the edge", "What happens after the edge?",
                 lambda value, angle, n: sqrt(2) * sin(radians(angle))),
        ),
    )  # fmt: skip


def heat_left(angle):
    """Return the road from the firing angle to the share of the heat."""
    return Road(given(angle, called="the firing angle"), heat_share())


def volts_left(angle):
    """Return the road from the firing angle to the share of the rms volts."""
    return Road(given(angle, called="the firing angle"), heat_share(), root(angle))


def light_left(angle):
    """Return the road from the firing angle to the share of the mean."""
    return Road(given(angle, called="the firing angle"), light_share())


def in_percent():
    """From a share to per cent."""
    return Step(
        "the share in per cent", "percent", factor(100.0), "{value} × 100", "{value} * 100",
        turns=(
            Turn("gave a fraction, not per cent", "How many per cent is a half?", factor(1.0)),
        ),
    )  # fmt: skip


ONE_HALF_CYCLE = ("counted only one half-cycle", "Does the dimmer leave one half-cycle out?")


def full_amps():
    """From a heater's watts to its current on the mains that it is made for."""
    return Step(
        "the full current", "current", lambda watts, volts, n: watts / volts,
        "{value} / {operand}", "{value} / {operand}", operand=lambda n: n.supply.volts_rms,
        operand_of="voltage",
        turns=(
            Turn("divided the wrong way round", "Should more watts take less current?",
                 lambda watts, volts, n: volts / watts, share=0.0),
            Turn("multiplied instead of dividing", "Watts are volts times what?",
                 lambda watts, volts, n: volts * watts, share=0.0),
            Turn("divided by the volts twice", "Watts are volts times what?",
                 lambda watts, volts, n: watts / volts**2, share=0.0),
        ),
    )  # fmt: skip


def dimmed_amps(angle):
    """From a heater's full current to that behind the dimmer."""
    return times(volts_left(angle), "current", "the current at this setting", turns=(
        Turn("kept the watts while the volts fell", "Does a heating element keep its watts, or its "
             "ohms?", lambda amps, share, n: amps / share),
        Turn(*ONE_HALF_CYCLE, lambda amps, share, n: amps * share / sqrt(2)),
        Turn("multiplied by 1.414", "Is a crest asked for, or rms?",
             lambda amps, share, n: sqrt(2) * amps * share),
    ))  # fmt: skip


def on_plain_meter(angle):
    """From the volts of the mains to what a plain meter shows behind the dimmer."""
    return times(light_left(angle), "voltage", "what a plain meter shows", turns=(
        Turn("left out the scale of the meter", "Its scale makes a whole sine read right: by what "
             "does it multiply the mean?", lambda volts, share, n: volts * share / FORM_FACTOR),
        Turn("divided by 1.414", "Are the volts of your mains a crest, or rms?",
             lambda volts, share, n: volts * share / sqrt(2)),
        Turn("multiplied by 1.11", "Its scale does that already. What is a whole sine to it?",
             lambda volts, share, n: volts * share * FORM_FACTOR, share=0.0),
        Turn("divided the rms by 1.11", "1.11 belongs to a whole sine. Is the wave behind a dimmer "
             "one?", lambda volts, share, n: volts * _volts(getattr(n, angle)) / FORM_FACTOR),
        Turn(*ONE_HALF_CYCLE, lambda volts, share, n: volts * share / 2),
    ))  # fmt: skip


def share_shown():
    """From a plain meter's reading to the share of the mains that it shows."""
    return Step(
        "the share shown", "ratio", lambda volts, mains, n: volts / mains,
        "{value} / {operand}", "{value} / {operand}", operand=lambda n: n.supply.volts_rms,
        operand_of="voltage",
    )  # fmt: skip


def of_mains(called="the true rms volts"):
    """From a share to volts."""
    return times(lambda n: n.supply.volts_rms, "voltage", called, "voltage", turns=(
        Turn("started from the crest", "Which value of the mains is heat counted in?",
             lambda share, volts, n: sqrt(2) * share * volts),
        replace(UNASKED_HIGH, take=lambda share, volts, n: 1.1 * share * volts),
    ))  # fmt: skip


def pot_ohms(watts):
    """From the volts that a pot is made for to its ohms."""
    return Step(
        "the pot's ohms", "resistance", lambda volts, watts, n: volts * volts / watts,
        "({value})² / {operand}", "{value}**2 / {operand}", operand=watts,
        turns=(
            Turn("forgot to square the volts", "Volts over watts is no resistance. What is "
                 "squared?", lambda volts, watts, n: volts / watts, share=0.0),
            Turn("divided the watts by the volts", "Watts over volts is the working current. How "
                 "do ohms follow from it?", lambda volts, watts, n: watts / volts, share=0.0),
            Turn("divided the wrong way round", "Has a stronger pot more ohms, or fewer?",
                 lambda volts, watts, n: watts / volts**2, share=0.0),
            Turn("took the watts for ohms", "How do ohms follow from volts and watts?",
                 lambda volts, watts, n: watts, share=0.0),
        ),
    )  # fmt: skip


def across_pot(ohms, dropper):
    """From the leak of an off dimmer to the volts on the pot; the dropper is for wrong turns."""
    return times(ohms, "voltage", "the volts on the pot", turns=(
        Turn("sent the leak through the dropper", "The pot offers far fewer ohms: which way does "
             "nearly all of the current go?", lambda amps, ohms, n: amps * dropper, share=0.0),
        Turn("added the dropper to the pot", "Do dropper and pot stand one after the other, or "
             "side by side?", lambda amps, ohms, n: amps * (ohms + dropper), share=0.0),
        Turn("gave the peak", "Does the question ask for the peak, or for rms?",
             lambda amps, ohms, n: sqrt(2) * amps * ohms),
        Turn("squared the leak", "Amps squared times ohms are watts. What makes volts?",
             lambda amps, ohms, n: amps**2 * ohms, share=0.0),
        Turn("multiplied the mains by the leak", "Volts times amps are watts. What makes volts?",
             lambda amps, ohms, n: amps * n.supply.volts_rms, share=0.0),
        Turn("divided the watts by the leak", "Does this small current make the pot's full watts?",
             lambda amps, ohms, n: n.watts / amps, share=0.0),
        Turn("took the full mains", "It can stand there with a broken element. What does a sound "
             "one do to so small a current?", lambda amps, ohms, n: n.supply.volts_rms, share=0.0),
        Turn("took “off” for no voltage", "What still flows through the snubber?",
             lambda amps, ohms, n: 0.0, share=0.0),
    ))  # fmt: skip
