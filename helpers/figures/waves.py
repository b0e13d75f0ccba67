"""Pictures of one mains cycle: the sine, what a dimmer leaves of it, the current in the LED."""

import numpy as np

from helpers.figures import style
from helpers.figures.words import NAMES, capital
from helpers.physics import circuits, mains, ohms_law, phase_cut, phase_cut_inverse
from helpers.physics.operating_point import operating_point
from helpers.quantities import write

_JUST = 1e-6
"""How far to either side of a dimmer's edge the current is asked for [deg]."""


def sine(supply):
    """Draw a clean mains voltage with its peak, rms and mean.

    Parameters
    ----------
    supply : mains.Supply
        The supply.

    Returns
    -------
    figure : matplotlib.figure.Figure
    alternative : str
        The finding with its numbers.

    Notes
    -----
    The values come from `physics.mains`. The mean is that of the size, both half cycles counted.

    References
    ----------
    Any textbook of alternating current.

    Examples
    --------
    >>> figure, words = sine(mains.Supply(120.0, 60.0))
    >>> words.replace("\\xa0", " ").partition(":")[0]
    'The mains of 120 V swings up to 170 V'
    """
    rms, peak = write(supply.volts_rms, "voltage"), mains.peak(supply.volts_rms)
    mean = mains.mean(supply.volts_rms)
    crest, middle = write(peak, "voltage"), write(mean, "voltage")
    title = f"The mains of {rms} swings up to {crest}: {rms} is its rms value, the mean is {middle}"
    alternative = (
        f"{title}. One cycle of a sine, {_period(supply)} long, from 0 up to {crest}, down to "
        f"−{crest} and back. Lines mark the peak, the rms value (what heats) and the mean of the "
        "size, both half cycles counted."
    )
    figure, axes = style.blank(title, legend=True)
    degrees, volts = phase_cut.trace(supply)
    style.draw_line(axes, degrees, volts, "dimmed", "voltage")
    for value, meaning, label in (
        (peak, "limit", f"peak {crest}"),
        (supply.volts_rms, "volts", f"rms {rms}"),
        (mean, "mean", f"mean of the size {middle}"),
    ):
        style.draw_line(axes, (0, 360), (value, value), meaning, label)
    axes.set_ylim(-1.15 * peak, 1.15 * peak)
    style.name_cycle(axes, supply, ("voltage", "V"))
    style.legend(axes)
    return figure, alternative


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
    figure : matplotlib.figure.Figure
    alternative : str
        The finding with its numbers.

    Notes
    -----
    The values come from `phase_cut.wave`; heat is that of a plain resistance.

    References
    ----------
    As `phase_cut.wave`.

    Examples
    --------
    >>> half = phase_cut.Dimmer("leading", 90.0)
    >>> chopped(mains.Supply(230.0, 50.0), half)[1].replace("\\xa0", " ").partition(",")[0]
    'Leading edge at 90°: 163 V rms are left and 50 % of the heat'
    """
    finding = _what_is_left(supply, dimmer)
    alternative = (
        f"{finding} One mains cycle of {_period(supply)}; in each half cycle {_where_on(dimmer)}"
    )
    figure, axes = style.blank(finding, legend=True)
    degrees, volts = phase_cut.trace(supply, dimmer)
    whole = mains.volts_at(supply.volts_rms, degrees)
    removed = style.LOOKS["removed"]
    axes.fill_between(
        degrees, volts, whole, facecolor="#ececec", edgecolor=removed.colour, hatch=removed.hatch,
        linewidth=0, label="taken away" if dimmer.conduction_degrees < 180.0 else "_",
    )  # fmt: skip
    style.draw_line(axes, degrees, whole, "mains", "mains", linewidth=1.4)
    style.draw_line(axes, degrees, volts, "dimmed", "behind the dimmer")
    rms = phase_cut.wave(supply, dimmer).volts_rms
    style.draw_line(axes, (0, 360), (rms, rms), "volts", f"rms {write(rms, 'voltage')}")
    crest = mains.peak(supply.volts_rms)
    axes.set_ylim(-1.15 * crest, 1.15 * crest)
    style.name_cycle(axes, supply, ("voltage", "V"))
    style.legend(axes)
    return figure, alternative


def led_current(circuit, supply, dimmer=phase_cut.NO_DIMMER, ohms=100e3, led_volts=2.0):
    """Draw the current of the LED over one cycle, with its mean and the quick sum.

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
    led_volts : float
        Forward drop of the LED [V].

    Returns
    -------
    figure : matplotlib.figure.Figure
    alternative : str
        The finding with its numbers.

    Raises
    ------
    ValueError
        As `operating_point`.

    Notes
    -----
    The quick sum is the rms voltage over the resistance, which is not what the LED gets.

    References
    ----------
    As `operating_point`.

    Examples
    --------
    >>> words = led_current("bridge", mains.Supply(120.0, 60.0), ohms=56e3)[1]
    >>> words.replace("\\xa0", " ").partition(";")[0]
    'Bridge: the LED gets 1.87 mA on average, in pulses of up to 2.97 mA'
    """
    point = operating_point(circuit, supply, dimmer, ohms=ohms, led_volts=led_volts)
    quick = ohms_law.current(phase_cut.wave(supply, dimmer).volts_rms, ohms)
    mean, peak = write(point.led_amps_mean, "current"), write(point.led_amps_peak, "current")
    quick_sum = write(quick, "current")
    name = capital(NAMES[circuit])
    finding = (
        f"{name}: the LED gets {mean} on average, in pulses of up to {peak}"
        f"; the quick sum V/R says {quick_sum}."
    )
    if not point.led_amps_peak:
        finding = f"{name}: no current flows and the LED stays dark."
    alternative = finding
    if point.led_amps_peak:
        alternative += f" {_other_half(circuit, point)}"
    figure, axes = style.blank(finding, legend=True)
    degrees = _degrees(dimmer)
    amps = circuits.amps_at(circuit, supply, dimmer, degrees, ohms=ohms, led_volts=led_volts)
    forward = np.abs(amps) if circuit == "bridge" else np.maximum(amps, 0.0)
    axes.fill_between(degrees, 0, forward, color=style.LOOKS["led"].colour, alpha=0.18, linewidth=0)
    style.draw_line(axes, degrees, forward, "led", "LED")
    backward = np.minimum(amps, 0.0)
    names = {
        "resistor_only": "LED, pushed backwards",
        "diode_across": "diode across",
        "two_leds": "second LED",
    }
    if circuit in names:
        style.draw_line(axes, degrees, backward, "dimmed", names[circuit], linestyle=(0, (4, 1.5)))
    for value, meaning, label in (
        (point.led_amps_mean, "mean", f"LED mean {mean}"),
        (quick, "limit", f"V/R {quick_sum}"),
    ):
        style.draw_line(axes, (0, 360), (value, value), meaning, label)
    top = 1.15 * mains.peak(supply.volts_rms) / ohms
    axes.set_ylim(-top if circuit in names else -0.04 * top, top)
    unit = style.unit_of(top, "current")
    style.count_in(axes.yaxis, unit)
    style.name_cycle(axes, supply, ("current", unit))
    style.legend(axes)
    return figure, alternative


def _degrees(dimmer):
    """Angles of one cycle, with one on either side of each edge so that it is drawn upright."""
    edges = dimmer.angle_degrees + np.array([0.0, 180.0])
    beside = np.concatenate([edges - _JUST, edges + _JUST])
    return np.unique(np.clip(np.concatenate([np.linspace(0.0, 360.0, 721), beside]), 0.0, 360.0))


def _period(supply):
    return write(1.0 / supply.hertz, "time")


def _setting(dimmer):
    if dimmer.edge == "none":
        return "No dimmer"
    return f"{capital(dimmer.edge)} edge at {write(dimmer.angle_degrees, 'angle')}"


def _what_is_left(supply, dimmer):
    wave = phase_cut.wave(supply, dimmer)
    rms, peak = write(wave.volts_rms, "voltage"), write(wave.volts_peak, "voltage")
    if wave.conduction_fraction == 1.0:
        return f"{_setting(dimmer)}: the whole sine arrives, {rms} rms with a peak of {peak}."
    if not wave.conduction_fraction:
        return f"{_setting(dimmer)}: nothing is let through, yet the wires count as live."
    heat = write(phase_cut_inverse.percentages(dimmer).power_percent, "percent")
    still = "but the peak is still" if wave.volts_peak > 0.9995 * mains.peak(supply.volts_rms) \
        else "and the peak is"  # fmt: skip
    return f"{_setting(dimmer)}: {rms} rms are left and {heat} of the heat, {still} {peak}."


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
    return {
        "resistor_only": "In the other half cycle up to "
        f"{write(point.led_reverse_amps_peak, 'current')} push the LED backwards.",
        "series_diode": "In the other half cycle the diode blocks and no current flows.",
        "diode_across": f"In the other half cycle up to {amps} flow past the LED, in the diode.",
        "two_leds": "In the other half cycle the second LED gets "
        f"{write(point.second_led_amps_mean, 'current')} on average.",
        "bridge": "Both half cycles light the LED.",
    }[circuit]
