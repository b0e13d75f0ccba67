"""Pictures in which a number is an area: mean and rms poured flat, heat and light behind a cut."""

import numpy as np

from helpers.figures.chart import Axis, Chart, beside, heading, picture
from helpers.figures.words import capital, whole_percent
from helpers.physics import mains, phase_cut, phase_cut_inverse
from helpers.quantities import write

_HALF = np.linspace(0.0, 180.0, 61)
_UNIT = mains.Supply(100.0, 50.0)
_TICKS = {place: f"{place}°" for place in (0, 90, 180)}


def three_numbers(supply):
    """Return three panels of a half-cycle: its crest, its area and its squares poured flat.

    Parameters
    ----------
    supply : mains.Supply
        The supply.

    Returns
    -------
    html : str

    Notes
    -----
    The mean is the height of a box with the wave's area; rms is the root of the height of a box
    with the area of its squares.

    References
    ----------
    Any textbook of alternating current.

    Examples
    --------
    >>> three_numbers(mains.Supply(100.0, 50.0)).count("cw-pour")
    2
    """
    rms = supply.volts_rms
    peak, mean, volts = mains.peak(rms), mains.mean(rms), mains.volts_at(rms, _HALF)
    crest, shown = write(peak, "voltage"), []
    for told, meaning, value, power, top in (
        ("the crest touched", "peak", peak, 1, crest),
        ("the area poured flat", "mean", mean, 1, crest),
        ("root of its squares poured flat", "rms", rms, 2, f"({crest})²"),
    ):
        up = Axis(0.0, 1.1 * peak**power, told, {0.0: "0", peak**power: top})
        chart = Chart(130, Axis(0, 180, "", _TICKS), up)
        if meaning == "peak":
            chart.dot(90, peak, "peak")
        else:
            chart.pour(_HALF, volts**power, value**power, "volts")
        chart.line((0, 180), value**power, meaning)
        chart.line(_HALF, volts**power, "volts")
        shown.append(heading(f"{capital(meaning)}: {write(value, 'voltage')}") + chart.html())
    return beside(*shown, least=180)


def shares(angle_degrees):
    """Draw the heat and the light that a cut leaves, each as an area of one half-cycle.

    Parameters
    ----------
    angle_degrees : float
        Firing angle of a leading edge, 0 to 180 [deg].

    Returns
    -------
    drawn : Drawn
        Its edges are grips of a control named `angle_degrees`.

    Raises
    ------
    ValueError
        If the angle is out of range.

    Notes
    -----
    The area of the squares is a box of half height, as wide as the time that is left, more what
    stands above the box and less what is missing below it: ``sin(2 angle) / 6.283`` of the whole.
    The area of the wave itself is ``(1 + cos(angle)) / 2`` of the whole.

    References
    ----------
    As `phase_cut.wave`.

    Examples
    --------
    >>> shares(90.0).finding.replace("\\xa0", " ").partition(".")[0]
    'Leading edge at 90°: 50 % of the time, 50 % of the heat, 50 % of the light'
    """
    dimmer = phase_cut.Dimmer("leading", angle_degrees)
    time, _, heat = (each / 100.0 for each in phase_cut_inverse.percentages(dimmer))
    light = phase_cut.wave(_UNIT, dimmer).volts_mean / mains.mean(_UNIT.volts_rms)
    angle = write(angle_degrees, "angle")
    more = write(round(100.0 * (heat - time), 9), "percent")
    title = (
        f"Leading edge at {angle}: {whole_percent(time)} of the time, {whole_percent(heat)} of the "
        f"heat, {whole_percent(light)} of the light"
    )
    said = (
        f"{title}. Heat: the box is the time, {write(100 * time, 'percent')}; what stands above it "
        f"less what is missing below it is sin(2 × {angle}) ÷ 6.283, {more}; together "
        f"{write(100 * heat, 'percent')}. Light: (1 + cos {angle}) ÷ 2 of the wave is left, "
        f"{write(100 * light, 'percent')}."
    )
    on = np.linspace(angle_degrees, 180.0, 61)
    across = Axis(0, 180, "place in the half-cycle", _TICKS)
    crest = mains.peak(_UNIT.volts_rms)
    ticks = {0.0: "0", 0.5: "½", 1.0: "1"}
    squares = Chart(150, across, Axis(0.0, 1.08, "squares of the wave: heat", ticks))
    wave = Chart(150, across, Axis(0.0, 1.08, "the wave: light", ticks))
    for chart, power in ((squares, 2), (wave, 1)):
        whole, left = ((mains.volts_at(_UNIT.volts_rms, at) / crest) ** power for at in (_HALF, on))
        if power == 2:
            chart.fill([angle_degrees, 180, 180, angle_degrees], [0, 0, 0.5, 0.5], "mains", 0.3)
            chart.fill_between(on, np.maximum(left, 0.5), 0.5, "heat", 0.75)
            chart.fill_between(on, np.minimum(left, 0.5), 0.5, "limit", 0.4)
            chart.line((0, 180), 0.5, "limit")
            if angle_degrees < 120.0:
                chart.write(max(angle_degrees + 10, 90), 62, "+")
            if angle_degrees < 155.0:
                chart.write(164, 107, "−")
        else:
            chart.fill_between(on, left, 0.0, "light", 0.6)
        chart.line(_HALF, whole, "mains")
        chart.line([angle_degrees, *on], [0.0, *left], "heat" if power == 2 else "light")
        chart.grip("angle_degrees", angle_degrees, 0.25)
    time_said, heat_said, light_said = map(whole_percent, (time, heat, light))
    sign = "+" if heat >= time else "−"
    told = f"box {time_said} {sign} {whole_percent(abs(heat - time))} = {heat_said} of the heat"
    left = heading(told) + squares.html()
    right = heading(f"{light_said} of the light") + wave.html()
    name = "Two curves over a half-cycle, with the areas that are left behind a leading edge"
    return picture(name, said, beside(left, right, least=280))
