"""Picture of what a dimmer leaves on its pot at off: sound or broken element, and the light."""

import numpy as np

from helpers.figures.chart import bars, heading, picture
from helpers.figures.words import share_of_one
from helpers.physics import clamped, heater, leakage, mains
from helpers.physics.operating_point import operating_point
from helpers.quantities import write

DROPPER_OHMS, SNUBBER_OHMS, BLEEDER_OHMS = 100e3, leakage.USUAL_SNUBBER[1], 470e3
#: Capacitors that dimmers have across their switch. Common practice, no source [F].
FARADS = (100e-9, 220e-9)


def at_off(supply, heater_watts=90.0):
    """Draw peak voltage and light that an off dimmer leaves in five states of its pot.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    heater_watts : float
        Heat of the heater on full mains [W].

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    Notes
    -----
    A dropper of 100 kohm with a red LED; the broken element with the smaller capacitor. A diode
    across the LED leaves a nearly full sine, so its light is taken as that of a sine.

    References
    ----------
    As `leakage.off_state`, `leakage.reaches_led` and `clamped.off_state`.

    Examples
    --------
    >>> at_off(mains.Supply(120.0, 60.0)).finding.replace("\\xa0", " ").partition(":")[2][:56]
    " dimmer off and element broken, the pot's terminals swin"
    """
    now, highest = (_broken(each) for each in (supply, mains.highest(supply)))
    most, high = (write(each.diode_reverse_volts, "voltage") for each in (now, highest))
    rms = " and ".join(write(each.volts_rms, "voltage") for each in (now, highest))
    finding = (
        "Danger: dimmer off and element broken, the pot's terminals swing to "
        f"{most} with a series diode, {high} on the highest mains, and the light is dark"
    )
    rows = [
        (name, peak, f"{write(peak, 'voltage')}, {light}")
        for name, peak, light in _rows(supply, heater_watts)
    ]
    told = "; ".join(f"{name}: {said}" for name, _, said in rows)
    full_scale = max(peak for _, peak, _ in rows)
    shown = bars("volts", *((name, peak / full_scale, said) for name, peak, said in rows))
    name = "Five states of a pot whose dimmer is off, with the peak voltage and the light of each"
    head = heading("State of the pot: peak at its terminals, light")
    return picture(name, f"{finding}.", head, shown, details=f"Rms: {rms}. {told}.")


def _broken(supply, bleeder_ohms=np.inf):
    return clamped.off_state(supply, FARADS[0], SNUBBER_OHMS, DROPPER_OHMS, bleeder_ohms)


def _rows(supply, heater_watts):
    """Name, peak and light of each state."""
    rows = []
    for farads in FARADS:
        pot = heater.resistance(supply.volts_rms, heater_watts)
        left = leakage.off_state(supply, farads, SNUBBER_OHMS, pot)
        glows = leakage.reaches_led("diode_across", left)
        light = "a red LED can glow" if glows else "too little for an LED"
        rows.append((f"Element sound, {write(farads, 'capacitance')}", left.volts_peak, light))
    across = leakage.off_state(supply, FARADS[0], SNUBBER_OHMS, dropper_ohms=DROPPER_OHMS)
    volts = mains.Supply(np.array([across.volts_rms, supply.volts_rms]), supply.hertz)
    amps = operating_point("diode_across", volts, ohms=DROPPER_OHMS).led_amps_mean
    light = f"{share_of_one(amps[0] / amps[1])} of full"
    rows.append(("Element broken, diode across the LED", across.volts_peak, light))
    rows.append(("Element broken, diode in series", _broken(supply).diode_reverse_volts, "dark"))
    bled = _broken(supply, BLEEDER_OHMS)
    light = f"{share_of_one(bled.led_share)} of full"
    name = f"The same, {write(BLEEDER_OHMS, 'resistance')} across the pot"
    rows.append((name, bled.diode_reverse_volts, light))
    return rows
