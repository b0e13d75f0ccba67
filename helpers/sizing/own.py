"""A brief of one's own that is still being written: as far as it goes, on one's own supply.

Knows no learner and no file.
"""

import json

from helpers.sizing.brief import FIELDS, from_tables, tables
from helpers.sizing.by_field import parted


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
    return _on(supply, tables(text))


def _on(supply, held):
    label = {"volts": f"{supply.volts_rms:g} V", "hertz": f"{supply.hertz:g} Hz"}
    if isinstance(named := held.get("supply", {}), dict):
        held = held | {"supply": label | named}
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
    held, sorts = tables(text), {each.name: each.metadata["kind"] for each in FIELDS}
    for name, value in typed.items():
        section, _, key = name.partition("_")
        table = held.setdefault(section, {})
        if value is None or not str(value).strip():
            table.pop(key, None)
        else:
            table[key] = parted(sorts.get(name), value) if isinstance(value, str) else value
    _on(supply, held)
    return "".join(
        f"[{section}]\n" + "".join(f"{key} = {_written(value)}\n" for key, value in table.items())
        for section, table in held.items() if table
    )  # fmt: skip


def _written(value):
    """Write a value; what JSON writes of one is TOML as well."""
    return json.dumps(value, ensure_ascii=False)
