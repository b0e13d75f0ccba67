"""Picture of one fault: light, heat in the dropper and heat of the pot, beside the sound ones.

Or of a fault that is to be found: then beside those of a guess. Judges nothing: what the rules say
is handed in.
"""

from helpers.figures.chart import bars, beside, heading, number_box, picture
from helpers.figures.words import capital, setting, share_of_one
from helpers.figures.words import watts as in_watts
from helpers.physics import faults, heater, limits, mains
from helpers.quantities import write

RESISTORS = 2
#: What can fail, as people say it, and its name in `physics.faults`.
FAULTS = {
    "all parts are sound": (),
    "one of the two resistors is shorted": ("dropper", "short"),
    "one of the two resistors is open": ("dropper", "open"),
    "one of the two resistors has drifted to twice its ohms": ("dropper", "drift"),
    "the LED is shorted": ("led", "short"),
    "the LED is open": ("led", "open"),
    "a diode is shorted": ("diode", "short"),
    "a diode is open": ("diode", "open"),
    "the neutral wire is open": ("neutral", "open"),
    "the pot's element is broken": ("element", "open"),
    "the dimmer passes everything": ("dimmer", "short"),
    "the dimmer passes the LED's half-cycles only": ("dimmer", "half wave"),
    "the dimmer passes the other half-cycles only": ("dimmer", "other half wave"),
}
#: Which faults are hidden, in the order of their numbers.
RIDDLES = tuple(list(FAULTS)[place] for place in (1, 9, 5, 6, 8, 10))
WARM, COOL = 1.3, 0.2
"""Shares of the sound heat from which a dropper is called hotter, or cold: common practice, no \
source [-]."""


def state(circuit, supply, dimmer, ohms, fault):
    """Return light, heat of the hotter resistor and of the pot, against sound ones, and the rest.

    Parameters
    ----------
    circuit : str
        A key of `physics.circuits.CIRCUITS` with a silicon diode [-].
    supply : mains.Supply
        The supply.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    ohms : float
        Each of the two resistors [ohm].
    fault : str
        A key of `FAULTS` [-].

    Returns
    -------
    shares : tuple of float
        Light, heat of the hotter resistor, heat of the pot, each against the sound one [-].
    left : faults.Aftermath

    Raises
    ------
    ValueError
        If the fault is unknown.

    References
    ----------
    As `faults.after`.

    Examples
    --------
    >>> from helpers.physics import mains, phase_cut
    >>> europe = mains.Supply(230.0, 50.0)
    >>> found = state("series_diode", europe, phase_cut.NO_DIMMER, 82e3, "a diode is shorted")
    >>> [round(share, 1) for share in found[0]]
    [1.0, 2.0, 1.0]
    """
    limits.one_of(fault, "fault", FAULTS)
    pot = {"heater_ohms": heater.resistance(supply.volts_rms, heater.POT_WATTS)}
    parts = {"ohms_each": ohms, "count": RESISTORS} | pot
    # A part that has drifted to its own value is sound.
    sound = faults.after(circuit, "dropper", "drift", supply, dimmer, drift=1.0, **parts)
    part = FAULTS[fault]
    left = faults.after(circuit, *part, supply, dimmer, **parts) if part else sound
    return (
        left.light_share,
        left.watts_each / sound.watts_each,
        left.heater_watts / sound.heater_watts,
    ), left


def one_fault(circuit, supply, dimmer, ohms, fault, riddle=0, verdict=""):
    """Draw what a fault does, or a guess beside a fault that is to be found.

    Parameters
    ----------
    circuit, supply, dimmer, ohms, fault
        As for `state`; the supply is taken at its highest.
    riddle : int
        0 to show the fault beside sound parts; 1 and more to show it, as a guess, beside the
        hidden fault of that number [-].
    verdict : str
        What the rules say of the fault, one sentence or more [-].

    Returns
    -------
    drawn : Drawn

    References
    ----------
    As `faults.after`.

    Examples
    --------
    >>> from helpers.physics import mains, phase_cut
    >>> drawn = one_fault("series_diode", mains.Supply(230.0, 50.0), phase_cut.NO_DIMMER, 82e3,
    ...                   "one of the two resistors is shorted")
    >>> drawn.finding.replace("\\xa0", " ").partition(":")[0]
    'One of the two resistors is shorted'
    """
    high = mains.highest(supply)
    found, left = state(circuit, high, dimmer, ohms, fault)
    if riddle:
        hidden = RIDDLES[riddle - 1]
        shares = {each: state(circuit, high, dimmer, ohms, each)[0] for each in FAULTS}
        told = {each: _symptoms(seen) for each, seen in shares.items()}
        said = f"Riddle {riddle}: {told[hidden]}. {_told_of_guess(told, fault, hidden)}"
        shown = _rows(("what is seen", shares[hidden]), ("your guess", found))
    else:
        dark = found[0] < faults.DARK_BELOW
        start = f"Danger: dark never means dead; {fault}" if dark else capital(fault)
        said = f"{start}: {_symptoms(found)}. {_inside(left)} {verdict}".strip()
        box = number_box("Hotter resistor", in_watts(left.watts_each), "on the highest mains")
        if left.gap_volts_peak > 0.0:
            gap = write(left.gap_volts_peak, "voltage")
            box = number_box("Across the open part", gap, "peak, and it can kill") + box
        shown = beside(_rows(("all sound", (1.0, 1.0, 1.0)), ("this fault", found)), box)
    name = "Bars of light and heat, in per cent of those with all parts sound, in two rows each"
    return picture(name, f"{said} {setting(dimmer)}.", shown)


def _rows(*states):
    """Bars of light and heat, from the name of each state and its shares."""
    measured = ("Light of the LED", "Heat of the hotter resistor", "Heat of the pot")
    return "".join(
        heading(label) + bars("heat" if place else "light", *(
            (name, shares[place] / 4.0, share_of_one(shares[place])) for name, shares in states
        ))
        for place, label in enumerate(measured)
    )  # fmt: skip


def _symptoms(shares):
    """What a person would notice with everything closed."""
    light, dropper, pot = shares
    seen = "dark" if light < faults.DARK_BELOW else "as before"
    if faults.DARK_BELOW <= light < faults.DIMMER_BELOW:
        seen = "dimmer than before"
    elif light > faults.BRIGHTER_ABOVE:
        seen = "brighter than before"
    warm = "as warm as before"
    if dropper > WARM or dropper < COOL:
        warm = "hotter than before" if dropper > WARM else "cold"
    heat = "as warm as its knob says"
    if not 0.9 < pot < 1.1:
        heat = "cold" if pot < 0.1 else "warmer than its knob says" if pot > 1.0 else "too cool"
    return f"the light is {seen}, the dropper {warm}, the pot {heat}"


def _inside(left):
    """What nobody sees."""
    told = f"The hotter resistor gives {in_watts(left.watts_each)}, on the highest mains."
    if left.gap_volts_peak > 0.0:
        gap = write(left.gap_volts_peak, "voltage")
        told += f" Across the open part stand up to {gap}, and all of it is live."
    if left.led_reverse_amps_peak > 0.0:
        told += " The LED is pushed backwards in every cycle: it slowly dies."
    return told


def _told_of_guess(told, guess, hidden):
    """Whether a guess fits, from what would be noticed after each fault."""
    fits = [fault for fault, seen in told.items() if seen == told[hidden]]
    start = f"Your guess: {guess}."
    if guess not in fits:
        return f"{start} That does not fit: then {told[guess]}."
    if "all parts are sound" in fits:
        return f"{start} At this setting the fault does not show. Turn the dimmer, then look again."
    if len(fits) == 1:
        return f"{start} That fits, and it is the only single fault here that does."
    others = "; ".join(fault for fault in fits if fault != guess)
    return f"{start} That fits. So would these, and no light can tell them apart: {others}."
