"""Steps from current to light, from light to what the eye makes of it, and how far it is seen."""

from math import acos, cos, degrees, radians, sqrt

from helpers.exercises.roads.road import Step, Turn
from helpers.exercises.roads.steps.dimmer import TIME
from helpers.exercises.roads.steps.general import factor, given
from helpers.physics import glow, leds, light, phase_cut_inverse

SHEET_MILLIAMPS = 1000 * glow.SHEET_AMPS


def as_share(called="the share of the light"):
    """From per cent to a share."""
    return Step(
        called, "ratio", factor(0.01), "{value} / 100", "{value} / 100",
        turns=(
            Turn("left the per cent as it stands", "Which share of one is so many per cent?",
                 lambda value, operand, n: value, share=0.0, any_decade=True),
        ),
    )  # fmt: skip


def cube_root(called="the share of the look"):
    """From a share of the light to the look of a glowing patch."""
    return Step(
        called, "ratio", lambda share, operand, n: light.stevens(share), "∛{value}",
        "light.stevens({value})",
        turns=(
            Turn("took the light for the look", "Does the eye follow the light in step?",
                 factor(1.0)),
            Turn("took the root for a point of light", "Is it a point here, or a patch?",
                 lambda share, operand, n: sqrt(share)),
            Turn("took the lightness of surfaces", "Is it a painted surface in daylight here, or a "
                 "glowing patch?", lambda share, operand, n: light.lightness(share) / 100),
            Turn("gave how much is lost", "Is it asked how bright it looks, or how much darker?",
                 lambda share, operand, n: 1 - light.stevens(share), share=0.0),
            Turn("divided by three", "Which number, three times as a factor, gives the light?",
                 factor(1 / 3)),
            Turn("raised to the third power", "Does the look fall faster than the light, or more "
                 "slowly?", lambda share, operand, n: share**3),
        ),
    )  # fmt: skip


def for_point_look(look):
    """From a light to the one that makes a point of light look so many times as bright."""
    return Step(
        "the light for this look", "current", lambda value, look, n: value * look * look,
        "{value} × ({operand})²", "{value} * {operand}**2", operand=look, operand_of="ratio",
        turns=(
            Turn("took the light for the look", "Does the eye follow the light in step?",
                 lambda value, look, n: value * look),
            Turn("took the third power, as for a patch", "Is it a patch here, or a point?",
                 lambda value, look, n: value * look**3),
            Turn("took the root instead of the square", "Which way leads from the look back to the "
                 "light?", lambda value, look, n: value * sqrt(look)),
            Turn("divided instead of multiplying", "Should it look brighter, or fainter?",
                 lambda value, look, n: value / look**2),
            Turn("doubled instead of squaring", "What is a number times itself?",
                 lambda value, look, n: value * 2 * look),
        ),
    )  # fmt: skip


def intensity(amps, called="the intensity"):
    """From the intensity on the sheet to that at a current."""
    return Step(
        called, "luminous intensity", lambda rated, amps, n: rated * amps / glow.SHEET_AMPS,
        f"{{value}} × {{operand}} / {SHEET_MILLIAMPS:g}\u00a0mA",
        f"{{value}} * {{operand}} / {glow.SHEET_AMPS}", operand=amps,
        turns=(
            Turn("took the sheet's intensity as it stands", "At which current does the sheet state "
                 "it?", lambda rated, amps, n: rated),
            Turn("took the root of the share", "Light follows the current. What is the root for?",
                 lambda rated, amps, n: rated * sqrt(amps / glow.SHEET_AMPS)),
            Turn("divided the wrong way round", "Is it more light than on the sheet, or less?",
                 lambda rated, amps, n: rated * glow.SHEET_AMPS / amps, share=0.0),
            Turn("multiplied by the milliamps alone", "At which current does the sheet state it?",
                 lambda rated, amps, n: rated * 1000 * amps),
            Turn("divided by the sheet's milliamps alone", "Which current does the LED get?",
                 lambda rated, amps, n: rated / SHEET_MILLIAMPS),
            Turn("divided by the milliamps it gets", "Does less current give more light?",
                 lambda rated, amps, n: rated / (1000 * amps), share=0.0),
        ),
    )  # fmt: skip


def noticed_from(lux):
    """From the intensity towards the eye to the distance at which it is just enough."""
    return Step(
        "the distance", "length", lambda candelas, lux, n: sqrt(candelas / lux),
        "√({value} / {operand})", "({value} / {operand})**0.5", operand=lux,
        operand_of="illuminance",
        turns=(
            Turn("forgot the root", "Twice as far, how much of the light is left?",
                 lambda candelas, lux, n: candelas / lux),
            Turn("halved instead of taking the root", "Which number, times itself, is it?",
                 lambda candelas, lux, n: candelas / lux / 2),
            Turn("took the third root", "Twice as far, how much of the light is left?",
                 lambda candelas, lux, n: (candelas / lux) ** (1 / 3)),
            Turn("divided the wrong way round", "Is a stronger light seen from farther, or nearer?",
                 lambda candelas, lux, n: sqrt(lux / candelas), share=0.0),
            Turn("multiplied instead of dividing", "Does an eye that needs more light see farther?",
                 lambda candelas, lux, n: sqrt(candelas * lux), share=0.0),
            Turn("took the root of the intensity alone", "Of which quotient is the root taken?",
                 lambda candelas, lux, n: sqrt(candelas) / lux, share=0.0),
            Turn("left out a prefix under the root", "How many lux, and how many candelas, are "
                 "meant?", lambda candelas, lux, n: sqrt(1000 * candelas / lux), any_decade=True),
        ),
    )  # fmt: skip


def candelas_at(lux, called="the intensity that is needed"):
    """From a distance to the intensity that gives the eye so many lux there."""
    return Step(
        called, "luminous intensity", lambda metres, lux, n: metres * metres * lux,
        "({value})² × {operand}", "{value}**2 * {operand}", operand=lux, operand_of="illuminance",
        turns=(
            Turn("forgot to square the distance", "Twice as far, how much of the light is left?",
                 lambda metres, lux, n: metres * lux),
            Turn("doubled instead of squaring", "What is a number times itself?",
                 lambda metres, lux, n: 2 * metres * lux),
            Turn("took the third power of the distance", "Over what does the light spread: a "
                 "surface, or a room?", lambda metres, lux, n: metres**3 * lux),
            Turn("divided by the square of the distance", "Farther off, is more needed, or less?",
                 lambda metres, lux, n: lux / metres**2, share=0.0),
        ),
    )  # fmt: skip


def amps_for(rated, called="the mean current"):
    """From an intensity to the current that gives it, by the sheet."""
    return Step(
        called, "current", lambda wanted, rated, n: wanted / rated * glow.SHEET_AMPS,
        f"{{value}} / {{operand}} × {SHEET_MILLIAMPS:g}\u00a0mA",
        f"{{value}} / {{operand}} * {glow.SHEET_AMPS}", operand=rated,
        turns=(
            Turn("divided the wrong way round", "Does a brighter LED need more current, or less?",
                 lambda wanted, rated, n: rated / wanted * glow.SHEET_AMPS, share=0.0),
            Turn("took the sheet's intensity for one milliamp", "At which current does the sheet "
                 "state it?", lambda wanted, rated, n: wanted / rated / 1000),
            Turn("took the sheet's intensity for one amp", "At which current does the sheet state "
                 "it?", lambda wanted, rated, n: wanted / rated),
            Turn("took the root of the share", "Light follows the current. What is the root for?",
                 lambda wanted, rated, n: sqrt(wanted / rated) * glow.SHEET_AMPS),
        ),
    )  # fmt: skip


def read_beam(half):
    """Start from the angle at which a beam falls to half, read off a grid of 10° a division."""
    return given(half, called="the angle at half", turns=(
        Turn("read it at a quarter", "Which line of the grid is half of the top?",
             lambda value, half, n: degrees(acos(cos(radians(half)) ** 2))),
        Turn("left out the small marks", "How far beyond the last line does the curve cross?",
             lambda value, half, n: 10 * (half // 10)),
        Turn("gave the divisions", "How many degrees is a division worth?",
             lambda value, half, n: half / 10),
        Turn("counted one division too many", "Where is the axis of the beam?",
             lambda value, half, n: half + 10),
        Turn("took each small mark for one degree", "Five small marks are one division. What is "
             "one worth?", lambda value, half, n: 10 * (half // 10) + half % 10 / 2),
    ))  # fmt: skip


def both_sides(called="the whole angle"):
    """From the half angle of a beam to the viewing angle on its sheet."""
    asks = "From which side to which does the sheet count?"
    return Step(
        called, "angle", factor(2.0), "2 × {value}", "2 * {value}",
        turns=(Turn("gave the half angle", asks, factor(1.0)),
               Turn("halved the angle", asks, factor(0.5))),
    )  # fmt: skip


def share_of_full(full, called="the share of the heat"):
    """From the watts at a setting to the share of the full heat."""
    return Step(
        called, "ratio", lambda watts, full, n: watts / full, "{value} / {operand}",
        "{value} / {operand}", operand=full,
        turns=(
            Turn("divided the wrong way round", "Is it more than the full heat, or less?",
                 lambda watts, full, n: full / watts, share=0.0),
            Turn("took the watts for per cent", "Watts of how many?",
                 lambda watts, full, n: watts / 100),
        ),
    )  # fmt: skip


ROWS = (0.01, 0.02, 0.03, 0.05, 0.1, 0.2, 0.3, 0.5)  # of the lesson's table: shares of the heat
WRONG_ROW = ("read the wrong row of the table", "Which share of the heat is left?")


def _row(rows, beside):
    """Return what reads the row beside the right one."""
    near = dict(zip(rows, beside, strict=False))
    return lambda heat, operand, n: phase_cut_inverse.mean_fraction(near.get(round(heat, 6), 9))


def table_of_light(called="the share of the light"):
    """From the share of the heat to that of the light, by the table or the angle."""
    return Step(
        called, "ratio", lambda heat, operand, n: phase_cut_inverse.mean_fraction(heat),
        "the share of the light where {value} of the heat is left",
        "phase_cut_inverse.mean_fraction({value})",
        turns=(
            Turn("took the share of the heat", "Light goes with the mean. Does heat?",
                 factor(1.0)),
            Turn("took the share of the volts", "Light goes with the mean. Do rms volts?",
                 lambda heat, operand, n: sqrt(heat)),
            Turn(*TIME, lambda heat, operand, n: (
                1 - phase_cut_inverse.for_power(heat).angle_degrees / 180)),
            Turn(*WRONG_ROW, _row(ROWS[1:], ROWS), 0.0),
            Turn(*WRONG_ROW, _row(ROWS, ROWS[1:]), 0.0),
            Turn("squared the share of the heat", "Is there more light left than heat, or less?",
                 lambda heat, operand, n: heat * heat),
        ),
    )  # fmt: skip


def photon_volts(called="the least drop"):
    """From a wavelength to the volts that its photons ask for."""
    return Step(
        called, "voltage", lambda metres, operand, n: leds.photon_electron_volts(metres),
        "1240\u00a0V\u00a0nm / {value}", "leds.photon_electron_volts({value})",
        turns=(
            Turn("divided the wrong way round", "Has blue light, with its short waves, stronger "
                 "photons or weaker ones?", lambda metres, operand, n: metres * 1e9 / 1240,
                 share=0.0),
            Turn("divided a thousand by it", "Which number belongs to nanometres and volts?",
                 lambda metres, operand, n: 1e-6 / metres),
            Turn("took a hundredth of the nanometres", "Which number is divided by them?",
                 lambda metres, operand, n: metres * 1e7, share=0.0),
            Turn("took off a diode's 0.7 V as well", "Does a diode stand in this chain?",
                 lambda metres, operand, n: leds.photon_electron_volts(metres) - 0.7),
        ),
    )  # fmt: skip


def mean_of_pulses(lit, called="the mean"):
    """From the height of pulses to their mean, by the per cent of the time that they last."""
    return Step(
        called, "current", lambda amps, lit, n: amps * lit / 100, "{value} × {operand}",
        "{value} * {operand} / 100", operand=lit,
        turns=(
            Turn("took the pulse as it stands", "For how much of the time is it there?",
                 lambda amps, lit, n: amps),
            Turn("took the rms of the pulses", "Which of mean and rms does light follow?",
                 lambda amps, lit, n: amps * sqrt(lit / 100)),
            Turn("took the dark time", "For which part of the time is there light?",
                 lambda amps, lit, n: amps * (1 - lit / 100)),
            Turn("took half of the pulse", "Is it lit for half of the time?",
                 lambda amps, lit, n: amps / 2),
            Turn("divided by the share", "Can the mean lie above the pulse?",
                 lambda amps, lit, n: amps * 100 / lit, share=0.0),
        ),
    )  # fmt: skip


def swing(lowest, called="the flicker"):
    """From the highest light to percent flicker, by the lowest."""
    return Step(
        called, "ratio", lambda high, low, n: (high - low) / (high + low),
        "({value} − {operand}) / ({value} + {operand})", "({value} - {operand}) / ({value} + "
        "{operand})", operand=lowest,
        turns=(
            Turn("divided by the highest", "What is below the line: one of them, or their sum?",
                 lambda high, low, n: (high - low) / high),
            Turn("divided by the middle", "What is below the line: their middle, or their sum?",
                 lambda high, low, n: 2 * (high - low) / (high + low)),
            Turn("divided by the lowest", "What is below the line: one of them, or their sum?",
                 lambda high, low, n: (high - low) / low),
            Turn("took the lowest over the highest", "What would a steady light give?",
                 lambda high, low, n: low / high),
            Turn("turned the quotient over", "Can it be more than one?",
                 lambda high, low, n: (high + low) / (high - low), share=0.0),
        ),
    )  # fmt: skip


def bursts_a_second(cycles, called="the bursts in a second"):
    """From the hertz of the mains to how often a controller of whole cycles starts anew."""
    return Step(
        called, "frequency", lambda hertz, cycles, n: hertz / cycles, "{value} / {operand}",
        "{value} / {operand}", operand=cycles, operand_of="ratio",
        turns=(
            Turn("took the hertz of the mains", "How many cycles does one round last?",
                 lambda hertz, cycles, n: hertz),
            Turn("counted half-cycles", "What does this controller count: cycles, or halves?",
                 lambda hertz, cycles, n: 2 * hertz / cycles),
            Turn("divided by the cycles let through", "How long is it until the light goes on "
                 "again?", lambda hertz, cycles, n: hertz / n.on_cycles),
            Turn("divided by the cycles held back", "How long is it until the light goes on "
                 "again?", lambda hertz, cycles, n: hertz / (cycles - n.on_cycles)),
            Turn("counted the cycles let through", "Are cycles asked for, or how often it goes on?",
                 lambda hertz, cycles, n: hertz * n.on_cycles / cycles),
            Turn("gave the time of one round", "How many such times fit into one second?",
                 lambda hertz, cycles, n: cycles / hertz, share=0.0),
            Turn("multiplied instead of dividing", "Does it go on more often than the mains "
                 "swings?", lambda hertz, cycles, n: hertz * cycles, share=0.0),
        ),
    )  # fmt: skip
