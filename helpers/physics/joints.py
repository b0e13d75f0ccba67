"""The indicator circuits as joints and parts, also wrongly built, on a few volts of a bench supply.

Which way a current finds through parts that are sound, shorted, open or turned round, and what a
meter of ten megohm makes of it. Knows the mains only as a sine; no rating, no limit.
"""

import numpy as np

from helpers.physics import circuits, limits, meters, parts
from helpers.physics.parts import Part
from helpers.physics.signals import Signal

#: Joints that each part leads from and to; the dropper ends on `a`, the other lead is `b`.
JOINTS = {
    "resistor_only": {"led": "ab"},
    "series_diode": {"led": "am", "diode": "mb"},
    "diode_across": {"led": "ab", "diode": "ba"},
    "two_leds": {"led": "ab", "second_led": "ba"},
    "bridge": {"led": "pn", "diode 1": "ap", "diode 2": "nb", "diode 3": "bp", "diode 4": "na"},
}
FAULTS = ("short", "open", "turned")
OPEN_OHMS = 1e15
"""In place of a resistor that is open; no meter tells it from infinity [ohm]."""
TEST_AMPS, TEST_MOST_VOLTS = 1e-3, 2.0
"""Current of a diode test, and what it shows at most: common practice, no source [A], [V]."""
LIT_WITHIN = 0.3
"""An LED that gets at least its usual drop less this is seen to light: common practice, no source
[V]."""
_USUAL = {"led": 2.0, "second_led": 2.0, "diode": 0.7, "wire": 0.0, "meter": 1e3}
_ANGLES = (np.arange(90) + 0.5) * np.pi / 180.0  # up to the crest; the other side is alike


def kind(name):
    """Return what sort of part a name stands for: every diode of a bridge is a diode."""
    return name.split()[0]


def faulty(joints, part, how):
    """Return the joints of a circuit in which one part is shorted, open or turned round.

    Parameters
    ----------
    joints : dict
        As in `JOINTS` [-].
    part, how : str
        A key of them, and one of `FAULTS` [-].

    Returns
    -------
    joints : dict

    Raises
    ------
    KeyError
        If the circuit has no such part.

    Examples
    --------
    >>> faulty(JOINTS["series_diode"], "diode", "turned")
    {'led': 'am', 'diode': 'bm'}
    """
    ends = joints[part]
    left = {name: each for name, each in joints.items() if name != part}
    if how == "short":
        return left | {"wire": ends, "wire back": ends[::-1]}
    return left | ({part: ends[::-1]} if how == "turned" else {})


def way(joints, start, end, seen=""):
    """Return the parts that a current passes between two joints, where its way needs least volts.

    Parameters
    ----------
    joints : dict
        As in `JOINTS` [-].
    start, end : str
        A joint each [-].
    seen : str
        Joints that are not passed again [-].

    Returns
    -------
    way : tuple of str, or None
        Names of the parts in order; nothing where all ways are blocked [-].

    Notes
    -----
    All current is taken to go the easiest way. Two like LEDs side by side share it, which changes
    their drop by some tens of millivolts.

    References
    ----------
    Derived here; the tests compare with the ways of `circuits.CIRCUITS` and their faults.

    Examples
    --------
    >>> way(JOINTS["bridge"], "b", "a")
    ('diode 3', 'led', 'diode 4')
    """
    if start == end:
        return ()
    found = []
    for name, (one, other) in joints.items():
        if one == start and other not in seen:
            rest = way(joints, other, end, seen + start)
            if rest is not None:
                found.append((name, *rest))
    return min(found, key=_needs, default=None)


def _needs(names):
    return sum(_USUAL[kind(name)] for name in names)


def lit(joints, start, end):
    """Return how many LEDs light where a current is driven between two joints.

    Parameters
    ----------
    joints, start, end
        As for `way`.

    Returns
    -------
    lit : set of str
        Names of the LEDs; those beside the way as well, where they get enough volts [-].

    Examples
    --------
    >>> sorted(lit({"led": "ab", "second_led": "ab"}, "a", "b"))
    ['led', 'second_led']
    """
    names = way(joints, start, end)
    if names is None:
        return set()
    level, at = {start: 0.0}, start
    for name in names:
        level[joints[name][1]] = level[at] + _USUAL[kind(name)]
        at = joints[name][1]
    return {
        name for name, (one, other) in joints.items()
        if kind(name) in circuits.LEDS and {one, other} <= level.keys()
        and level[other] - level[one] >= _USUAL[kind(name)] - LIT_WITHIN
    }  # fmt: skip


def _chain(names, laws):
    held = laws | {"wire": Part(), "meter": Part(ohms=meters.INPUT_OHMS)}
    return [held[kind(name)] for name in names]


def string_volts(joints, laws, others, measured, volts, turned=False):
    """Return what a meter shows across some of the resistors, on a supply between both leads.

    Parameters
    ----------
    joints : dict
        As in `JOINTS` [-].
    laws : dict of str to parts.Part
        Of led, second_led and diode.
    others, measured : float or array
        Resistance of the string beside and between the leads of the meter [ohm].
    volts : float or array
        Of the supply, zero or more [V].
    turned : bool
        Whether its leads are changed over [-].

    Returns
    -------
    volts : float or ndarray
        Counted in the direction of the supply [V].

    Notes
    -----
    The meter lies beside what it measures and takes its share of the current.

    References
    ----------
    Kirchhoff's laws.

    Examples
    --------
    >>> laws = {"led": Part(1.6), "diode": Part(0.5)}
    >>> round(string_volts(JOINTS["series_diode"], laws, 0.0, 100e3, 12.0), 2)
    9.9
    """
    names = way(joints, *("ba" if turned else "ab"))
    if names is None:
        return 0.0 * volts
    ohms = measured * meters.INPUT_OHMS / (measured + meters.INPUT_OHMS)
    return ohms * parts.amps_through([Part(ohms=others + ohms), *_chain(names, laws)], volts)


def led_volts(joints, laws, ends, ohms, volts):
    """Return what a meter shows across the pins of the LED, on a supply between both leads.

    Parameters
    ----------
    joints, laws
        As for `string_volts`.
    ends : str
        Joints of the pins, that of its anode first [-].
    ohms : float or array
        The whole string [ohm].
    volts : float or array
        Of the supply, zero or more [V].

    Returns
    -------
    volts : float or ndarray
        [V].

    Notes
    -----
    Across an open LED the meter itself closes the circuit and shows almost all of the supply.

    Examples
    --------
    >>> round(led_volts(faulty(JOINTS["resistor_only"], "led", "open"), {}, "ab", 100e3, 12.0), 2)
    11.88
    """
    names = way(joints, *"ab")
    if names is None:
        joints = joints | {"meter": ends, "meter back": ends[::-1]}
        names = way(joints, *"ab")
        if names is None:
            return 0.0 * volts
    chain = _chain(names, laws)
    amps = parts.amps_through([Part(ohms=ohms), *chain], volts)
    level, at = {"a": 0.0 * amps}, "a"
    for name, part in zip(names, chain, strict=True):
        level[joints[name][1]] = level[at] + part.volts_at(amps)
        at = joints[name][1]
    on_the_way = set(ends) <= level.keys()
    return level[ends[1]] - level[ends[0]] if on_the_way else 0.0 * amps


def pin_volts(joints, laws, ends, ohms, volts):
    """Return what a meter shows across two joints that a supply with a resistor is clipped to.

    Parameters
    ----------
    joints, laws, ends
        As for `led_volts`; the supply's plus is on the first.
    ohms : float
        The resistor of the test [ohm].
    volts : float or array
        Of the supply [V].

    Returns
    -------
    volts : float or ndarray
        [V].

    Examples
    --------
    >>> pin_volts(JOINTS["resistor_only"], {"led": Part(2.0)}, "ab", 4.7e3, 5.0)
    2.0
    """
    names = way(joints, *ends)
    if names is None:
        return meters.loaded_volts(volts, ohms)
    chain = _chain(names, laws)
    amps = parts.amps_through([Part(ohms=ohms), *chain], volts)
    return volts - ohms * amps


def diode_test(joints, laws, ends):
    """Return what the diode test of a meter shows, its red lead on the first joint.

    Parameters
    ----------
    joints, laws, ends
        As for `led_volts`.

    Returns
    -------
    volts : float or ndarray
        Infinite for an overload, which the display shows as OL [V].

    Examples
    --------
    >>> diode_test(JOINTS["resistor_only"], {"led": Part(3.1)}, "ab")
    inf
    """
    names = way(joints, *ends)
    if names is None:
        return np.inf
    drop = sum((part.volts_at(TEST_AMPS) for part in _chain(names, laws)), 0.0)
    return limits.as_given(np.where(np.asarray(drop) > TEST_MOST_VOLTS, np.inf, drop))


def string_signal(joints, laws, ohms, volts_rms):
    """Return the signal across the whole string on a sine of few volts.

    Parameters
    ----------
    joints, laws
        As for `string_volts`.
    ohms : float or array
        The string [ohm].
    volts_rms : float or array
        Of the supply [V].

    Returns
    -------
    signal : signals.Signal
        Floats or arrays [V].

    Notes
    -----
    Sums over 90 angles of each quarter: right to some 1e-4.

    Examples
    --------
    >>> signal = string_signal({"wire": "ab", "wire back": "ba"}, {}, 100e3, 12.0)
    >>> round(float(signal.rms), 2)
    12.0
    """
    sine = np.sqrt(2.0) * np.asarray(volts_rms)[..., None] * np.sin(_ANGLES)
    laws = {
        name: Part(*(np.asarray(value)[..., None] if np.ndim(value) else value for value in law))
        for name, law in laws.items()
    }
    ohms = np.asarray(ohms)[..., None]
    up = string_volts(joints, laws, 0.0, ohms, sine)
    down = string_volts(joints, laws, 0.0, ohms, sine, turned=True)
    wave = np.concatenate(np.broadcast_arrays(up, -down), -1)
    mean = wave.mean(-1)
    return Signal(
        mean, abs(wave).mean(-1), abs(wave - mean[..., None]).mean(-1),
        np.sqrt((wave * wave).mean(-1)), abs(wave).max(-1),
    )  # fmt: skip
