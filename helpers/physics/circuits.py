"""The indicator circuits as values: which parts the current passes in each half-cycle.

A circuit lists the parts on its way forwards (the half-cycle of the LED) and backwards, what stands
in reverse across LED and diodes, and the same after each fault of one part. Everything else follows
from the parts: sums over a cycle, heat, faults, drawings. What a part drops is in `parts`.
"""

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from helpers.physics import limits, parts, phase_cut

BLOCKED = None
"""In place of a way: no current flows in that half-cycle."""
MAINS = ("mains",)
"""What holds off the whole wave, as far as it rises."""
LEDS = ("led", "second_led")
IN_LEDS = (*LEDS, "breakdown", "second_breakdown")
"""Names whose heat is in an LED."""


class Wiring(NamedTuple):
    """The ways of the current, without the dropper, and what is held off; names of parts."""

    forward: tuple | None
    """On the way in the LED's own half-cycle."""
    backward: tuple | None
    """On the way in the other one."""
    led_holds: tuple = ()
    """What stands in reverse across the LED, if diodes block ideally."""
    led_may_hold: tuple | None = None
    """The same at most, where a diode may leak more than the LED; as `led_holds` if left out."""
    diode_holds: tuple = ()
    """The most that stands in reverse across a silicon diode."""
    gap_holds: tuple = ()
    """What stands across a part that is open."""


@dataclass(frozen=True, eq=False)
class Circuit:
    """One indicator circuit; as text it says what is wired."""

    words: str
    sound: Wiring
    faulty: dict
    """Wiring by part and kind of fault, as ("led", "open"); parts that are alike are named once."""

    def __str__(self):
        return self.words

    @property
    def breaks_down(self):
        """Whether the sound LED is pushed backwards in every cycle."""
        return "breakdown" in (self.sound.backward or ())

    @property
    def lights_twice(self):
        """Whether one LED gets both half-cycles."""
        return "led" in (self.sound.backward or ())


DARK = Wiring(BLOCKED, BLOCKED, gap_holds=MAINS)
"""Something in series is open, and holds all of the mains."""
_BYPASSED = Wiring((), ())
_BARE = Wiring(("led",), ("breakdown",), ("breakdown",))
# With nothing across the LED, what breaks down is also all that the gap beside it has to hold.
_LEFT_BARE = _BARE._replace(gap_holds=("breakdown",))
_BOTH_WAYS = ("led", "diode", "diode")

#: Every circuit by the name that lessons, questions, logs and explorers use.
CIRCUITS = {
    "resistor_only": Circuit(
        "resistor and LED; the LED breaks down in the other half-cycle",
        _BARE,
        {("led", "short"): _BYPASSED, ("led", "open"): DARK},
    ),
    "series_diode": Circuit(
        "resistor, LED and a silicon diode in series, which blocks the other half",
        Wiring(("led", "diode"), BLOCKED, (), ("breakdown",), MAINS),
        {
            ("led", "short"): Wiring(("diode",), BLOCKED, diode_holds=MAINS),
            ("led", "open"): DARK,
            ("diode", "short"): _BARE,
            ("diode", "open"): DARK,
        },
    ),
    "diode_across": Circuit(
        "resistor and LED, a silicon diode across the LED for the other half",
        Wiring(("led",), ("diode",), ("diode",), None, ("led",)),
        {
            ("led", "short"): _BYPASSED,
            ("led", "open"): Wiring(BLOCKED, ("diode",), diode_holds=MAINS, gap_holds=MAINS),
            ("diode", "short"): _BYPASSED,
            ("diode", "open"): _LEFT_BARE,
        },
    ),
    "two_leds": Circuit(
        "resistor and two LEDs back to back, one for each half-cycle",
        Wiring(("led",), ("second_led",), ("second_led",)),
        {
            ("led", "short"): _BYPASSED,
            ("led", "open"): Wiring(
                ("second_breakdown",), ("second_led",), ("second_breakdown",),
                gap_holds=("second_breakdown",),
            ),
            ("second_led", "short"): _BYPASSED,
            ("second_led", "open"): _LEFT_BARE,
        },
    ),
    "bridge": Circuit(
        "resistor, bridge of four diodes and one LED that lights in both half-cycles",
        Wiring(_BOTH_WAYS, _BOTH_WAYS, diode_holds=("led", "diode")),
        {
            ("led", "short"): Wiring(_BOTH_WAYS[1:], _BOTH_WAYS[1:], diode_holds=("diode",)),
            ("led", "open"): Wiring(BLOCKED, BLOCKED, diode_holds=MAINS, gap_holds=MAINS),
            # One half-cycle goes past the LED, through the one diode that is left to it.
            ("diode", "short"): Wiring(("led", "diode"), ("diode",), diode_holds=("led", "diode")),
            ("diode", "open"): Wiring(_BOTH_WAYS, BLOCKED, diode_holds=MAINS, gap_holds=MAINS),
        },
    ),
}  # fmt: skip

SILICON_VOLTS = 0.7
"""Drop of a silicon diode: common practice, no source [V]."""


def named(circuit):
    """Return the circuit of a name; a circuit itself passes through.

    Parameters
    ----------
    circuit : str or Circuit
        A key of `CIRCUITS` [-].

    Returns
    -------
    circuit : Circuit

    Raises
    ------
    ValueError
        If the name is unknown; the known ones are listed.

    Examples
    --------
    >>> named("series_diode").sound.forward
    ('led', 'diode')
    """
    if isinstance(circuit, Circuit):
        return circuit
    return CIRCUITS[limits.one_of(circuit, "circuit", CIRCUITS)]


def fill_in(
    circuit, led_volts=2.0, second_led_volts=None, diode_volts=SILICON_VOLTS, breakdown_volts=5.0
):
    """Return the four constant drops of a circuit, the usual ones filled in, or refuse them.

    Parameters
    ----------
    circuit : str or Circuit
        A key of `CIRCUITS` [-].
    led_volts : float or array
        Forward drop of the LED [V].
    second_led_volts : float or array, optional
        Forward drop of the second of two LEDs; equal to the first if left out [V].
    diode_volts : float or array
        Forward drop of a silicon diode [V].
    breakdown_volts : float or array
        True reverse breakdown of the LED, which is not the few volts of its rating [V].

    Returns
    -------
    drops : tuple
        led_volts, second_led_volts, diode_volts, breakdown_volts [V].

    Raises
    ------
    ValueError
        If the circuit is unknown, a drop is negative, or the LED would break down before the part
        across it conducts.

    Notes
    -----
    A drop that is left out takes a usual value: red LED 2 V, silicon diode 0.7 V, breakdown 5 V.

    References
    ----------
    Common practice, no source; the data sheet of the part decides.

    Examples
    --------
    >>> fill_in("two_leds", 2.0)
    (2.0, 2.0, 0.7, 5.0)
    >>> fill_in("two_leds", 2.0, 6.0)
    Traceback (most recent call last):
    ...
    ValueError: breakdown_volts less the drop across the LED was read as -1 V; it must be above \
0 V. The LED would break down first, and the part across it would protect nothing.
    """
    sound = named(circuit).sound
    slip = "Give the drop without sign."
    led_volts = limits.not_negative(led_volts, "led_volts", "V", slip)
    if second_led_volts is None:
        second_led_volts = led_volts
    second_led_volts = limits.not_negative(second_led_volts, "second_led_volts", "V", slip)
    diode_volts = limits.not_negative(diode_volts, "diode_volts", "V", slip)
    breakdown_volts = limits.positive(breakdown_volts, "breakdown_volts", "V", slip)
    # Where the other half-cycle goes through a part across the LED, that part has to be first.
    if sound.led_holds and sound.led_holds == sound.backward != ("breakdown",):
        across = {"diode": diode_volts, "second_led": second_led_volts}[sound.led_holds[0]]
        limits.positive(
            breakdown_volts - across, "breakdown_volts less the drop across the LED", "V",
            "The LED would break down first, and the part across it would protect nothing.",
        )  # fmt: skip
    return led_volts, second_led_volts, diode_volts, breakdown_volts


def laws(circuit, *, led=None, second_led=None, diode=None, breakdown_ohms=0.0, **drop_volts):
    """Return the law of every part that a wiring can name.

    Parameters
    ----------
    circuit : str or Circuit
        A key of `CIRCUITS` [-].
    led, second_led, diode : parts.Part, optional
        Real parts, such as those of `leds.real`. With a real LED the second is like the first and
        the diode `parts.SILICON`, unless given. Without one, all drops are constant [-].
    breakdown_ohms : float or array
        Rise of the breakdown with its current [ohm].
    **drop_volts : float or array
        The constant drops, as for `fill_in` [V].

    Returns
    -------
    laws : dict of str to parts.Part

    Raises
    ------
    ValueError
        As `fill_in`.

    Examples
    --------
    >>> laws("bridge", led_volts=3.2)["led"].volts
    3.2
    """
    led_volts, second_volts, diode_volts, breakdown_volts = fill_in(circuit, **drop_volts)
    rise = limits.not_negative(breakdown_ohms, "breakdown_ohms", "ohm")
    breakdown = parts.Part(breakdown_volts, rise)
    return {
        "led": led or parts.Part(led_volts),
        "second_led": second_led or led or parts.Part(second_volts),
        "diode": diode or (parts.SILICON if led else parts.Part(diode_volts)),
        "breakdown": breakdown,
        "second_breakdown": breakdown,
        "mains": parts.Part(np.inf),
    }


def amps_at(circuit, supply, dimmer, degrees, *, ohms, **laws_of):
    """Return the current in the resistor at an instant, for drawing.

    Parameters
    ----------
    circuit : str or Circuit
        A key of `CIRCUITS` [-].
    supply : mains.Supply
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    degrees : float or array
        Angle from the rising zero crossing [deg].
    ohms : float or array
        Series resistance [ohm].
    **laws_of
        Drops and real parts as for `laws` [V].

    Returns
    -------
    amps : float or ndarray
        Current in the resistor; positive in the half-cycle of the LED [A].

    Raises
    ------
    ValueError
        As `fill_in`, or if the resistance is not above zero.

    Notes
    -----
    In a bridge the LED carries the size of this current, in all others its positive part, and with
    'resistor_only' the negative part too, as breakdown.

    References
    ----------
    Kirchhoff's voltage law.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> supply = mains.Supply(120.0, 60.0)
    >>> crest = amps_at("series_diode", supply, phase_cut.NO_DIMMER, 90.0, ohms=68e3)
    >>> round(crest * 1e3, 4)
    2.456
    """
    ohms = limits.positive(ohms, "ohms", "ohm", "Without a resistor the LED is destroyed.")
    law, wiring = laws(circuit, **laws_of), named(circuit).sound
    volts = phase_cut.volts_at(supply, dimmer, degrees)

    def through(way, push):
        chain = [parts.Part(ohms=ohms), *(law[name] for name in way or ())]
        return 0.0 if way is BLOCKED else parts.amps_through(chain, push)

    return through(wiring.forward, volts) - through(wiring.backward, -volts)


def volts_behind_dropper_at(circuit, supply, dimmer, degrees, *, ohms, **laws_of):
    """Return the voltage across all but the resistor at an instant, for drawing.

    Parameters
    ----------
    circuit, supply, dimmer, degrees, ohms, **laws_of
        As for `amps_at`.

    Returns
    -------
    volts : float or ndarray
        What LED and diodes take, or hold off; behind a series diode, all of it in reverse [V].

    Raises
    ------
    ValueError
        As `amps_at`.

    Notes
    -----
    The supply less current times ohms.

    References
    ----------
    Kirchhoff's voltage law.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> supply = mains.Supply(120.0, 60.0)
    >>> at = {"supply": supply, "dimmer": phase_cut.NO_DIMMER, "degrees": 270.0, "ohms": 68e3}
    >>> [round(volts_behind_dropper_at(circuit, **at)) for circuit in ("series_diode", "bridge")]
    [-170, -3]
    """
    amps = amps_at(circuit, supply, dimmer, degrees, ohms=ohms, **laws_of)
    return phase_cut.volts_at(supply, dimmer, degrees) - amps * ohms
