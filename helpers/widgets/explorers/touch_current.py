"""Explorer: a current through a body, against the zones of IEC 60479-1."""

from functools import partial

from helpers.figures.touch import zones
from helpers.physics import hazards, mains
from helpers.quantities import write
from helpers.widgets.explorers.knobs import Choice, Slider
from helpers.widgets.explorers.mains_side import in_short
from helpers.widgets.explorers.panel import Explorer

SERIES_OHMS = (0.0, 1e3, 4.7e3, 10e3, 22e3, 47e3, 100e3, 330e3, 560e3, 1e6)
#: Below this the ohms of dry skin rise steeply (IEC 60479-1, from memory) [V].
LOW_VOLTS = 50.0
SECONDS = (0.01, 0.02, 0.04, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0)


def touch_current(supply, volts, ohms, seconds):
    """Show what a current through the body does to people.

    Parameters
    ----------
    supply : mains.Supply
        The learner's supply; its frequency counts.
    volts : float
        Voltage to earth of what is touched [V].
    ohms : float
        Resistance between it and the hand; 0 for bare contact [ohm].
    seconds : float
        How long it is touched [s].

    Returns
    -------
    svg : str
    sentence : str
        What the picture shows, with its numbers.

    References
    ----------
    IEC 60479-1 for the zones and the body (the latter from memory); 30 mA residual-current devices
    and their types: IEC 61008-1, IEC 60755 (the types from memory).

    Examples
    --------
    >>> words = touch_current(mains.SUPPLIES["120 V 60 Hz"], 120.0, 0.0, 1.0)[1]
    >>> "this kills" in words
    True
    """
    amps = hazards.touch_amps_rms(mains.Supply(volts, supply.hertz), ohms)
    svg, said = in_short(zones(amps, seconds))
    way = f"through {write(ohms, 'resistance')}" if ohms else "by bare contact"
    return svg, (
        f"{write(volts, 'voltage')} {way} drives {write(amps, 'current')} through dry hands of "
        f"{write(hazards.SHOCK_BODY_OHMS, 'resistance')}, the body that shock is judged with. "
        f"{said} {_device(amps)} {_skin(volts)}"
    )


def _device(amps):
    device = f"A {write(hazards.RESIDUAL_AMPS_RMS, 'current')} residual-current device"
    if amps >= hazards.RESIDUAL_AMPS_RMS:
        return (
            f"{device} is made to cut this off, if it flows to earth and the device suits the "
            "wave (behind a dimmer or a diode type A at least); between both wires never."
        )
    return f"{device} need not trip."


def _skin(volts):
    if volts <= LOW_VOLTS:
        return (
            "At so few volts dry skin holds back more than this sum says; wet skin lets more "
            "through."
        )
    return "Wet skin lets more through: this is the kinder case."


def _open_on(supply):
    series = {write(ohms, "resistance") if ohms else "none: bare contact": ohms
              for ohms in SERIES_OHMS}  # fmt: skip
    times = {write(seconds, "time"): seconds for seconds in SECONDS}
    return partial(touch_current, supply), (
        Slider("volts", "Touched voltage in V", 5.0, 265.0, 1.0, supply.volts_rms),
        Choice("ohms", "Ohms in the way", series, 100e3),
        Choice("seconds", "Touched for", times, 1.0),
    )


EXPLORER = Explorer(
    _open_on,
    (
        "Go to bare contact. How soon can it kill?",
        "Find the ohms that keep the current in AC-1 at your supply. Would one part alone do, if "
        "it can fail short?",
        "At bare contact, go from your supply down to 24 V. By how much does the current fall, "
        "and is it harmless then? The ohms stay as they are here: at low volts dry skin holds "
        "back more, wet skin does not.",
    ),
    "Danger: this shows why rules exist; it makes no touch safe. One dry body in twenty has fewer "
    "ohms than the sum assumes, and a wet one far fewer. Never test it.",
)
