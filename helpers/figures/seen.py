"""Pictures of what is seen: how bright a share of light looks, and from how far it is noticed."""

import numpy as np

from helpers.figures.chart import Axis, Chart, axis, bars, beside, number_box, picture
from helpers.figures.guesses import looks
from helpers.figures.words import capital, share_of_one
from helpers.physics import glow, leds, light, visibility
from helpers.quantities import write, write_as

NEAREST, FARTHEST = 0.5, 30.0
"""Ends of the distance in the picture [m]."""
DISTANCE = Axis(
    NEAREST, FARTHEST, "distance in m",
    {at: f"{at:g}" for at in (0.5, 1.0, 2.0, 5.0, 10.0, 30.0)}, True,
)  # fmt: skip
_ARRIVES = Axis(
    1e-6, 10.0, "light at the eye",
    {at: write(at, "illuminance") for at in (1e-6, 1e-4, 1e-2, 1.0)}, True,
)  # fmt: skip
REFERENCE_AMPS = 5e-3
"""The current against which a look is told, the most that is drawn [A]."""
_HARDLY = 0.05


def look():
    """Draw how bright a share of the light looks: as a point, as a patch, as a surface.

    Returns
    -------
    drawn : Drawn

    References
    ----------
    As `light.stevens` and `light.lightness`.

    Examples
    --------
    >>> look().finding.replace("\\xa0", " ").partition(",")[0]
    'A quarter of the light looks 63 % as bright from close by'
    """
    shares = axis("light, of full light in %", 0, 100, 20)
    chart = Chart(260, shares, shares._replace(name="how bright it looks in %"))
    curves = looks()
    (near, _), (far, _), (painted, _), _ = chart.read_at(
        25.0, *curves, (curves[0][0], curves[0][0], "mains", "the light")
    )
    finding = (
        f"A quarter of the light looks {near:.0f}\u00a0% as bright from close by, "
        f"{far:.0f}\u00a0% from afar."
    )
    details = (
        f"A painted surface in daylight looks {painted:.0f}\u00a0%. All three curves rise steeply "
        "at first and flatten towards full light."
    )
    name = "Three curves of look over light"
    return picture(name, finding, chart.html(), details=details)


def noticed(amps, colour, room_lux, metres, off_axis_degrees):
    """Draw the light that arrives over the distance, and what a room asks for.

    Parameters
    ----------
    amps : float
        Mean current of the LED [A].
    colour : str
        As for `glow.typical_candelas` [-].
    room_lux : float
        Light on the wall behind the LED [lx].
    metres : float
        Where somebody stands, `NEAREST` to `FARTHEST` [m].
    off_axis_degrees : float
        Angle between the axis of the LED and the eye [deg].

    Returns
    -------
    drawn : Drawn

    Raises
    ------
    ValueError
        As `visibility.candelas` and `visibility.needed_lux`.

    Notes
    -----
    A plain LED as `glow.typical_candelas` has it, its light in proportion to the current.

    References
    ----------
    As `visibility.visible_metres` and `light.stevens`.

    Examples
    --------
    >>> noticed(0.2e-3, "red", 300.0, 4.0, 0.0).finding.replace("\\xa0", " ").partition(". ")[0]
    'Not noticed from where you stand: a red LED with 200 µA is noticed up to 2.17 m, and you \
stand at 4 m'
    """
    rated = glow.typical_candelas(colour)
    seen_at = (off_axis_degrees, glow.SHEET_HALF_DEGREES)
    candelas = visibility.candelas(amps, rated, glow.SHEET_AMPS, *seen_at)
    needed = visibility.needed_lux(room_lux)
    reach = float(np.sqrt(candelas / needed))
    finding = (
        f"{'Noticed' if reach >= metres else 'Not noticed'} from where you stand: a {colour} LED "
        f"with {write(amps, 'current')} is noticed {_up_to(reach)}, and you stand at "
        f"{write_as(metres, 'm')}"
    )
    wanted = needed * metres * metres
    sent = write(candelas, "luminous intensity") if candelas > _ARRIVES.low else "next to nothing"
    full = visibility.candelas(1.0, rated, glow.SHEET_AMPS, *seen_at)
    alternative = (
        f"{finding}. There it takes {write(wanted, 'luminous intensity')}, and the LED sends "
        f"{sent} that way. For that, its mean current has to be {_amps(wanted / full)}."
    )
    distances = np.geomspace(NEAREST, FARTHEST, 60)
    arrives = candelas / distances**2
    inside = (arrives >= _ARRIVES.low) & (arrives <= _ARRIVES.high)
    chart = Chart(250, DISTANCE, _ARRIVES)
    if inside.any():
        chart.line(distances[inside], arrives[inside], "light", "arrives")
    chart.line([NEAREST, FARTHEST], [needed, needed], "limit", "needed")
    here = candelas / metres**2
    if _ARRIVES.low <= here <= _ARRIVES.high:
        chart.mark(metres, here, "eye", "where you stand")
    share = min(amps / REFERENCE_AMPS, 1.0)
    close, far = light.stevens(share), light.stevens(share, light.STEVENS_EXPONENTS["point"])
    against = f"Light, against {write(REFERENCE_AMPS, 'current')}"
    looks = (
        bars("light", (against, share, share_of_one(share)))
        + bars("eye", ("How bright it looks close by", close, share_of_one(close)),
               ("How bright it looks from afar", far, share_of_one(far)))
        + number_box("Sent towards you", sent, "falls off beside the axis")
    )  # fmt: skip
    name = f"{capital('light')} at the eye over the distance, with the light that a room asks for"
    return picture(name, alternative, beside(chart.html(), looks))


def _up_to(reach):
    return f"up to {write_as(reach, 'm')}" if reach >= _HARDLY else "only with the eye beside it"


def _amps(value):
    if value > leds.LIMIT_HALF_WAVE_AMPS:
        return (
            f"so high that its pulses behind a diode pass the {write(leds.LIMIT_AMPS, 'current')} "
            "that a small LED stands: take a brighter type, another place for it, or another "
            "warning"
        )
    return f"{write(value, 'current')} at the least"
