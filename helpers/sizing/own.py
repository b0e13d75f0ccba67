"""A brief of one's own that is still being written, and the parts that were chosen for it.

Knows no learner and no file.
"""

import json

from helpers import quantities
from helpers.sizing import verdicts
from helpers.sizing.brief import FIELDS, from_tables, tables, to_toml
from helpers.sizing.by_field import parted
from helpers.sizing.typed import BriefError

_CHOSEN = "chosen"
CHOSEN, FIRST = "parts as chosen", "parts that the ranking puts first"
"""Whose parts a plan has, in words."""


def begun(text, supply):
    """Return the brief that a begun text comes to.

    Parameters
    ----------
    text : str
        TOML; '' where nothing has been written yet.
    supply : mains.Supply
        Taken as long as the text names none of its own.

    Returns
    -------
    brief : brief.Brief
        `left_out` names what is still open.

    Raises
    ------
    BriefError
        If it cannot be used.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> brief = begun('[heater]\\npower = "60 W"', mains.Supply(120.0, 60.0))
    >>> brief.heater_power, brief.supply.name, brief.led_colour in brief.left_out
    (60.0, '120 V 60 Hz', False)
    """
    return _on(supply, _parted(text)[0])


def _parted(text):
    """What a text holds of a brief, and the parts that were chosen for it, '' if none were."""
    held = tables(text)
    chosen = held.pop(_CHOSEN, {"parts": ""})
    if not isinstance(chosen, dict) or not isinstance(chosen.get("parts"), str):
        raise BriefError(f'[{_CHOSEN}] needs one line: parts = "bridge; 47 kΩ; 4; 0.6 W; 300 V".')
    return held, chosen["parts"]


def planned(text, supply=None, words=(), ranked=False):
    """Return the plan of a text: of the parts that were chosen for it, if any were.

    Parameters
    ----------
    text : str or bytes
        TOML; parts may stand in it as `whole` writes them.
    supply : mains.Supply, optional
        As for `begun`; the workshop's if left out.
    words : sequence of str
        Circuit, each resistor, how many, rating, volts of the type: parts that go before.
    ranked : bool
        Whether all candidates are wanted, whatever was chosen [-].

    Returns
    -------
    plan : verdicts.Plan

    Raises
    ------
    ValueError
        If brief or parts cannot be used.

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> text = to_toml(Brief())
    >>> plan = planned(with_parts(text, None, ("bridge", 47e3, 4, 0.6, 300.0)))
    >>> plan.size, plan.best(1)[0].ohms_each, planned(text).only
    (1, 47000.0, None)
    """
    held, chosen = _parted(text)
    brief = _on(supply, held) if supply else from_tables(held)
    words = words or [each.strip() for each in chosen.split(";") if chosen and not ranked]
    if not words:
        return verdicts.plan(brief)
    kinds = ("resistance", "ratio", "power", "voltage")
    if len(words) != 5:
        raise BriefError(f"{len(words)} parts were read of 5: circuit, ohms, number, watts, volts.")
    parts = [quantities.read(*each).value for each in zip(words[1:], kinds, strict=True)]
    return verdicts.mine(brief, words[0], *parts)


def with_parts(text, supply, parts):
    """Return a begun text with the supply it is on, and the parts that were chosen for it.

    Parameters
    ----------
    text : str
        As for `begun`.
    supply : mains.Supply or None
        As for `planned`.
    parts : tuple or None
        Circuit, each resistor, how many, rating, volts of the type [-], [ohm], [-], [W], [V]; None
        leaves those that stand there.

    Returns
    -------
    text : str
        `planned` reads the same plan from it, wherever it lies.
    """
    held, chosen = _parted(text)
    if supply:
        held["supply"] = _label(supply) | held.get("supply", {})
    if parts:
        chosen = "{}; {:.12g} Ω; {:g}; {:.12g} W; {:.12g} V".format(*parts)
    if chosen:
        held[_CHOSEN] = {"parts": chosen}
    return _text(held)


def whole(plan):
    """Return brief and parts of a plan as a text from which `planned` makes it again."""
    brief, only = plan.brief, plan.only
    parts = only and (only[0], only[1][0], only[2][0], brief.bin_ratings[0], brief.bin_volts[0])
    return with_parts(to_toml(brief), None, parts)


def _label(supply):
    return {"volts": f"{supply.volts_rms:g} V", "hertz": f"{supply.hertz:g} Hz"}


def _on(supply, held):
    if isinstance(named := held.get("supply", {}), dict):
        held = held | {"supply": _label(supply) | named}
    return from_tables(held)


def with_typed(text, typed, supply):
    """Return a begun text with fields put in as people type them.

    Parameters
    ----------
    text : str
        As for `begun`.
    typed : dict
        By the names of `brief.FIELDS`; what is '' or None is open again. A list parted by
        semicolons, and yes or no, will do.
    supply : mains.Supply
        As for `begun`.

    Returns
    -------
    text : str
        Without parts: those were chosen for the brief as it was.

    Raises
    ------
    BriefError
        If a name is unknown or a value cannot be used; then nothing is put in.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> with_typed("", {"heater_power": "60 W"}, mains.Supply(120.0, 60.0))
    '[heater]\\npower = "60 W"\\n'
    """
    begun(text, supply)
    held, sorts = _parted(text)[0], {each.name: each.metadata["kind"] for each in FIELDS}
    for name, value in typed.items():
        section, _, key = name.partition("_")
        table = held.setdefault(section, {})
        if value is None or not str(value).strip():
            table.pop(key, None)
        else:
            table[key] = parted(sorts.get(name), value) if isinstance(value, str) else value
    _on(supply, held)
    return _text(held)


def _text(held):
    return "".join(
        f"[{section}]\n" + "".join(f"{key} = {_written(value)}\n" for key, value in table.items())
        for section, table in held.items() if table
    )  # fmt: skip


def _written(value):
    """Write a value; what JSON writes of one is TOML as well."""
    return json.dumps(value, ensure_ascii=False)
