"""Pictures from the bench: prediction beside reading, and how far a warm-up has come."""

import numpy as np

from helpers.figures.chart import Axis, Chart, picture
from helpers.figures.heat import warming
from helpers.figures.words import duration
from helpers.physics import heat, limits
from helpers.quantities import write, write_as


def agreement(predicted, read, agrees):
    """Draw a prediction and a reading, each with its expanded uncertainty.

    Parameters
    ----------
    predicted, read : tuple of (float, float)
        Value, and how far it may lie to either side, k = 2 [V].
    agrees : bool
        Whether the two agree, as judged elsewhere.

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    References
    ----------
    k = 2: JCGM 100:2008, 6.2.

    Examples
    --------
    >>> agreement((10.6, 0.5), (10.9, 0.1), True).finding.replace("\\xa0", " ")
    'They agree, within what is uncertain: predicted 10.6 V ± 0.5 V, read 10.9 V ± 0.1 V.'
    """
    both = predicted, read
    texts = [f"{write_as(value, 'V', 4)} ± {write_as(within, 'V', 2)}" for value, within in both]
    verdict = "agree, within" if agrees else "disagree, by more than"
    finding = f"They {verdict} what is uncertain: predicted {texts[0]}, read {texts[1]}."
    ends = [value + sign * within for value, within in both for sign in (-1.0, 1.0)]
    room = 0.25 * (max(ends) - min(ends))
    low, high = min(ends) - room, max(ends) + room
    step = _step(high - low)
    places = step * np.arange(np.ceil(low / step), np.floor(high / step) + 1.0)
    ticks = {float(at): f"{at:.4g}" for at in places}
    names = {2.0: "predicted", 1.0: "read"}
    chart = Chart(130, Axis(low, high, "volts", ticks), Axis(0.4, 2.9, "", names))
    looks = "mains", "volts"
    for up, (value, within), meaning, text in zip(names, both, looks, texts, strict=True):
        name = text.replace(" ±", "\n±")
        chart.line([value - within, value + within], [up, up], meaning, name)
        for at in (value - within, value, value + within):
            chart.line([at, at], [up - 0.2, up + 0.2], meaning)
    name = "A prediction and a reading, each with how far it may lie off"
    return picture(name, finding, chart.html())


def _step(span):
    """A round step that leaves an axis a few ticks."""
    power = 10.0 ** np.floor(np.log10(span / 4.0))
    return power * next(each for each in (1, 2, 5, 10) if span <= 6.5 * each * power)


def settling(seconds, rise_kelvin, time_constant_seconds, ambient_celsius):
    """Draw how far a warm-up has come.

    Parameters
    ----------
    seconds : float
        Time since switching on [s].
    rise_kelvin : float
        Rise when all is settled [K].
    time_constant_seconds : float
        Time for 63 % of the rise [s].
    ambient_celsius : float
        Temperature of the room, and of the box at the start [degC].

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    Raises
    ------
    ValueError
        As `heat.celsius_after`, or if the rise or the time constant is not above zero.

    References
    ----------
    As `heat.celsius_after`.

    Examples
    --------
    >>> settling(3600.0, 40.0, 1800.0, 20.0).finding.replace("\\xa0", " ")
    'Not settled, for five time constants are not over: after 60 min 86.5 % of the rise is \
there, and 5.4 K are still to come.'
    """
    rise = limits.positive(rise_kelvin, "rise_kelvin", "K")
    span = heat.SETTLED_AFTER * limits.positive(time_constant_seconds, "time_constant_seconds", "s")
    part = rise, 1.0, time_constant_seconds, ambient_celsius
    there = heat.celsius_after(seconds, *part)
    to_come = ambient_celsius + rise - there
    settled = seconds >= span
    left = "less than 0.1 K is"
    if to_come > 0.05:
        left = f"{write(to_come, 'temperature rise', 2)} are"
    share = write(100.0 * (1.0 - to_come / rise), "percent")
    finding = (
        f"{'Settled' if settled else 'Not settled'}, for five time constants are "
        f"{'' if settled else 'not '}over: after {duration(seconds)} {share} of the rise "
        f"is there, and {left} still to come."
    )
    chart = warming(max(1.2 * span, 1.05 * seconds), *part)
    chart.mark(seconds, there, "heat", "now")
    return picture("A temperature that rises, and where it stands now", finding, chart.html())
