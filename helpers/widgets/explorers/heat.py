"""Explorer: a power, a rating and the warm air around a resistor, and whether they go together."""

from helpers.figures.heat import rating
from helpers.physics import heat as warmth
from helpers.physics import mains, ratings
from helpers.physics.operating_point import operating_point
from helpers.quantities import write
from helpers.sizing import rules
from helpers.widgets.explorers.knobs import Choice, Slider
from helpers.widgets.explorers.mains_side import in_short
from helpers.widgets.explorers.panel import Explorer

EXAMPLE_OHMS = 47e3
"""The dropper of the worked example in lesson 04, behind a diode [ohm]."""
LEAST_WATTS, MOST_WATTS = 0.01, 5.0
COLDEST, HOTTEST = 0.0, 150.0


def heat(watts, rated_watts, ambient_celsius):
    """Show a power against what is left of a resistor's rating in warm air.

    Parameters
    ----------
    watts : float
        Power that the resistor turns into heat, 0.01 to 5 [W].
    rated_watts : float
        Rating on its sheet [W].
    ambient_celsius : float
        Temperature of the air around it, 0 to 150 [degC].

    Returns
    -------
    svg : str
    sentence : str
        What the picture shows, with its numbers and the verdict; at an end of a control it says
        that a number beyond is cut down to it.

    References
    ----------
    As `rules.heat`: IEC 60115-1, derating; half of it while all is sound: common practice, no
    source. 155 degC as the end of many film types, 125 degC of others: the part's own sheet.

    Examples
    --------
    >>> heat(0.2, 0.5, 40.0)[1].split(":")[0], heat(0.3, 0.5, 40.0)[1].split(":")[0]
    ('Pass', 'Fail')
    """
    found = rules.heat(watts, rated_watts, ambient_celsius)
    svg, said = in_short(rating(watts, rated_watts, ambient_celsius, found.verdict))
    film = warmth.final_celsius(watts, warmth.kelvin_per_watt_of(rated_watts), ambient_celsius)
    limit = write(ratings.ZERO_CELSIUS, "temperature")
    hot = f"reach about {write(film, 'temperature')}; many film types end at {limit}, others sooner"
    if film > ratings.ZERO_CELSIUS:
        hot = f"go beyond {limit}, where many film types end; others end sooner"
    why = "" if found.verdict == "pass" else " That is over half."
    if found.danger:
        why = f" Danger: {found.danger}"
    ends = "".join(
        f" The {name} stands at {write(value, of)}, an end of this explorer: a number beyond it is "
        "cut to it."
        for name, of, value, low_and_high in (
            ("power", "power", watts, (LEAST_WATTS, MOST_WATTS)),
            ("air", "temperature", ambient_celsius, (COLDEST, HOTTEST)),
        )
        if value in low_and_high
    )
    return svg, f"{said}{why} Its film would {hot}.{ends}"


def _open_on(supply):
    """Open on the worked example of the lesson: its heat at the highest mains, its rating."""
    loss = operating_point("series_diode", mains.highest(supply), ohms=EXAMPLE_OHMS).resistor_watts
    sizes = {write(watts, "power"): watts for watts in ratings.COMMON_WATTS}
    return heat, (
        Slider("watts", "Power in W", LEAST_WATTS, MOST_WATTS, 0.01, round(loss, 3)),
        Slider("ambient_celsius", "Air around the part in °C", COLDEST, HOTTEST, 5.0, 40.0),
        Choice("rated_watts", "Rating of the part", sizes, rules.rating_for(loss)),
    )


EXPLORER = Explorer(
    _open_on,
    (
        "Warm the air until the verdict changes. How far is that from the air beside a hot pot?",
        "Find the smallest rating that passes with your power at 100 °C.",
        "Set the power to the rating at 70 °C. What does the film reach, and would you want "
        "plastic or wax near it?",
    ),
    "Danger: a part that is within its rating can still burn skin and soften plastic, and on the "
    "mains it is live: never feel for warmth. Watch the film temperature, not only the "
    "verdict. And the verdict is for sound parts: when one of two in series shorts, the other "
    "takes four times its heat.",
)
