"""Pictures of what the dimmer's setting does: to volts, heat, light and what the eye sees."""

import numpy as np

from helpers.figures import style
from helpers.figures.words import NAMES, capital
from helpers.physics import light, phase_cut, phase_cut_inverse
from helpers.physics.operating_point import operating_point
from helpers.quantities import write

_ANGLES = np.linspace(0.0, 180.0, 181)
_EVERY = 15
_AMBER = np.array([1.0, 0.55, 0.08])


def percentages(edge="leading"):
    """Draw the three percentages of a dimmer against its angle: time, volts and heat.

    Parameters
    ----------
    edge : str
        'leading' or 'trailing' [-].

    Returns
    -------
    figure : matplotlib.figure.Figure
    alternative : str
        The finding with its numbers.

    Raises
    ------
    ValueError
        If the edge is unknown.

    Notes
    -----
    The same for every supply and every plain heater. The example is the setting that lets a third
    of each half cycle through.

    References
    ----------
    As `phase_cut_inverse.percentages`.

    Examples
    --------
    >>> percentages("trailing")[1].replace("\\xa0", " ").partition(":")[0]
    'A third of the time is a fifth of the heat'
    """
    angle = {"leading": 120.0, "trailing": 60.0}.get(edge)
    if angle is None:
        raise ValueError(f"edge was read as {edge!r}; it must be leading or trailing.")
    found = phase_cut_inverse.percentages(phase_cut.Dimmer(edge, _ANGLES))
    there = phase_cut_inverse.percentages(phase_cut.Dimmer(edge, angle))
    time, volts, heat = (write(each, "percent") for each in there)
    title = (
        f"A third of the time is a fifth of the heat: at {write(angle, 'angle')} ({edge} edge) "
        f"{time} of the time, {volts} of the volts, {heat} of the heat"
    )
    alternative = f"{title}. {_three_in_words(edge)}"
    figure, axes = style.blank(title, legend=True)
    for percent, meaning, label in (
        (found.conduction_percent, "mains", "time let through"),
        (found.volts_percent, "volts", "rms volts"),
        (found.power_percent, "heat", "heat of the heater"),
    ):
        style.draw_line(axes, _ANGLES, percent, meaning, label, every=_EVERY)
    axes.axvline(angle, color=style.INK, linewidth=style.THIN, zorder=1)
    name = "firing angle" if edge == "leading" else "cut-off angle"
    _share_axes(axes, name, "share of full mains")
    return figure, alternative


def heat_and_light(circuit, supply, ohms, led_volts=2.0):
    """Draw the heater's heat, the LED's light and what the eye says, against the firing angle.

    Parameters
    ----------
    circuit : str
        A key of `physics.circuits.CIRCUITS` [-].
    supply : mains.Supply
        The supply.
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
    Leading edge. Light follows the mean forward current; the eye is the CIE lightness, of 100.

    References
    ----------
    As `light.lightness` and `operating_point`.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> words = heat_and_light("series_diode", mains.Supply(230.0, 50.0), 120e3)[1]
    >>> words.replace("\\xa0", " ").partition(",")[0]
    'Series diode on 230 V 50 Hz: at 150° the heater has 2.88 % of its heat'
    """
    heat, shine, seen = _relative(circuit, supply, _ANGLES, ohms, led_volts)
    low = 150
    finding = (
        f"{capital(NAMES[circuit])} on {supply.name}: at {write(low, 'angle')} the heater has "
        f"{write(heat[low], 'percent')} of its heat, the LED {write(shine[low], 'percent')} of its "
        f"light, and the eye says {write(seen[low], 'ratio', 2)} of 100."
    )
    if not shine[0]:
        finding = f"{capital(NAMES[circuit])} on {supply.name}: the LED stays dark at any setting."
    alternative = (
        f"{finding} At 90° it is {write(heat[90], 'percent')} heat, {write(shine[90], 'percent')} "
        f"light and {write(seen[90], 'ratio', 2)} of 100."
    )
    if shine[0]:
        alternative += " All three fall from 100 to 0, the heat first, then light, then the look."
    figure, axes = style.blank(finding, legend=True)
    for percent, meaning, label in (
        (heat, "heat", "heat of the heater"),
        (shine, "light", "light of the LED"),
        (seen, "eye", "what the eye says (of 100)"),
    ):
        style.draw_line(axes, _ANGLES, percent, meaning, label, every=_EVERY)
    axes.axvline(low, color=style.INK, linewidth=style.THIN, zorder=1)
    _share_axes(axes, "firing angle, leading edge", "against full mains")
    return figure, alternative


def brightness(circuit, supply, ohms_choices, firing_degrees_choices, led_volts=2.0):
    """Draw how bright several droppers look at several settings, as dots on a dark panel.

    Parameters
    ----------
    circuit : str
        A key of `physics.circuits.CIRCUITS` [-].
    supply : mains.Supply
        The supply.
    ohms_choices : sequence of float
        One row each [ohm].
    firing_degrees_choices : sequence of float
        One column each, leading edge [deg].
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
        If there is nothing to draw, more than eight of either, or as `operating_point`.

    Notes
    -----
    The brightest dot counts as 100. The light of a dot's colour is in proportion to the mean
    current, as a screen that keeps to sRGB shows it; the number below is the CIE lightness.

    References
    ----------
    As `light.lightness`; coding of a screen's light: IEC 61966-2-1.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> figure, words = brightness("bridge", mains.Supply(230.0, 50.0), (100e3, 200e3), (0, 120))
    >>> words.replace("\\xa0", " ").partition(":")[0]
    'From 2.04 mA down to 253 µA the light falls 8-fold, the look only from 100 to 42'
    """
    rows, columns = len(ohms_choices), len(firing_degrees_choices)
    if not (1 <= rows <= 8 and 1 <= columns <= 8):
        raise ValueError(f"{rows} droppers and {columns} settings were given; 1 to 8 of each fit.")
    point = operating_point(
        circuit, supply,
        phase_cut.Dimmer("leading", np.asarray(firing_degrees_choices, dtype=float)[np.newaxis]),
        ohms=np.asarray(ohms_choices, dtype=float)[:, np.newaxis], led_volts=led_volts,
    )  # fmt: skip
    amps = point.led_amps_mean
    share = amps / amps.max() if amps.max() else amps
    seen = light.lightness(share)
    alternative = _brightness_in_words(amps, seen, ohms_choices, firing_degrees_choices)
    height = 1.75 + 0.72 * rows
    figure, axes = style.blank(alternative.partition(":")[0], height=height)
    axes.grid(False)
    axes.set_facecolor("#101010")
    for (row, column), shine in np.ndenumerate(share):
        axes.plot(
            [column], [row - 0.12], "o", markersize=22, markerfacecolor=_on_screen(shine),
            markeredgecolor="#8a8a8a", markeredgewidth=0.8,
        )  # fmt: skip
        text = f"{seen[row, column]:.0f}  ({write(amps[row, column], 'current')})"
        axes.text(
            column, row + 0.36, text, color="#e8e8e8", ha="center", va="center",
            family=style.FONT, size=style.TEXT_SIZE - 2.5,
        )  # fmt: skip
    axes.set(xlim=(-0.6, columns - 0.4), ylim=(rows - 0.4, -0.6))
    axes.set_xticks(range(columns), [write(angle, "angle") for angle in firing_degrees_choices])
    axes.set_yticks(range(rows), [write(ohms, "resistance") for ohms in ohms_choices])
    style.name_axes(axes, ("firing angle; below each dot lightness and mean current", ""),
                    ("dropper", ""))  # fmt: skip
    return figure, alternative


def _relative(circuit, supply, angles, ohms, led_volts):
    """Heat, light and lightness against full mains, in percent or of 100."""
    dimmer = phase_cut.Dimmer("leading", angles)
    amps = operating_point(circuit, supply, dimmer, ohms=ohms, led_volts=led_volts).led_amps_mean
    share = amps / amps[0] if amps[0] else amps
    heat = phase_cut_inverse.percentages(dimmer).power_percent
    return heat, 100.0 * share, light.lightness(share)


def _share_axes(axes, across, up):
    axes.set(xlim=(0, 180), ylim=(0, 104), xticks=range(0, 181, 30), yticks=range(0, 101, 20))
    style.name_axes(axes, (across, "degrees"), (up, "%"))
    style.legend(axes)


def _three_in_words(edge):
    lines = []
    for percent in (75.0, 50.0, 25.0):
        dimmer = phase_cut_inverse.for_conduction(percent / 100.0, edge)
        _, volts, heat = phase_cut_inverse.percentages(dimmer)
        lines.append(
            f"{write(percent, 'percent')} of the time are {write(volts, 'percent')} of the volts "
            f"and {write(heat, 'percent')} of the heat"
        )
    return f"{'; '.join(lines)}."


def _brightness_in_words(amps, seen, ohms_choices, angles):
    rows = "; ".join(
        f"{write(ohms, 'resistance')} "
        + ", ".join(f"{value:.0f} at {write(angle, 'angle')}"
                    for value, angle in zip(line, angles, strict=True))
        for ohms, line in zip(ohms_choices, seen, strict=True)
    )  # fmt: skip
    top, bottom = amps.max(), amps.min()
    if top == bottom and top:
        finding = f"All dots look alike, at {write(top, 'current')} each"
    elif not top:
        finding = "No dropper lights the LED at any of these settings"
    elif not bottom:
        finding = f"From {write(top, 'current')} down to nothing, where the LED is dark"
    else:
        finding = (
            f"From {write(top, 'current')} down to {write(bottom, 'current')} the light falls "
            f"{write(top / bottom, 'ratio', 2)}-fold, the look only from 100 to {seen.min():.0f}"
        )
    return f"{finding}: {rows}."


def _on_screen(share):
    """The colour in which a screen gives this share of its light (IEC 61966-2-1)."""
    linear = share * _AMBER
    return tuple(np.where(linear <= 0.0031308, 12.92 * linear, 1.055 * linear ** (1 / 2.4) - 0.055))
