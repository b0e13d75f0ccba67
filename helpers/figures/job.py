"""Picture of the job: a pot on three wires behind a dimmer, and a light that shows it is live."""

from helpers.figures import scene
from helpers.figures.chart import grab, picture, words
from helpers.figures.style import HEAT, VOLTS
from helpers.figures.words import whole_percent
from helpers.physics import light, phase_cut_inverse
from helpers.physics.operating_point import operating_point

WIDE, HIGH, OHMS = 318, 234, 100e3
#: What each lesson is about, among the parts of the picture, and in words.
TODAY = {
    "01": (("wires",), "the three wires, and what is live"),
    "02": (("dropper", "light"), "the light and its dropper"),
    "03": (("wave", "light"), "the wave on the live wire, and what the light gets of it"),
    "04": (("dropper",), "the dropper, and how warm it gets"),
    "05": (("dimmer", "pot"), "the dimmer, and what it leaves for pot and light"),
    "06": (("light",), "the light, and whether you see it"),
    "07": (("dropper", "light"), "other ways to feed the light"),
    "08": (("dropper", "light", "wires"), "what happens when a part fails"),
    "09": (("dropper", "light"), "what meters should read on the light, before it meets the mains"),
    "10": (("wires", "wave", "dimmer", "pot", "light", "dropper"), "all of it, with your numbers"),
}
_PARTS = ("wires", "wave", "dimmer", "pot", "light", "dropper")


def knob(supply, percent):
    """Draw the job with the dimmer's knob at a share of the time.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    percent : float
        Share of each half-cycle that is let through, 0 to 100 [%].

    Returns
    -------
    drawn : Drawn
        Its dimmer is the grip of a control named `percent`.

    Raises
    ------
    ValueError
        As `phase_cut_inverse.for_conduction`.

    Notes
    -----
    A series diode and a dropper of 100 kohm; how bright the light looks is the CIE lightness.

    References
    ----------
    As `phase_cut_inverse.percentages` and `light.lightness`.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> knob(mains.Supply(230.0, 50.0), 50.0).finding.replace("\\xa0", " ")
    'Knob at 50 %: the pot makes 50 % of its heat, and the light looks 76 % as bright.'
    """
    dimmer = phase_cut_inverse.for_conduction(percent / 100.0, "leading")
    heat = phase_cut_inverse.percentages(dimmer).power_percent / 100.0
    full, now = (
        operating_point("series_diode", supply, *cut, ohms=OHMS).led_amps_mean
        for cut in ((), (dimmer,))
    )
    look = light.lightness(now / full) / 100.0
    title = (
        f"Knob at {whole_percent(percent / 100.0)}: the pot makes {whole_percent(heat)} of its "
        f"heat, and the light looks {whole_percent(look)} as bright"
    )
    if not percent:
        title = f"Knob at {whole_percent(0.0)}: pot and light look off, and the wires are live"
    name = "A pot behind a dimmer on three wires, with its pilot light"
    drawn = _scene(percent / 100.0, heat, now / full, look)
    return picture(name, f"{title}.", drawn)


def today(number):
    """Draw the job small, with only what a lesson is about in full ink.

    Parameters
    ----------
    number : str
        The lesson, a key of `TODAY` [-].

    Returns
    -------
    drawn : Drawn

    Examples
    --------
    >>> today("05").finding
    'Today: the dimmer, and what it leaves for pot and light.'
    """
    parts, said = TODAY[number]
    name = f"The pot, its dimmer, three wires and the light; in full ink today: {said}"
    drawn = _scene(0.6, 0.7, 0.7, 0.85, parts)
    return picture(name, "", drawn)._replace(finding=f"Today: {said}.")


def standalone():
    """Return the job as a file of its own, for a page that knows neither ink nor face of ours."""
    svg = _scene(0.6, 0.7, 0.7, 0.85).replace("var(--jp-layout-color0, #fff)", "#fff")
    face = f'<rect width="{WIDE}" height="{HIGH}" fill="#fff"/>'
    opening, _, rest = svg.partition(">")
    opening = opening.replace("<svg", '<svg xmlns="http://www.w3.org/2000/svg" color="#1a1a1a"')
    return f'{opening} font-family="sans-serif">{face}{rest}\n'


def _scene(turned, heat, share, look, parts=_PARTS):
    def part(name, shapes):
        pale = "" if name in parts else ' opacity=".25"'
        return f'<g fill="none" stroke-width="2.5" stroke="currentColor"{pale}>{shapes}</g>'

    def label(x, y, text, *names, anchor="start"):
        weight = ' font-weight="bold"' if parts != _PARTS and set(names) & set(parts) else ""
        return words(x, y, text, anchor, more=weight)

    pointer = f'<path d="M126 60v-16" transform="rotate({-135 + 270 * turned:.0f} 126 60)"/>'
    coil = "M206 176l4 -6 8 12 8 -12 8 12 8 -12 8 12 8 -12 8 12 8 -12 8 12 8 -12 12 6"
    night = f'<rect x="92" y="102" width="80" height="76" rx="8" fill="{scene.NIGHT}"/>'
    pieces = (
        part("wires", '<path d="M48 60H96M156 60H186V176H206M48 200H307V176H302"/>'
                      '<path d="M48 222H316V120H300"/>'),
        part("wave", f'<path d="M52 42q5 -26 10 0t10 0 10 0 10 0" stroke="{VOLTS}"/>'),
        part("dimmer", '<rect x="96" y="34" width="60" height="52" rx="8"/>'
                       f'<circle cx="126" cy="60" r="18"/>{pointer}'),
        part("pot", f'<path d="{coil}" stroke="{HEAT}"/>'
                    f'<g stroke="none">{scene.pot(206, 84, heat)}</g>'),
        part("light", f'<path d="M186 140H172M92 140H76V150M76 190V200"/>{night}'
                      f'<g stroke="none">{scene.lamp(132, 140, share, look * 0.85)}</g>'),
        part("dropper", '<rect x="69" y="150" width="14" height="40"/>'),
        label(2, 64, "live", "wires"), label(2, 196, "neutral", "wires"),
        label(2, 218, "earth", "wires"), label(126, 26, "dimmer", "dimmer", anchor="middle"),
        label(254, 50, "pot", "pot", anchor="middle"),
        label(132, 194, "pilot light", "light", anchor="middle"),
        label(64, 174, "dropper", "dropper", anchor="end"),
        grab("percent", 0, 100, "up", 'x="96" y="24" width="60" height="72"'),
    )  # fmt: skip
    return scene.drawing(WIDE, HIGH, *pieces)
