"""Need it be built at all, and what forbids it at once: asked before any part is sized."""

from helpers.quantities import write_as
from helpers.sizing.fields import COMPARED_ALONE, FIELDS, called
from helpers.sizing.rules import HELD, judge, said

LONG_LOAD = 0.8
"""Share of a dimmer's rating that a heater may take for hours: common practice, no source [-]."""
SOCKET_AMPS = (10.0, 15.0)
"""Least of the usual plugs, from 125 V up and below: AS/NZS 3112, NBR 14136 (from memory) [A]."""
SWITCHES_NOTHING = (
    "A light switches nothing off. What does: the plug pulled from the socket, a switch that parts "
    "both wires, a plug-in timer or thermostat."
)
#: Where the questions on need end, the first that fits: when, and with what.
ENDS = HELD["ends"]
#: The fields of a brief that are asked for it.
ASKED = (
    "use_connection", "heater_power", "heater_full_power_safe", "dimmer_edge", "dimmer_rated",
    "use_trouble", "use_by_others",
)  # fmt: skip
#: Without these no figure of a plan says anything: where nobody knows one, the plan stops.
NOT_WITHOUT = ("supply_volts", "supply_hertz", "heater_power", "dimmer_lowest", "dimmer_highest")
_ABOUT = {
    "use": "use", "supply": "supply", "heater": "heater", "dimmer": "dimmer", "led": "LED",
    "seen": "the place where it is seen", "box": "box", "bin": "resistors and diodes",
}  # fmt: skip
_READ_ON = "Whoever plans the light takes lesson 01 first, then those after it, in order. "


def need(brief):
    """Return whether a light need be built at all: the first verdict of every brief.

    Parameters
    ----------
    brief : brief.Brief
        Its answers on use, heater and watts are the questions.

    Returns
    -------
    finding : rules.Finding
        Fail where a skilled person comes first; else a caution, for something bought may do.

    Notes
    -----
    Plug-in or fixed? Safe at full power? Within its dimmer? What keeps going wrong? Used by others?

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> need(Brief()).reason.split(". ")[0]
    "The questions end at a plug-in timer made for the heater's watts: it switches off what is \
forgotten"
    """
    if stops(brief):
        end, verdict, then = "person", "fail", "What stops this brief is named with it. "
    else:
        end, verdict, then = brief.use_trouble, "caution", _READ_ON
    if end not in ENDS:
        end = "indicator" if brief.use_by_others else "on"
    return said("need", verdict, end=ENDS[end]["then"], then=then, switches=SWITCHES_NOTHING)


def stops(brief):
    """Return what forbids the build before any part is sized, each with its danger.

    Parameters
    ----------
    brief : brief.Brief

    Returns
    -------
    findings : list of rules.Finding
        Fails alone; empty if nothing forbids it.

    Notes
    -----
    What nobody knows counts as the worse of both.

    References
    ----------
    Local rules decide who may work on fixed wiring. The share of a dimmer's rating: common
    practice, no source.

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> [stop.rule for stop in stops(Brief(heater_power=250.0, use_connection="fixed"))]
    ['fixed wiring', 'dimmer load']
    """
    found, watts = [], brief.heater_power
    unknown = [n for n in NOT_WITHOUT if n in brief.unknown and (brief.cuts or n[:6] != "dimmer")]
    if unknown:
        found.append(said("not known", "fail", fields=", ".join(map(called, unknown))))
    if brief.use_connection != "plug-in":
        unknown = " Nobody knows yet whether this one is." * (brief.use_connection == "unknown")
        found.append(said("fixed wiring", "fail", unknown=unknown))
    if brief.heater_full_power_safe != "yes":
        found.append(said("full power", "fail"))
    amps, most = watts / brief.supply_volts, SOCKET_AMPS[brief.supply_volts < 125.0]
    if judge(amps, most):
        found.append(said("socket load", "fail", amps, most, amps=amps, most=most))
    if brief.cuts and brief.dimmer_rated is None:
        found.append(said("dimmer unknown", "fail"))
    elif brief.cuts:
        limit = brief.dimmer_rated * (LONG_LOAD if brief.heater_long_use else 1.0)
        words = {"rated": brief.dimmer_rated, "hours": " for hours" * brief.heater_long_use}
        if judge(watts, limit):
            found.append(
                said("dimmer load", "fail", watts, limit, watts=watts, most=limit, **words)
            )
    return found


def capacitor_dropper(brief):
    """Return why no capacitor dropper is sized for a brief.

    Parameters
    ----------
    brief : brief.Brief

    Returns
    -------
    finding : rules.Finding
        A hard stop behind a dimmer that cuts the wave.

    References
    ----------
    `physics.capacitor_dropper`: each edge drives the crest through the surge resistor.

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> capacitor_dropper(Brief()).verdict
    'fail'
    """
    if not brief.cuts:
        return said("dropper on plain mains", "caution")
    return said("capacitor dropper", "fail")


def settings(brief):
    """Return what has to be said of the settings: one that is open, a knob, too many watts.

    Parameters
    ----------
    brief : brief.Brief

    Returns
    -------
    findings : list of rules.Finding
        Cautions alone; empty if there is nothing to say.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> settings(Brief())
    []
    """
    found, names = [], ("dimmer_lowest", "dimmer_highest") if brief.cuts else ()
    if still := [name for name in names if name in brief.left_out]:
        taken = " and ".join(f"the {called(n)} as {brief.told(n)}" for n in still)
        found.append(said("open setting", "caution", taken=taken))
    if brief.cuts and brief.dimmer_given_by == "knob":
        found.append(said("knob", "caution"))
    label = brief.heater_power
    for name in names if brief.dimmer_given_by == "power" else ():
        if name not in brief.unknown and (watts := getattr(brief, name)) > label:
            over, key = 100.0 * (watts / label - 1.0), called(name)
            shown = {"read": write_as(watts, "W", 3), "label": write_as(label, "W", 3)}
            found.append(said("above the label", "caution", key=key, over=over, **shown))
    return found


def not_yours(brief):
    """Return what has to be said before a ranking: on whose parts, and on what guesses, it stands.

    Parameters
    ----------
    brief : brief.Brief

    Returns
    -------
    findings : list of rules.Finding
        Cautions alone; empty where all was given.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> not_yours(Brief()), not_yours(Brief(left_out=("led_limit", "box_air")))[0].reason[:70]
    ([], "Fields that hold the workshop's parts and place, not yours: 2 of 43, o")
    """
    found, names = [], brief.workshops
    if names:
        about = " and ".join(dict.fromkeys(_ABOUT[n.partition("_")[0]] for n in names))
        about = about.replace(" and ", ", ", about.count(" and ") - 1)
        everything = len(FIELDS) - len(COMPARED_ALONE)
        words = {"count": len(names), "all": everything, "about": about}
        found.append(said("not yours", "caution", **words))
    known = [n for n in brief.unknown if n not in COMPARED_ALONE]
    if known:
        taken = "; ".join(f"{called(n)} {brief.told(n)}" for n in known)
        found.append(said("nobody knows", "caution", taken=taken))
    return found


def dimmer_least(brief):
    """Return whether the heater is load enough for its dimmer.

    Parameters
    ----------
    brief : brief.Brief

    Returns
    -------
    finding : rules.Finding
        A caution below the least load.

    References
    ----------
    The sheet of the dimmer.

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> dimmer_least(Brief()).verdict
    'pass'
    """
    watts, least = brief.heater_power, brief.dimmer_least if brief.cuts else 0.0
    low = bool(judge(watts, least, least=True))
    guessed = ", taken since nobody gave it" * ("dimmer_least" in brief.assumed and brief.cuts)
    below = " Below that it may misfire, flicker or stay on." * low
    return said(
        "least load", "caution" if low else "pass", watts, least, watts=watts, least=least,
        guessed=guessed, below=below,
    )  # fmt: skip
