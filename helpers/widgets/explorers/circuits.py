"""Explorer: the five indicator circuits side by side."""

from functools import partial

from helpers.figures.live.bars import Column, compared
from helpers.physics.operating_point import operating_point
from helpers.physics.phase_cut import Dimmer
from helpers.quantities import write
from helpers.widgets.explorers.knobs import Slider
from helpers.widgets.explorers.mains_side import CIRCUIT_NAMES, DROPPER, LED_VOLTS
from helpers.widgets.explorers.panel import Explorer


def circuits(supply, angle_degrees, ohms):
    """Show light, heat, reverse current and flicker of five circuits with the same dropper.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    angle_degrees : float
        Firing angle of a leading-edge dimmer; 0 is full [deg].
    ohms : float
        The dropper [ohm].

    Returns
    -------
    svg : str
    sentence : str
        What the picture shows, with its numbers.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> words = circuits(mains.SUPPLIES["100 V 50 Hz"], 180.0, 68e3)[1]
    >>> "All five are dark" in words
    True
    """
    setting = Dimmer("leading", angle_degrees)
    points = [
        operating_point(circuit, supply, setting, ohms=ohms, led_volts=LED_VOLTS)
        for circuit in CIRCUIT_NAMES.values()
    ]
    full = operating_point("bridge", supply, ohms=ohms, led_volts=LED_VOLTS)
    light = [point.led_amps_mean + point.second_led_amps_mean for point in points]
    watts = [point.resistor_watts for point in points]
    backward = [point.led_reverse_amps_peak for point in points]
    pulses = [point.light_fundamental_hertz for point in points]
    columns = (
        _column("Light: mean LED current", light, 1.03 * full.led_amps_mean, "current", "light"),
        _column("Heat in the dropper", watts, 1.03 * full.resistor_watts, "power", "heat"),
        _column("Peak backwards in LED", backward, 1.03 * full.led_amps_peak, "current", "volts"),
        _column("Light pulses a second", pulses, 2.0 * supply.hertz, "frequency", "mains"),
    )
    angle, dropper = write(angle_degrees, "angle"), write(ohms, "resistance")
    by_name = dict(zip(CIRCUIT_NAMES.values(), points, strict=True))
    series, bridge = by_name["series_diode"], by_name["bridge"]
    sentence = (
        f"Calculated: {dropper} behind a leading edge at {angle}. The series diode gives the LED "
        f"{write(series.led_amps_mean, 'current')} with {write(series.resistor_watts, 'power')} "
        f"in the dropper and light in every second half cycle. The bridge gives it "
        f"{write(bridge.led_amps_mean, 'current')} with {write(bridge.resistor_watts, 'power')} "
        "and light in both. Without any diode the LED is driven into breakdown, up to "
        f"{write(by_name['resistor_only'].led_reverse_amps_peak, 'current')} backwards: do not "
        "build that one."
    )
    title = (
        f"For the LED's {write(series.led_amps_mean, 'current')} the series diode costs "
        f"{write(series.resistor_watts, 'power')} of heat"
    )
    if angle_degrees == 180.0:
        title = "All five are dark, yet the wires are live"
        sentence = f"Calculated: at {angle} nothing is let through. {title}."
    return compared(list(CIRCUIT_NAMES), columns, title), sentence


def _column(name, values, longest, quantity, meaning):
    shares = tuple(value / longest for value in values)
    return Column(name, shares, tuple(write(value, quantity) for value in values), meaning)


def _open_on(supply):
    return partial(circuits, supply), (
        Slider("angle_degrees", "Firing angle in degrees", 0.0, 180.0, 1.0, 0.0),
        DROPPER,
    )


EXPLORER = Explorer(
    _open_on,
    (
        "Which circuit makes the most light for each watt in the dropper?",
        "Which circuits protect the LED in the other half cycle, and which one does not?",
        "Turn the angle to 120 degrees. Which column does not change, and why?",
    ),
    "Danger: every part of all five circuits is at mains voltage, the LED's legs too. Comparing "
    "them is not permission to build one; a ready-made approved indicator is always a choice.",
)
