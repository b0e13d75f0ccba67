"""Explorer: a power, a rating and the warm air around a resistor, and whether they go together."""

from helpers.figures.heat import rating
from helpers.physics import heat as warmth
from helpers.physics import ratings
from helpers.quantities import write
from helpers.sizing import rules
from helpers.widgets.explorers.knobs import Choice, Slider
from helpers.widgets.explorers.mains_side import in_short
from helpers.widgets.explorers.panel import Explorer


def heat(watts, rated_watts, ambient_celsius):
    """Show a power against what is left of a resistor's rating in warm air.

    Parameters
    ----------
    watts : float
        Power that the resistor turns into heat [W].
    rated_watts : float
        Rating on its sheet [W].
    ambient_celsius : float
        Temperature of the air around it [degC].

    Returns
    -------
    svg : str
    sentence : str
        What the picture shows, with its numbers and the verdict.

    References
    ----------
    As `rules.heat`: IEC 60115-1, derating; half of it while all is sound: common practice, no
    source.

    Examples
    --------
    >>> heat(0.2, 0.5, 40.0)[1].split(":")[0], heat(0.3, 0.5, 40.0)[1].split(":")[0]
    ('Pass', 'Fail')
    """
    found = rules.heat(watts, rated_watts, ambient_celsius)
    svg, said = in_short(rating(watts, rated_watts, ambient_celsius, found.verdict))
    film = warmth.final_celsius(watts, warmth.kelvin_per_watt_of(rated_watts), ambient_celsius)
    limit = write(ratings.ZERO_CELSIUS, "temperature")
    hot = f"reach about {write(film, 'temperature')}; its limit is {limit}"
    if film > ratings.ZERO_CELSIUS:
        hot = f"go beyond {limit}, its limit"
    why = "" if found.verdict == "pass" else " While all is sound, over half is too much."
    if found.danger:
        why = f" Danger: {found.danger}"
    return svg, f"{said}{why} Its film would {hot}."


def _open_on(_):
    sizes = {write(watts, "power"): watts for watts in ratings.COMMON_WATTS}
    return heat, (
        Slider("watts", "Power in W", 0.05, 5.0, 0.05, 0.3),
        Slider("ambient_celsius", "Air around the part in °C", 0.0, 150.0, 5.0, 40.0),
        Choice("rated_watts", "Rating of the part", sizes, 0.5),
    )


EXPLORER = Explorer(
    _open_on,
    (
        "Warm the air until the verdict changes. How far is that from the air beside a hot pot?",
        "Find the smallest rating that passes with your power at 100 °C.",
        "Set the power to the rating at 70 °C. What does the film reach, and would you want "
        "plastic near it?",
    ),
    "Danger: a part that is within its rating can still burn skin and soften plastic. Watch the "
    "film temperature, not only the verdict. And the verdict is for sound parts: when one of two "
    "in series shorts, the other takes four times its heat.",
)
