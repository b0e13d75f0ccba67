"""Explorers that say more than their figure, as functions of the supply and their controls."""

from helpers.figures import bench_supply, faulty
from helpers.figures.bands import resistor
from helpers.figures.heat import rating
from helpers.figures.touch import zones
from helpers.physics import colour_code, hazards, heater, leds, mains, ohms_law, ratings, resistors
from helpers.physics import heat as warmth
from helpers.physics.faults import SOUND
from helpers.physics.phase_cut import Dimmer
from helpers.quantities import read, write, write_letter_code
from helpers.sizing import rules

BENCH_LED_VOLTS, BENCH_VOLTS = 2.0, (5.0, bench_supply.MOST_VOLTS)
#: Below this the ohms of dry skin rise steeply (IEC 60479-1, from memory) [V].
LOW_VOLTS = 50.0
FIGURES = colour_code.DIGIT_COLOURS
MULTIPLIERS = ("silver", "gold", *FIGURES[:7])


def dropper(supply, volts, ohms):
    """Show what current a dropper lets through an LED on a bench supply.

    Parameters
    ----------
    supply : mains.Supply
        The learner's supply, which a bench supply does not depend on.
    volts : float
        Setting of the bench supply, 5 to 24 [V].
    ohms : float
        The dropper [ohm].

    Returns
    -------
    drawn : Drawn

    References
    ----------
    20 mA as the usual limit of a small LED, a rating of twice the heat: common practice, no source.

    Examples
    --------
    >>> "Too much" in dropper(None, 5.0, 4700.0).finding
    False
    """
    amps = ohms_law.led_current(volts, BENCH_LED_VOLTS, ohms)
    bare = ohms_law.current(volts, ohms)
    watts = ohms_law.power(amps=amps, ohms=ohms)
    drawn = bench_supply.dropper(volts, ohms, BENCH_LED_VOLTS)
    said = (
        f"{drawn.finding} {write(volts, 'voltage')} and {write(ohms, 'resistance')} give "
        f"{write(amps, 'current')}; without the LED's own {write(BENCH_LED_VOLTS, 'voltage')} the "
        f"sum would say {write(bare, 'current')}. The dropper turns {write(watts, 'power')} into "
        f"heat, so it has to be rated for {write(watts / rules.HEALTHY_SHARE, 'power')} at least."
    )
    said += " Take more ohms." * (amps > leds.LIMIT_AMPS)
    return drawn._replace(finding=said)


def heat(supply, watts, rated_watts, ambient_celsius):
    """Show a power against what is left of a resistor's rating in warm air.

    Parameters
    ----------
    supply : mains.Supply
        The learner's supply, which only the first power depends on.
    watts : float
        Power that the resistor turns into heat, 0.01 to 5 [W].
    rated_watts : float
        Rating on its sheet [W].
    ambient_celsius : float
        Temperature of the air around it, 0 to 150 [degC].

    Returns
    -------
    drawn : Drawn
        With the verdict.

    References
    ----------
    As `rules.heat`: IEC 60115-1, derating; half of it while all is sound: common practice, no
    source. 155 degC as the end of many film types, 125 degC of others: the part's own sheet.

    Examples
    --------
    >>> [heat(None, watts, 0.5, 40.0).finding.split(":")[0] for watts in (0.2, 0.3)]
    ['Pass', 'Fail']
    """
    found = rules.heat(watts, rated_watts, ambient_celsius)
    drawn = rating(watts, rated_watts, ambient_celsius, found.verdict)
    film = warmth.final_celsius(watts, warmth.kelvin_per_watt_of(rated_watts), ambient_celsius)
    limit = write(ratings.ZERO_CELSIUS, "temperature")
    hot = f"reach about {write(film, 'temperature')}; many film types end at {limit}, others sooner"
    if film > ratings.ZERO_CELSIUS:
        hot = f"go beyond {limit}, where many film types end; others end sooner"
    why = "" if found.verdict == "pass" else " That is over half."
    if found.danger:
        why = f" Danger: {found.danger}"
    return drawn._replace(finding=f"{drawn.finding}{why} Its film would {hot}.")


def touch_current(supply, volts, ohms, seconds, before=None):
    """Show what a current through the body does to people.

    Parameters
    ----------
    supply : mains.Supply
        The learner's supply; its frequency counts.
    volts : float
        Voltage to earth of what is touched [V].
    ohms : float
        Resistance between it and the hand; 0 for bare contact [ohm].
    seconds : float
        How long it is touched [s].
    before : dict, optional
        The state of a moment ago, to be drawn hollow.

    Returns
    -------
    drawn : Drawn

    References
    ----------
    IEC 60479-1 for the zones and the body (the latter from memory); 30 mA residual-current devices
    and their types: IEC 61008-1, IEC 60755 (the types from memory).

    Examples
    --------
    >>> "this kills" in touch_current(mains.SUPPLIES["120 V 60 Hz"], 120.0, 0.0, 1.0).finding
    True
    """
    amps = hazards.touch_amps_rms(mains.Supply(volts, supply.hertz), ohms)
    if before:
        earlier = mains.Supply(before["volts"], supply.hertz)
        before = hazards.touch_amps_rms(earlier, before["ohms"]), before["seconds"]
    drawn = zones(amps, seconds, before, heater.POT_WATTS / supply.volts_rms)
    way = f"through {write(ohms, 'resistance')}" if ohms else "by bare contact"
    device = f"A {write(hazards.RESIDUAL_AMPS_RMS, 'current')} residual-current device"
    trips = f"{device} need not trip."
    if amps >= hazards.RESIDUAL_AMPS_RMS:
        trips = (
            f"{device} is made to cut this off, if it flows to earth and the device suits the "
            "wave (behind a dimmer or a diode type A at least); between both wires never."
        )
    skin = "Wet skin lets more through: this is the kinder case."
    if volts <= LOW_VOLTS:
        skin = "At few volts dry skin holds back more than this says; wet skin lets more through."
    said = (
        f"{write(volts, 'voltage')} {way} drives {write(amps, 'current')} through dry hands of "
        f"{write(hazards.SHOCK_BODY_OHMS, 'resistance')}, the body that shock is judged with. "
        f"{drawn.finding} {trips} {skin}"
    )
    return drawn._replace(finding=said)


def bands(supply, first, second, multiplier, tolerance):
    """Show a resistor with four bands and what they say.

    Parameters
    ----------
    supply : mains.Supply
        The learner's supply, which no band depends on.
    first, second : str
        Colours of the two figures.
    multiplier : str
        Colour of the power of ten.
    tolerance : str
        Colour of the tolerance.

    Returns
    -------
    drawn : Drawn

    Examples
    --------
    >>> bands(None, "yellow", "violet", "red", "gold").finding.replace("\\xa0", " ")
    'Yellow 4, violet 7, red × 100, gold ± 5 %: 4.7 kΩ, so from 4.47 kΩ to 4.94 kΩ. In letters: \
4K7J. A preferred value of the E12 series.'
    """
    colours = first, second, multiplier, tolerance
    ohms, percent = colour_code.read_bands(colours)
    figures = 10 * FIGURES.index(first) + FIGURES.index(second)
    low, high = ohms * (1 - percent / 100), ohms * (1 + percent / 100)
    factor = f"{ohms / figures:,.10g}".replace(",", "\u00a0")
    series = [name for name in ("E12", "E24") if figures in resistors.SERIES[name]]
    preferred = "Not a preferred value: hardly any shop has it."
    if series:
        preferred = f"A preferred value of the {series[0]} series."
    said = (
        f"{first.capitalize()} {FIGURES.index(first)}, {second} {FIGURES.index(second)}, "
        f"{multiplier} × {factor}, {tolerance} ± {write(percent, 'percent')}: "
        f"{write(ohms, 'resistance')}, so from {write(low, 'resistance')} to "
        f"{write(high, 'resistance')}. In letters: {write_letter_code(ohms, percent)}. {preferred}"
    )
    return resistor(colours, ("first", "second", "multiplier", "tolerance"))._replace(finding=said)


def bands_of(text):
    """Return the four bands, 5 % tolerance, of a value as a person types it.

    Parameters
    ----------
    text : str
        Such as `4k7` or `330 ohm`.

    Returns
    -------
    state : dict
        Arguments for `bands`.

    Raises
    ------
    ValueError
        If it cannot be read or four bands cannot say it; the message is for who typed it.

    Examples
    --------
    >>> bands_of("4k7")["multiplier"]
    'red'
    """
    ohms = read(text, "resistance").value
    names = colour_code.bands(ohms, 5.0)
    if len(names) != 4 or names[2] not in MULTIPLIERS:
        near = write(resistors.nearest(ohms), "resistance")
        raise ValueError(
            f"{write(ohms, 'resistance', 5)} needs more than these four bands can say: two "
            f"figures, from 0.1 Ω to 99 MΩ. The nearest value of the E24 series is {near}."
        )
    return dict(zip(("first", "second", "multiplier", "tolerance"), names, strict=True))


#: What the finder takes of each resistor's sheet and the air in its box [W], [V] and [degC].
FINDER_SHEET = (0.5, 300.0, 70.0)


def one_fault(supply, riddle, fault, circuit, ohms, angle_degrees):
    """Show what one fault does and what the rules say of it, or a guess beside a hidden fault.

    Parameters
    ----------
    supply : mains.Supply
        The learner's supply, taken at its highest.
    riddle : int
        0 for a chosen fault, or the number of a hidden one [-].
    fault : str
        A key of `faulty.FAULTS`: what is shown, or guessed [-].
    circuit : str
        A circuit with a silicon diode [-].
    ohms : float
        Each of the two resistors [ohm].
    angle_degrees : float
        Firing angle of the dimmer, 0 to 150 [deg].

    Returns
    -------
    drawn : Drawn

    References
    ----------
    As `faults.after` and `rules.dropper`.

    Examples
    --------
    >>> shown = one_fault(mains.SUPPLIES["230 V 50 Hz"], 1, "the LED is open", "series_diode",
    ...                   82e3, 0.0)
    >>> "does not fit" in shown.finding
    True
    """
    part, how = faulty.FAULTS[fault] or (SOUND, "short")
    found = rules.dropper(circuit, supply, ohms, 2, *FINDER_SHEET)
    # The rules speak of sound parts and of shorts, without a dimmer: other faults heat no part.
    judged = [one for one in found if one.after == part and how == "short"]
    sheet = f"{write(FINDER_SHEET[0], 'power')} and {write(FINDER_SHEET[1], 'voltage')}"
    verdict = (
        f"By the rules, at full, for parts of {sheet}: {rules.worst(judged)}" if judged else ""
    )
    dimmer = Dimmer("leading", angle_degrees)
    return faulty.one_fault(circuit, supply, dimmer, ohms, fault, riddle, verdict)
