"""Flicker at line frequency and at twice it: the harmonics of one conduction pulse.

Angles count from the start of the pulse, where the sums keep their digits; `flows` turns them
to a common origin. Derived here; the tests compare with adaptive quadrature. Knows no volts, amps
or light.
"""

from helpers.physics import pulses


def first_harmonic(pulse):
    """Return the integrals of the pulse times cosine and sine, angles from its own start.

    Parameters
    ----------
    pulse : pulses.Pulse
        From `pulses.pulse`.

    Returns
    -------
    cosine_part, sine_part : tuple of float or ndarray
        The two integrals [rad].

    Notes
    -----
    Integrals of ``(cos(p) sin(x) - sin(p) (1 - cos(x)))`` times ``cos(x)`` and ``sin(x)``, x from 0
    to the width.

    Examples
    --------
    >>> whole = pulses.pulse(0.0, 3.141592653589793)
    >>> [round(float(part), 6) for part in first_harmonic(whole)]
    [0.0, 1.570796]
    """
    sines = pulses.sine_square_area(pulse)
    cosine_part = 0.5 * pulse.cos_start * pulse.sin_width * pulse.sin_width - pulse.threshold * (
        sines - pulse.excess
    )
    sine_part = pulse.cos_start * sines - 0.5 * pulse.threshold * pulse.versine * pulse.versine
    return cosine_part, sine_part


def second_harmonic(pulse):
    """Return the integrals of the pulse times cosine and sine of twice the angle from its start.

    Parameters
    ----------
    pulse : pulses.Pulse
        From `pulses.pulse`.

    Returns
    -------
    cosine_part, sine_part : tuple of float or ndarray
        The two integrals [rad].

    Notes
    -----
    As `first_harmonic` with ``cos(2 x)`` and ``sin(2 x)``, written in powers of ``1 - cos(w)``.

    Examples
    --------
    >>> whole = pulses.pulse(0.0, 3.141592653589793)
    >>> [round(float(part), 6) for part in second_harmonic(whole)]
    [-0.666667, 0.0]
    """
    versine, sin_width = pulse.versine, pulse.sin_width
    two_thirds = 2.0 / 3.0
    square = versine * versine
    cube = square * versine
    sine_square = sin_width * sin_width
    cosine_part = pulse.cos_start * (
        versine - 2.0 * square + two_thirds * cube
    ) - pulse.threshold * sin_width * (two_thirds * sine_square - versine)
    sine_part = two_thirds * pulse.cos_start * sin_width * sine_square - pulse.threshold * (
        square - two_thirds * cube
    )
    return cosine_part, sine_part
