"""Picture of what two kinds of meter show on the same dimmed mains, in plain number boxes."""

from helpers.figures import style
from helpers.physics import mains, phase_cut, signals
from helpers.physics import meters as physics_meters
from helpers.quantities import write

_WORTH_SAYING = 0.5
"""Errors below this are not worth a warning [%]."""


def meters(supply, dimmer):
    """Draw a dimmed voltage and what an average-responding and a true-rms meter show on it.

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
    Ideal meters; a true-rms meter is trusted up to a crest factor of 3.

    References
    ----------
    As `meters.reading` and `meters.within_crest_limit`.

    Examples
    --------
    >>> figure, words = meters(mains.Supply(120.0, 60.0), phase_cut.Dimmer("leading", 120.0))
    >>> words.replace("\\xa0", " ").partition(":")[0]
    'The average-responding meter shows 30 V where 53.1 V are there'
    """
    signal = signals.dimmed_mains(supply, dimmer)
    average = write(physics_meters.reading(signal, "average"), "voltage")
    true = write(physics_meters.reading(signal, "true_rms"), "voltage")
    trusted = physics_meters.within_crest_limit(signal)
    finding = _finding(average, true, physics_meters.error_percent(signal), trusted)
    alternative = (
        f"{finding} Two number boxes beside the wave: average-responding {average}, "
        f"true-rms {true}."
    )
    figure, (wave_axes, box_axes) = style.blank(finding, columns=2, gap=0.5)
    degrees, volts = phase_cut.trace(supply, dimmer)
    style.draw_line(wave_axes, degrees, volts, "dimmed")
    crest = mains.peak(supply.volts_rms)
    wave_axes.set(xlim=(0, 360), ylim=(-1.15 * crest, 1.15 * crest), xticks=range(0, 361, 90))
    style.name_axes(wave_axes, ("place in the mains cycle", "degrees"), ("voltage", "V"))
    box_axes.set_axis_off()
    _box(box_axes, 0.55, average, "average-responding meter")
    doubt = "" if trusted or not signal.rms else ", beyond crest factor 3: do not trust"
    _box(box_axes, 0.02, true, f"true-rms meter{doubt}")
    return figure, alternative


def _finding(average, true, error, trusted):
    if error != error:
        return "Both meters show 0 V, and that proves nothing: the wires count as live."
    if abs(error) < _WORTH_SAYING:
        return f"Both meters show the same: {average} and {true}."
    ending = "" if trusted else "; here even many true-rms meters are out of their range"
    return (
        f"The average-responding meter shows {average} where {true} are there: "
        f"{write(-error, 'percent', 2)} too little{ending}."
    )


def _box(axes, bottom, shown, words):
    from matplotlib.patches import Rectangle

    axes.add_patch(
        Rectangle(
            (0.02, bottom + 0.1), 0.96, 0.34, transform=axes.transAxes, facecolor=style.FACE,
            edgecolor=style.INK, linewidth=2,
        )
    )  # fmt: skip
    middle = {"ha": "center", "va": "center", "transform": axes.transAxes, "color": style.INK}
    axes.text(0.5, bottom + 0.27, shown, family="DejaVu Sans Mono", size=28, **middle)
    axes.text(0.5, bottom + 0.03, words, family=style.FONT, size=style.TEXT_SIZE - 1, **middle)
