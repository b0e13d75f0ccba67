"""Picture of an LED and its dropper on a bench supply: a column of volts, and what they drive."""

from helpers.figures import scene
from helpers.figures.chart import beside, grab, picture, words
from helpers.figures.style import HEAT, LIGHT, VOLTS
from helpers.figures.words import watts, whole_percent
from helpers.physics import leds, light, ohms_law
from helpers.quantities import write

MOST_VOLTS, SMALL_WATTS = 24.0, 0.25
"""Highest supply that fits the column [V]; from here a small resistor is drawn as glowing [W]."""
_PER_VOLT, _FOOT, _HALF = 7.0, 186, 14.0
"""Height of a volt and of the foot of the column, half of an arrow of the limit [px]."""


def dropper(volts, ohms, led_volts=2.0):
    """Draw how volts are shared, what flows, what gets warm and what shines.

    Parameters
    ----------
    volts : float
        Setting of the supply, up to `MOST_VOLTS` [V].
    ohms : float
        The dropper [ohm].
    led_volts : float
        The LED's own drop [V].

    Returns
    -------
    drawn : Drawn
        The top of its column is the grip of a control named `volts`.

    Raises
    ------
    ValueError
        As `ohms_law.led_current`.

    Notes
    -----
    Light is in proportion to the current; full light is that of `leds.LIMIT_AMPS`.

    References
    ----------
    20 mA as the usual limit of a small LED: common practice, no source.

    Examples
    --------
    >>> dropper(12.0, 2000.0).finding.replace("\\xa0", " ")
    'The LED gets 25 % of the 20 mA that it stands.'
    """
    amps = ohms_law.led_current(volts, led_volts, ohms)
    heat, share = ohms_law.power(amps=amps, ohms=ohms), amps / leds.LIMIT_AMPS
    limit = write(leds.LIMIT_AMPS, "current")
    title = f"the LED gets {whole_percent(share)} of the {limit} that it stands"
    title = f"Too much: {title}" if share > 1.0 else f"T{title[1:]}"
    look = light.lightness(min(share, 1.0)) / 100.0
    told = f"{write(amps, 'current')}, {whole_percent(share)}", "of its most light"
    if share > 1.0:
        told = write(amps, "current"), "too much: it dies"
    warm = f"{watts(heat)} of heat", f"in {write(ohms, 'resistance')}"
    left = scene.drawing(290, 252, _column(volts, led_volts))
    right = scene.drawing(
        294, 252, scene.by_night(0, 0, share, look, *told, broken=share > 1.0),
        _arrow(0, 150, share, write(amps, "current"), limit),
        scene.resistor(0, 226, heat / SMALL_WATTS, *warm),
    )  # fmt: skip
    name = "A column of volts, an arrow of current, a resistor and an LED with its light"
    return picture(name, f"{title}.", beside(left, right, least=290))


def _column(volts, led_volts):
    """Volts upwards: the LED's share always at the foot, what is left for the dropper on it."""
    top, led = _FOOT - _PER_VOLT * volts, _FOOT - _PER_VOLT * min(led_volts, volts)
    scale = "".join(
        f'<path d="M48 {_FOOT - _PER_VOLT * at}h8" stroke="currentColor"/>'
        + words(42, _FOOT - _PER_VOLT * at + 4.5, f"{at}\u00a0V", "end")
        for at in range(0, 25, 6)
    )
    left = write(max(volts - led_volts, 0.0), "voltage")
    high, own = _PER_VOLT * MOST_VOLTS, (led + _FOOT) / 2 + 5
    return (
        f'{scale}<rect x="60" y="{top:.1f}" width="52" height="{led - top:.1f}" fill="{VOLTS}"/>'
        f'<rect x="60" y="{led:.1f}" width="52" height="{_FOOT - led:.1f}" fill="{LIGHT}"/>'
        f'<path d="M56 {_FOOT - high}V{_FOOT}H116" fill="none" stroke="currentColor"/>'
        f'<path d="M60 {top:.1f}h52" stroke="currentColor" stroke-width="4"/>'
        f'<g class="cw-grip" fill="currentColor"><path d="M86 {top - 12:.1f}l-7 8h14z"/></g>'
        + words(124, min((top + led) / 2, own - 20) + 4.5, f"{left} for the dropper", "start")
        + words(124, own + 4.5, f"{write(led_volts, 'voltage')} for the LED", "start")
        + words(60, _FOOT + 22, f"supply {write(volts, 'voltage')}", "start")
        + grab("volts", 0, MOST_VOLTS, "up", f'x="56" y="{_FOOT - high}" width="60" '
               f'height="{high}"')
    )  # fmt: skip


def _arrow(x, y, share, said, limit):
    """An arrow as thick as its current, between marks of the limit; what is over them is red."""
    half = _HALF * min(share, 1.9)
    shaft = "".join(
        f'<path d="M{x + 6} {y - size:.1f}H{x + 64}v-6L{x + 92} {y}L{x + 64} {y + size + 6:.1f}'
        f'V{y + size:.1f}H{x + 6}z" fill="{colour}"/>'
        for size, colour in ((half, HEAT if share > 1.0 else LIGHT), (min(half, _HALF), LIGHT))
    )
    marks = "".join(
        f'<path d="M{x} {y + side}h100" stroke="currentColor" stroke-width="2" '
        'stroke-dasharray="6 3"/>'
        for side in (-_HALF, _HALF)
    )
    beyond = "beyond it" if share > 1.0 else "between the marks"
    return shaft + marks + scene.beside_it(x + 112, y, (f"{said} flows", f"{limit}: {beyond}"))
