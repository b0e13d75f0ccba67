"""Pictures of one mains cycle: the sine, what a dimmer leaves of it, the current in the LED."""

import numpy as np

from helpers.figures import areas
from helpers.figures.chart import Axis, Chart, picture, stacked
from helpers.figures.words import NAMES, capital, setting, whole_percent
from helpers.physics import circuits, mains, ohms_law, phase_cut, phase_cut_inverse
from helpers.physics.operating_point import operating_point
from helpers.quantities import write, write_as

SAMPLES = 180
#: What is named behind the dropper, where it is not LED and diode.
_HELD = {"resistor_only": "the LED", "series_diode": "LED and diode", "two_leds": "the LEDs"}
_BESIDE = {("second_led",): "second LED", ("diode",): "in the diode"}


def sine(supply):
    """Draw a clean mains voltage, and where its peak, rms and mean come from.

    Parameters
    ----------
    supply : mains.Supply
        The supply.

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    Notes
    -----
    The values come from `physics.mains`. The mean is that of the size, both half-cycles counted.

    References
    ----------
    Any textbook of alternating current.

    Examples
    --------
    >>> sine(mains.Supply(120.0, 60.0)).finding.replace("\\xa0", " ").partition(":")[0]
    'The mains of 120 V swings up to 170 V'
    """
    rms, peak = write(supply.volts_rms, "voltage"), mains.peak(supply.volts_rms)
    mean = mains.mean(supply.volts_rms)
    crest, middle = write(peak, "voltage"), write(mean, "voltage")
    title = f"The mains of {rms} swings up to {crest}: {rms} is its rms value, the mean is {middle}"
    details = (
        f"One cycle of a sine, {_period(supply)} long, from 0 up to {crest}, down to −{crest} and "
        "back. Below it one half-cycle, three times. A line touches its crest: the peak. Its area "
        "poured flat is a box as high as the mean of the size. The squares poured flat are a box, "
        "and the root of its height is the rms value: what heats."
    )
    chart = voltage_chart(supply, phase_cut.NO_DIMMER, 150, cycle_axis(supply))
    name = "One cycle of the mains; below it peak, mean and rms of a half-cycle"
    shown = chart.html(), areas.three_numbers(supply)
    return picture(name, f"{title}.", *shown, details=details)


def chopped(supply, dimmer):
    """Draw what a dimmer leaves of the mains, and what it takes away.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    Notes
    -----
    The values come from `phase_cut.wave`; heat is that of a plain resistance.

    References
    ----------
    As `phase_cut.wave`.

    Examples
    --------
    >>> half = phase_cut.Dimmer("leading", 90.0)
    >>> chopped(mains.Supply(230.0, 50.0), half).finding.replace("\\xa0", " ").partition(". ")[0]
    'Leading edge at 90°: 50 % of the heat is left, but the peak is untouched'
    """
    finding = _what_is_left(supply, dimmer)
    details = f"One mains cycle of {_period(supply)}; in each half-cycle {_where_on(dimmer)}"
    chart = voltage_chart(supply, dimmer, 220, cycle_axis(supply))
    rms = phase_cut.wave(supply, dimmer).volts_rms
    chart.line((0, 360), rms, "rms", f"rms\n{write(rms, 'voltage')}")
    name = "One cycle of a voltage, and what a dimmer takes away of it"
    return picture(name, finding, chart.html(), details=details)


def led_current(circuit, supply, dimmer=phase_cut.NO_DIMMER, ohms=100e3, instant_degrees=None):
    """Draw voltages and LED current over one cycle, with mean and quick sum.

    Parameters
    ----------
    circuit : str
        A key of `physics.circuits.CIRCUITS` [-].
    supply : mains.Supply
        The supply.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    ohms : float
        Series resistance [ohm].
    instant_degrees : float, optional
        Where a cursor stands, 0 to 360: the grip of a control of this name [deg].

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    Raises
    ------
    ValueError
        As `operating_point`.

    Notes
    -----
    The quick sum is the rms voltage over the resistance, which is not what the LED gets. The LED is
    a plain red one of 2 V.

    References
    ----------
    As `operating_point`.

    Examples
    --------
    >>> words = led_current("bridge", mains.Supply(120.0, 60.0), ohms=56e3).finding
    >>> words.replace("\\xa0", " ").partition(";")[0]
    'Bridge: 87 % of the quick sum V/R reaches the LED. The LED gets 1.87 mA on average, in pulses \
of up to 2.97 mA'
    """
    point = operating_point(circuit, supply, dimmer, ohms=ohms)
    wave = phase_cut.wave(supply, dimmer)
    rms, crest = wave.volts_rms, wave.volts_peak
    quick = ohms_law.current(rms, ohms)
    mean, peak = write(point.led_amps_mean, "current"), write(point.led_amps_peak, "current")
    quick_sum = write(quick, "current")
    name = capital(NAMES[circuit])
    said = f"{name}: no current flows and the LED stays dark."
    if point.led_amps_peak:
        said = (
            f"{name}: {whole_percent(point.led_amps_mean / quick)} of the quick sum V/R reaches "
            f"the LED. The LED gets {mean} on average, in pulses of up to {peak}; the quick sum "
            f"V/R says {quick_sum}. It conducts for "
            f"{write(360.0 * point.led_conduction_fraction, 'angle')} of 360°; its mean makes the "
            f"light. {_other_half(circuit, point)}"
        )
    said += f" The voltage, {write(rms, 'voltage')} rms, has a peak of {write(crest, 'voltage')}."
    upper, lower = cycle_charts(circuit, supply, dimmer, ohms)
    held = led_curve(circuit, supply, dimmer, ohms, circuits.volts_behind_dropper_at)
    behind = _HELD.get(circuit, "LED and diode")
    upper.line(*held, "held", label=f"across {behind}")
    lower.line((0, 360), point.led_amps_mean, "led mean", f"mean\n{mean}")
    lower.line((0, 360), quick, "limit", f"V/R\n{quick_sum}")
    if instant_degrees is not None:
        at = circuit, supply, dimmer, instant_degrees
        now, amps = phase_cut.volts_at(*at[1:]), circuits.amps_at(*at, ohms=ohms)
        lit = abs(amps) if circuits.named(circuit).lights_twice else max(amps, 0.0)
        taken = circuits.volts_behind_dropper_at(*at, ohms=ohms)
        time = write(instant_degrees / 360.0 / supply.hertz, "time")
        said += (
            f" At {write(instant_degrees, 'angle')}, {time}: {_signed(now)} from the supply, "
            f"{_signed(taken)} across {behind}, "
            f"{write(lit, 'current')} in the LED."
        )
        for chart, up in ((upper, now), (lower, lit)):
            chart.line((instant_degrees, instant_degrees), chart.up[:2], "mains")
            chart.grip("instant_degrees", instant_degrees, up)
    what = "Curves over one cycle: the voltages, and the current of the LED"
    return picture(what, said, stacked(upper, lower))


def _signed(volts):
    return ("−" if volts < 0.0 else "") + write(abs(volts), "voltage")


def cycle_axis(supply):
    """Return the axis of one mains cycle, its places in degrees and in milliseconds.

    Parameters
    ----------
    supply : mains.Supply
        Its frequency gives the milliseconds.

    Examples
    --------
    >>> cycle_axis(mains.Supply(100.0, 50.0)).ticks[180]
    '180°\\n10\\xa0ms'
    """
    ticks = {place: f"{place}°" for place in range(0, 361, 90)}
    for place in (0, 180, 360):
        ticks[place] += f"\n{write_as(place / 360.0 / supply.hertz, 'ms', 3)}"
    return Axis(0, 360, "place in the mains cycle", ticks)


def led_curve(circuit, supply, dimmer, ohms, what=circuits.amps_at):
    """Return the current of the resistor over one cycle, or what else is asked, and the degrees.

    Parameters
    ----------
    circuit, supply, dimmer, ohms
        As for `led_current`.
    what : callable
        `circuits.amps_at`, or another of its kind.

    Returns
    -------
    degrees, values : array
        Place in the cycle [deg] and current [A] or the like, negative in the other half-cycle.
    """
    degrees, volts = phase_cut.trace(supply, dimmer, 1, SAMPLES)
    values = what(circuit, supply, dimmer, degrees, ohms=ohms)
    # At an edge two points share an angle; in the dark one nothing flows or is held.
    return degrees, np.where(volts == 0.0, 0.0, values)


def cycle_charts(circuit, supply, dimmer, ohms):
    """Return two charts of one cycle: the voltage, and the current of the LED.

    Parameters
    ----------
    circuit, supply, dimmer, ohms
        As for `led_current`.

    Returns
    -------
    upper, lower : Chart
    """
    across = cycle_axis(supply)
    upper = voltage_chart(supply, dimmer, 124, across.unnamed())
    degrees, branch = led_curve(circuit, supply, dimmer, ohms)
    forward, backward = np.maximum(branch, 0.0), np.maximum(-branch, 0.0)
    wired = circuits.named(circuit)
    if wired.lights_twice:
        forward += backward
    top = mains.peak(supply.volts_rms) / ohms
    pushed_back = wired.breaks_down and backward.any()
    low = -1.1 * top if pushed_back else 0.0
    ticks = {0.0: "0", top: write(top, "current")}
    if pushed_back:
        ticks[-top] = "\u2212" + ticks[top]
    up = Axis(low, 1.15 * top, "current of the LED", ticks)
    lower = Chart(106, across, up)
    lower.fill_between(degrees, forward, 0.0, "led")
    if pushed_back:
        lower.fill_between(degrees, -backward, 0.0, "limit")
        forward = forward - backward
    beside = _BESIDE.get(wired.sound.backward)
    if beside and backward.any():
        lower.line(degrees, backward, "mains", label=beside)
    lower.line(degrees, forward, "led", label="below 0: breakdown" if pushed_back else "")
    return upper, lower


def voltage_chart(supply, dimmer, height, across, curve=None):
    """Return a chart of what a dimmer leaves of the mains, or of `curve`, before the whole sine."""
    degrees, volts = curve or phase_cut.trace(supply, dimmer, 1, SAMPLES)
    sine = mains.volts_at(supply.volts_rms, degrees)
    crest = mains.peak(supply.volts_rms)
    ticks = {value: write(value, "voltage") for value in (-crest, 0.0, crest)}
    chart = Chart(height, across, Axis(-1.12 * crest, 1.12 * crest, "voltage", ticks))
    chart.fill_between(degrees, sine, volts, "mains", 0.35)
    chart.line(degrees, sine, "mains", label="the mains" if dimmer.edge != "none" else "")
    chart.line(degrees, volts, "volts", label="what is left" if dimmer.edge != "none" else "")
    return chart


def _period(supply):
    return write(1.0 / supply.hertz, "time")


def _what_is_left(supply, dimmer):
    wave = phase_cut.wave(supply, dimmer)
    rms, peak = write(wave.volts_rms, "voltage"), write(wave.volts_peak, "voltage")
    if wave.conduction_fraction == 1.0:
        return f"{setting(dimmer)}: the whole sine arrives, {rms} rms with a peak of {peak}."
    if not wave.conduction_fraction:
        return f"{setting(dimmer)}: nothing is let through, yet the wires count as live."
    heat = phase_cut_inverse.percentages(dimmer).power_percent
    whole = wave.volts_peak > 0.9995 * mains.peak(supply.volts_rms)
    kept = "but the peak is untouched" if whole else "and less of the peak"
    return (
        f"{setting(dimmer)}: {whole_percent(heat / 100.0)} of the heat is left, {kept}. "
        f"{rms} rms is left, and {write(heat, 'percent')} of the heat; the peak is "
        f"{'still ' if whole else ''}{peak}."
    )


def _where_on(dimmer):
    angle = write(dimmer.angle_degrees, "angle")
    if dimmer.conduction_degrees == 180.0:
        return "the voltage follows the sine."
    if not dimmer.conduction_degrees:
        return "the voltage is zero; all of the sine is taken away."
    if dimmer.edge == "leading":
        return f"the voltage is zero up to {angle} and follows the sine from there to 180°."
    return f"the voltage follows the sine up to {angle} and is zero from there to 180°."


def _other_half(circuit, point):
    amps = write(point.branch_amps_peak, "current")
    way = circuits.named(circuit).sound.backward
    return {
        "breakdown": "In the other half-cycle up to "
        f"{write(point.led_reverse_amps_peak, 'current')} pushes the LED backwards: it "
        "breaks down, and no LED is made for that.",
        circuits.BLOCKED: "In the other half-cycle the diode blocks and no current flows.",
        "diode": f"In the other half-cycle up to {amps} flows past the LED, in the diode.",
        "second_led": "In the other half-cycle the second LED gets "
        f"{write(point.second_led_amps_mean, 'current')} on average.",
        "led": "Both half-cycles light the LED.",
    }[way and way[0]]
