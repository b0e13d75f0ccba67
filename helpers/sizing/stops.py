"""Need it be built at all, and what forbids it at once: asked before any part is sized."""

from helpers.sizing.rules import Finding, judge

LONG_LOAD = 0.8
"""Share of a dimmer's rating that a heater may take for hours: common practice, no source [-]."""
SOCKET_AMPS = (16.0, 15.0)
"""Most that a household plug carries, from 180 V up and below: common practice, no source [A]."""
SWITCHES_NOTHING = (
    "A light switches nothing off. What does: the plug pulled from the socket, a switch that parts "
    "both wires, a plug-in timer or thermostat."
)
_PRACTICE = "Common practice, no source."
_HOT_DIMMER = "a dimmer that carries too much gets hot enough to start a fire."
#: Where the questions on need end, the first that fits: when, and with what.
ENDS = {
    "person": (
        "fixed wiring, a heater that may not stay at full power, a dimmer too small for it, or "
        "nobody knows", "at a skilled person",
    ),
    "left on": (
        "it is left on",
        "at a plug-in timer made for the heater's watts: it switches off what is forgotten",
    ),
    "too hot": (
        "it gets too hot",
        "at a plug-in thermostat made for the heater's watts: it holds the temperature",
    ),
    "indicator": (
        "others than its builder use it",
        "at an indicator that is certified or conforming for this use, fitted by somebody entitled "
        "to",
    ),
    "on": ("none of these", "here: read on"),
}  # fmt: skip
#: The fields of a brief that are asked for it.
ASKED = (
    "use_connection", "heater_power", "heater_full_power_safe", "dimmer_edge", "dimmer_rated",
    "use_trouble", "use_by_others",
)  # fmt: skip
_READ_ON = (
    "Who still wants to plan the light reads on: lesson 01 first, then those after it, in order. "
)


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
    forbidden = stops(brief)
    if forbidden:
        why = "What stops this brief is named with it. "
        return _said("need", "fail", _end("person") + why + SWITCHES_NOTHING)
    end = "indicator" if brief.use_by_others else "on"
    if brief.use_trouble in ENDS:
        end = brief.use_trouble
    return _said("need", "caution", _end(end) + _READ_ON + SWITCHES_NOTHING)


def _end(name):
    return f"The questions end {ENDS[name][1]}. "


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
    found = []
    if brief.use_connection != "plug-in":
        unknown = " Nobody knows yet whether this one is." * (brief.use_connection == "unknown")
        found.append(_said(
            "fixed wiring", "fail",
            f"Fixed wiring is for a skilled person whom the local rules entitle.{unknown}",
            "a wire behind a wall plate stays live when a light says off.", "Local rules.",
        ))  # fmt: skip
    if brief.heater_full_power_safe != "yes":
        found.append(_said(
            "full power", "fail",
            "A heater behind a dimmer has to be safe at full power, or needs a cut-out of its own, "
            "fitted by a skilled person. Read its manual; without one it counts as not safe.",
            "a dimmer that fails short leaves the heater at full power. What it heats can catch "
            "fire, as wax does.",
        ))  # fmt: skip
    amps, most = brief.heater_power / brief.supply_volts, SOCKET_AMPS[brief.supply_volts < 180.0]
    if judge(amps, most):
        found.append(Finding(
            "socket load", "fail", amps, most, "A",
            f"The heater takes {amps:.3g} A. A household plug carries {most:g} A at most: what "
            "takes more is wired by a skilled person whom the local rules entitle.",
            _PRACTICE, danger="a plug that carries too much gets hot enough to start a fire.",
        ))  # fmt: skip
    if brief.cuts and brief.dimmer_rated is None:
        found.append(_said(
            "dimmer load", "fail",
            "Nobody has said yet what the dimmer is made for, so it counts as too small for the "
            "heater. Read its label; without one, or in doubt, a competent person decides.",
            _HOT_DIMMER,
        ))  # fmt: skip
    elif brief.cuts:
        share = LONG_LOAD if brief.heater_long_use else 1.0
        limit = share * brief.dimmer_rated
        if judge(brief.heater_power, limit):
            found.append(Finding(
                "dimmer load", "fail", brief.heater_power, limit, "W",
                f"The heater takes {brief.heater_power:g} W. A dimmer for {brief.dimmer_rated:g} W "
                f"may carry {limit:g} W{' for hours' * brief.heater_long_use}. Take a larger "
                "plug-in one, made for heaters.",
                _PRACTICE, danger=_HOT_DIMMER,
            ))  # fmt: skip
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
        return _said(
            "capacitor dropper", "caution",
            "Its droppers are computed and compared, no more: a skilled person designs one. All of "
            "it is live, and a bleeder that opens leaves a charge on the pins of the plug.",
        )  # fmt: skip
    return _said(
        "capacitor dropper", "fail",
        "Listed, not sized: behind a dimmer that cuts the wave, a capacitor dropper takes a pulse "
        "of amps in each half-cycle.",
        "its surge resistor overheats, and when it fails short the whole mains meets the LED.",
    )  # fmt: skip


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
    least = brief.dimmer_least if brief.cuts else 0.0
    verdict = "caution" if judge(brief.heater_power, least, least=True) else "pass"
    guessed = ", taken since nobody gave it" * ("dimmer_least" in brief.left_out and brief.cuts)
    reason = (
        f"The heater takes {brief.heater_power:g} W; its dimmer works with {least:g} W and more"
        f"{guessed}. "
        + ("Below that it may misfire, flicker or stay on." if verdict == "caution" else "")
    )
    source = "The dimmer's own sheet."
    return Finding("least load", verdict, brief.heater_power, least, "W", reason.strip(), source)


def _said(rule, verdict, reason, danger="", source=_PRACTICE):
    return Finding(rule, verdict, 0.0, 0.0, "-", reason, source, danger=danger)
