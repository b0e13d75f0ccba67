"""Integrals of one conduction pulse: the closed forms below every resistive circuit.

In each half-cycle a constant drop lets current flow while the mains exceeds it, so the current
is (peak volts / ohms) times a pure number, ``sin(angle) - threshold``, from the angle where the
sine reaches the threshold to the end of the window that the dimmer leaves open. This module
integrates that number. A leading edge is a trailing edge run backwards: no mean, square or
modulation can tell them apart, so the window always opens at the zero crossing here.

Every expression is written from the start of the pulse, which keeps its digits however narrow the
pulse is. For `phase_cut`, `operating_point` and `meters`; knows no volts, amps or ohms.

All formulas are derived here; the tests compare them with adaptive quadrature.
"""

from typing import NamedTuple

import numpy as np


class Pulse(NamedTuple):
    """A pulse, described by its start and width and by what their integrals need."""

    width: float  # [rad]
    threshold: float  # sine of the start [-]
    cos_start: float
    sin_width: float
    versine: float  # 1 - cos(width)
    excess: float  # width - sin(width)


def pulse(threshold, window):
    """Return the pulse that passes a threshold before the window shuts.

    Parameters
    ----------
    threshold : float or array
        Constant drop over peak voltage, zero or more; 1 or more gives an empty pulse [-].
    window : float or array
        Angle from the zero crossing to the end of the open window, 0 to pi [rad].

    Returns
    -------
    pulse : Pulse
        Start, width and helpers, in the broadcast shape.

    Notes
    -----
    From ``arcsin(threshold)`` to ``min(window, pi - arcsin(threshold))``.

    Examples
    --------
    >>> round(float(pulse(0.5, np.pi).width), 4)
    2.0944
    """
    threshold = np.minimum(threshold, 1.0)
    span = width(threshold, window)
    half = 0.5 * span
    sine, cosine = np.sin(half), np.cos(half)
    sin_width = 2.0 * sine * cosine
    cos_start = np.sqrt((1.0 - threshold) * (1.0 + threshold))
    return Pulse(span, threshold, cos_start, sin_width, 2.0 * sine * sine, excess(span, sin_width))


def width(threshold, window):
    """Return how long the sine stays above a threshold of at most 1 inside the window [rad].

    Parameters
    ----------
    threshold : float or array
        Constant drop over peak voltage, 0 to 1 [-].
    window : float or array
        End of the open window, 0 to pi [rad].

    Returns
    -------
    width : float or ndarray
        Width of the pulse, zero if it never starts [rad].

    Notes
    -----
    ``min(window, pi - start) - start`` with ``start = arcsin(threshold)``.

    Examples
    --------
    >>> round(float(width(0.0, 1.0)), 4)
    1.0
    """
    start = np.arcsin(threshold)
    return np.maximum(np.minimum(window, np.pi - start) - start, 0.0)


def excess(angle, sine):
    """Return angle - sin(angle) without losing digits at small angles.

    Parameters
    ----------
    angle : float or array
        Angle, 0 to pi [rad].
    sine : float or array
        Its sine [-].

    Returns
    -------
    excess : float or ndarray
        The difference [rad].

    Notes
    -----
    Below 0.7 rad the subtraction would cancel, so its own power series takes over; the first term
    left out is below 1e-16 of the sum.

    Examples
    --------
    >>> round(float(excess(1e-3, np.sin(1e-3))) * 6e9, 12)
    0.99999995
    """
    square = angle * angle
    series = 1.0 - square / 210.0
    for divisor in (156.0, 110.0, 72.0, 42.0, 20.0):
        series = 1.0 - square / divisor * series
    return np.where(angle < 0.7, angle * square / 6.0 * series, angle - sine)


def area(pulse):
    """Return the integral of the pulse, whose 1 / (2 pi) is its mean over a cycle.

    Parameters
    ----------
    pulse : Pulse
        From `pulse`.

    Returns
    -------
    area : float or ndarray
        Integral of ``sin(angle) - threshold`` [rad].

    Notes
    -----
    With start p and width w: ``cos(p) (1 - cos(w)) - sin(p) (w - sin(w))``.

    Examples
    --------
    >>> float(area(pulse(0.0, np.pi)))
    2.0
    """
    return pulse.cos_start * pulse.versine - pulse.threshold * pulse.excess


def square_area(pulse):
    """Return the integral of the squared pulse: what heats the resistor.

    Parameters
    ----------
    pulse : Pulse
        From `pulse`.

    Returns
    -------
    area : float or ndarray
        Integral of ``(sin(angle) - threshold)**2`` [rad].

    Notes
    -----
    With start p, width w and s the integral of ``sin(x)**2`` over the width:
    ``cos(p)**2 s - sin(p) cos(p) (1 - cos(w))**2 + sin(p)**2 (2 (w - sin(w)) - s)``.

    Examples
    --------
    >>> round(float(square_area(pulse(0.0, np.pi))), 6)
    1.570796
    """
    sine, cosine, versine = pulse.threshold, pulse.cos_start, pulse.versine
    sines = sine_square_area(pulse)
    return (
        cosine * cosine * sines
        - sine * cosine * versine * versine
        + sine * sine * (2.0 * pulse.excess - sines)
    )


def delivered_area(pulse):
    """Return the integral of the sine times the pulse: what the supply delivers.

    Parameters
    ----------
    pulse : Pulse
        From `pulse`.

    Returns
    -------
    area : float or ndarray
        Integral of ``sin(angle) * (sin(angle) - threshold)`` [rad].

    Notes
    -----
    With start p, width w and s the integral of ``sin(x)**2`` over the width:
    ``cos(p)**2 s + sin(p) cos(p) cos(w) (1 - cos(w)) - sin(p)**2 (s - w + sin(w))``. It is
    summed apart from `area` and `square_area`, so that their balance is a real check.

    Examples
    --------
    >>> round(float(delivered_area(pulse(0.0, np.pi))), 6)
    1.570796
    """
    sine, cosine, versine = pulse.threshold, pulse.cos_start, pulse.versine
    sines = sine_square_area(pulse)
    return (
        cosine * cosine * sines
        + sine * cosine * versine * (1.0 - versine)
        - sine * sine * (sines - pulse.excess)
    )


def height(threshold, window):
    """Return the crest of the pulse.

    Parameters
    ----------
    threshold : float or array
        Constant drop over peak voltage, zero or more [-].
    window : float or array
        End of the open window, 0 to pi [rad].

    Returns
    -------
    height : float or ndarray
        Greatest ``sin(angle) - threshold`` in the window, not below zero [-].

    Notes
    -----
    ``sin(min(window, pi / 2)) - threshold``.

    Examples
    --------
    >>> float(height(0.25, np.pi))
    0.75
    """
    return np.maximum(np.sin(np.minimum(window, 0.5 * np.pi)) - threshold, 0.0)


def sine_square_area(pulse):
    """Return the integral of the squared sine over the width, angles from the start of the pulse.

    Parameters
    ----------
    pulse : Pulse
        From `pulse`.

    Returns
    -------
    area : float or ndarray
        Integral of ``sin(x)**2`` for x from 0 to the width [rad].

    Notes
    -----
    ``(w - sin(w) + sin(w) (1 - cos(w))) / 2``, both parts positive.

    Examples
    --------
    >>> round(float(sine_square_area(pulse(0.0, np.pi))), 6)
    1.570796
    """
    return 0.5 * (pulse.excess + pulse.sin_width * pulse.versine)
