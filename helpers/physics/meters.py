"""What a meter shows on a wave that is not a sine.

Works on a `signals.Signal`. Cheap meters measure the mean and multiply by the form factor of a
sine. Knows no brand and no display.
"""

from math import pi, sqrt

import numpy as np

from helpers.physics import limits

INPUT_OHMS = 10e6
"""Input of a range of volts: common practice, no source [ohm]."""

SINE_FORM_FACTOR = pi / (2.0 * sqrt(2.0))
RESPONSES = ("mean", "average", "true_rms")
COUPLINGS = ("ac", "dc")


def reading(signal, response="true_rms", coupling="ac"):
    """Return what a meter shows.

    Parameters
    ----------
    signal : signals.Signal
        What it is connected to [V] or [A].
    response : str
        'mean' (a DC range), 'average' (a cheap AC range: mean of the size, scaled for a sine) or
        'true_rms' [-].
    coupling : str
        'ac' takes the mean off first, 'dc' leaves it; a 'mean' reading needs 'dc' [-].

    Returns
    -------
    reading : float or ndarray
        Shown value, in the unit of the signal [V] or [A].

    Raises
    ------
    ValueError
        If a word is unknown, or a mean is asked for behind AC coupling.

    Notes
    -----
    Average: mean size (or mean deviation) times pi / (2 sqrt(2)) = 1.1107, right for a sine only.
    True rms behind AC coupling: ``sqrt(rms**2 - mean**2)``.

    References
    ----------
    True-rms meter user manuals print these factors for common waves; the formulas follow from the
    definitions.

    Examples
    --------
    >>> from helpers.physics import mains, phase_cut, signals
    >>> dimmer = phase_cut.Dimmer("leading", 120.0)
    >>> dimmed = signals.dimmed_mains(mains.Supply(100.0, 50.0), dimmer)
    >>> round(reading(dimmed), 1), round(reading(dimmed, "average"), 1)
    (44.2, 25.0)
    """
    limits.one_of(response, "response", RESPONSES)
    limits.one_of(coupling, "coupling", COUPLINGS)
    if response == "mean":
        if coupling == "ac":
            raise ValueError(
                "coupling was read as 'ac' with response 'mean'; AC coupling takes the mean off, "
                "so the meter shows zero. Use coupling 'dc'."
            )
        return signal.mean
    if response == "average":
        size = signal.mean_deviation if coupling == "ac" else signal.mean_size
        return SINE_FORM_FACTOR * size
    if coupling == "dc":
        return signal.rms
    alternating_square = signal.rms * signal.rms - signal.mean * signal.mean
    return limits.as_given(np.sqrt(np.maximum(alternating_square, 0.0)))


def error_percent(signal, response="average", coupling="ac"):
    """Return how far a reading is off the true rms value.

    Parameters
    ----------
    signal : signals.Signal
        What the meter is connected to [V] or [A].
    response, coupling : str
        As for `reading` [-].

    Returns
    -------
    percent : float or ndarray
        Negative where the meter reads low; not a number where there is no signal [%].

    Raises
    ------
    ValueError
        As `reading`.

    Notes
    -----
    ``100 (reading / rms - 1)``. On a dimmed mains the average-responding reading is
    ``(1 + cos(angle)) / 2`` of the supply: too low, as long as the dimmer is ideal.

    Examples
    --------
    >>> from helpers.physics import mains, phase_cut, signals
    >>> dimmer = phase_cut.Dimmer("leading", 120.0)
    >>> dimmed = signals.dimmed_mains(mains.Supply(100.0, 50.0), dimmer)
    >>> round(error_percent(dimmed), 1)
    -43.5
    """
    shown, true = np.asarray(reading(signal, response, coupling)), np.asarray(signal.rms)
    return limits.as_given(100.0 * (shown / np.where(true > 0.0, true, np.nan) - 1.0))


def within_crest_limit(signal, crest_limit=3.0):
    """Return whether a true-rms meter can follow the peaks of a signal.

    Parameters
    ----------
    signal : signals.Signal
        What it is connected to [V] or [A].
    crest_limit : float or array
        Highest peak over rms that its sheet allows at full scale [-].

    Returns
    -------
    within : bool or ndarray
        False where the reading is not to be trusted, and where there is no signal [-].

    Raises
    ------
    ValueError
        If the limit is below that of a sine.

    Notes
    -----
    Far below full scale many meters allow more: the limit times full scale over reading.

    References
    ----------
    A limit of 3 at full scale is common practice, no source.

    Examples
    --------
    >>> from helpers.physics import mains, phase_cut, signals
    >>> low = phase_cut.Dimmer("leading", 150.0)
    >>> within_crest_limit(signals.dimmed_mains(mains.Supply(100.0, 50.0), low))
    False
    """
    crest_limit = limits.between(
        crest_limit, "crest_limit", "", 1.4142, 100.0, "A sine already has 1.414."
    )
    return limits.as_given(
        (np.asarray(signal.rms) > 0.0) & (signal.peak <= crest_limit * signal.rms)
    )


def loaded_volts(open_volts, source_ohms, meter_ohms=INPUT_OHMS):
    """Return the voltage that is left when a meter loads what it measures.

    Parameters
    ----------
    open_volts : float or array
        Voltage without the meter [V].
    source_ohms : float or array
        Resistance seen from the meter's leads [ohm].
    meter_ohms : float or array
        Input resistance of the meter [ohm].

    Returns
    -------
    volts : float or ndarray
        Voltage with the meter [V].

    Raises
    ------
    ValueError
        If a resistance is impossible.

    Notes
    -----
    ``open_volts * meter / (meter + source)``. The capacitance of the leads is left out.

    References
    ----------
    Voltage divider; 10 megohm input is common practice, no source.

    Examples
    --------
    >>> loaded_volts(100.0, 10e6)
    50.0
    """
    meter = limits.positive(meter_ohms, "meter_ohms", "ohm")
    source = limits.not_negative(source_ohms, "source_ohms", "ohm")
    return limits.finite(open_volts, "open_volts", "V") * meter / (meter + source)
