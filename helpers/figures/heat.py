"""Pictures of a warm resistor: its power against its rating, and how it warms up."""

from math import isfinite

import numpy as np

from helpers.figures.chart import Axis, Chart, axis, picture
from helpers.figures.words import BEYOND, TIME_UNITS, duration, time_unit, whole_percent
from helpers.figures.words import watts as in_watts
from helpers.physics import heat, limits, ratings
from helpers.quantities import write


def rating(watts, rated_watts, ambient_celsius, verdict):
    """Draw a resistor's power under its derating line.

    Parameters
    ----------
    watts : float
        Power that it turns into heat [W].
    rated_watts : float
        Rating on its sheet [W].
    ambient_celsius : float
        Temperature of the air around it [degC].
    verdict : str
        What the rules say of it: pass, caution or fail [-].

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    Raises
    ------
    ValueError
        If the power is negative or the rating not above zero.

    Notes
    -----
    Full rating up to 70 degC, nothing left at 155 degC, as for many film types; others end at 125
    degC. A part's own sheet comes first. A place beyond the picture is marked at its edge, and
    said.

    References
    ----------
    As `ratings.derated_watts`: IEC 60115-1.

    Examples
    --------
    >>> words = rating(0.2, 0.5, 40.0, "pass").finding.replace("\\xa0", " ")
    >>> words.partition(";")[0]
    'Pass: at 40 °C the part makes 40 % of the heat that it may: a 0.5 W resistor may turn 0.5 W \
into heat, half of that while all is sound'
    """
    watts = limits.not_negative(watts, "watts", "W", "Leave the sign out.")
    allowed = ratings.derated_watts(rated_watts, ambient_celsius)
    rated, air = in_watts(rated_watts), write(ambient_celsius, "temperature")
    share = "more of the heat than"
    if watts <= allowed:
        share = f"{whole_percent(watts / (allowed or 1.0))} of the heat that"
    finding = (
        f"{verdict.capitalize()}: at {air} the part makes {share} it may: a {rated} resistor may "
        f"turn {in_watts(allowed)} into heat, half of that while all is sound; here it is "
        f"{in_watts(watts)}"
    )
    top = (2.3 if watts > 1.2 * rated_watts else 1.3) * rated_watts
    seen = np.clip(ambient_celsius, 0.0, 160.0), min(watts, top)
    beyond = seen != (ambient_celsius, watts)
    edge = BEYOND if beyond else ""
    details = (
        f"In full: what is allowed is level at {rated} up to "
        f"{write(ratings.KNEE_CELSIUS, 'temperature')} of air and falls straight to nothing at "
        f"{write(ratings.ZERO_CELSIUS, 'temperature')}, as for many film types; the part's own "
        "sheet decides."
    )
    celsius = np.array([0.0, ratings.KNEE_CELSIUS, ratings.ZERO_CELSIUS, 160.0])
    line = ratings.derated_watts(rated_watts, celsius)
    halves = [rated_watts * place / 2 for place in range(5)]
    up = Axis(0.0, top, "power", {at: in_watts(at) for at in halves if at <= top})
    chart = Chart(240, axis("air around the part in °C", 0, 160, 40), up)
    for share, meaning, text in ((1.0, "limit", "the most"), (0.5, "heat", "half of it")):
        chart.fill_between(celsius, share * line, 0.0, meaning, 0.1)
        chart.line(celsius, share * line, meaning, label=text)
    chart.mark(*seen, "heat", "this part")
    name = "A power under the derating line of a resistor"
    return picture(name, f"{finding}.{edge}", chart.html(), details=details)


def warming(last, watts, kelvin_per_watt, time_constant_seconds, ambient_celsius):
    """Return a chart of a part that was switched on cold, up to a last instant.

    Parameters
    ----------
    last : float
        The last instant that is drawn [s].
    watts, kelvin_per_watt, time_constant_seconds, ambient_celsius
        As for `warm_up`.

    Returns
    -------
    chart : Chart
    """
    final, unit = heat.final_celsius(watts, kelvin_per_watt, ambient_celsius), time_unit(last)
    times, rise = np.linspace(0.0, last, 121), final - ambient_celsius
    ticks = {at: f"{at / TIME_UNITS[unit]:.3g}" for at in times[::24].tolist()}
    room = max(0.12 * rise, 1.0)
    apart = final if rise > 0.2 else ambient_celsius  # or its words would lie over the air's
    up = {at: write(at, "temperature") for at in (ambient_celsius, apart)}
    chart = Chart(
        230, Axis(0.0, last, f"time since switching on in {unit}", ticks),
        Axis(ambient_celsius - room, final + room, "temperature", up),
    )  # fmt: skip
    chart.line((0.0, last), final, "limit", "settled")
    chart.line((0.0, last), ambient_celsius, "mains", "its air")
    part = watts, kelvin_per_watt, time_constant_seconds, ambient_celsius
    chart.line(times, heat.celsius_after(times, *part), "heat")
    return chart


def warm_up(watts, kelvin_per_watt, time_constant_seconds, ambient_celsius):
    """Draw how a part warms up after it was switched on cold.

    Parameters
    ----------
    watts : float
        Power that it turns into heat [W].
    kelvin_per_watt : float
        Thermal resistance to the air [K/W].
    time_constant_seconds : float
        Time for 63 % of the rise [s].
    ambient_celsius : float
        Temperature of the air and of the part at the start [degC].

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    Raises
    ------
    ValueError
        As `heat.celsius_after`.

    Notes
    -----
    Drawn over five time constants. The temperature is that of the place that the thermal
    resistance was given for; the film inside is hotter than the outside.

    References
    ----------
    As `heat.celsius_after`.

    Examples
    --------
    >>> words = warm_up(0.2, 200.0, 90.0, 25.0).finding.replace("\\xa0", " ")
    >>> words.partition(".")[0]
    'The part settles at 65 °C: 40 K above its air; 95 % of the rise is there after 270 s'
    """
    part = watts, kelvin_per_watt, time_constant_seconds, ambient_celsius
    final = heat.final_celsius(watts, kelvin_per_watt, ambient_celsius)
    rise = final - ambient_celsius
    nearly = heat.seconds_to(ambient_celsius + 0.95 * rise, *part)
    end, air = write(final, "temperature"), write(ambient_celsius, "temperature")
    finding = (
        f"The part settles at {round(final)}\u00a0°C: {write(rise, 'temperature rise')} above its "
        f"air; 95 % of the rise is there after {duration(nearly)}."
    )
    if final > ratings.ZERO_CELSIUS:
        finding = (
            f"The part would climb to {end}, but few types stand more than "
            f"{write(ratings.ZERO_CELSIUS, 'temperature')} and some only "
            f"{write(125.0, 'temperature')}: it fails and may start a fire."
        )
    if rise <= 0.0 or not isfinite(nearly):
        finding = f"Without power the part stays as warm as its air, {air}."
    first = heat.celsius_after(time_constant_seconds, *part)
    constant = duration(time_constant_seconds)
    details = (
        f"The curve starts at {air}, is steep at first, passes {write(first, 'temperature')} "
        f"after one time constant of {constant} and flattens out."
    )
    chart = warming(5.0 * time_constant_seconds, *part)
    if rise > 0.0 and isfinite(nearly):
        text = f"95 % after {duration(nearly)}"
        chart.mark(nearly, heat.celsius_after(nearly, *part), label=text)
    name = "The temperature of a part against the time since it was switched on"
    return picture(name, finding, chart.html(), details=details if rise > 0.0 else "")
