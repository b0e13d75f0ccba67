"""A brief as a text of TOML, and field by field as it is typed: in, out, and what is wrong with it.

What the fields are is in `fields`.
"""

import re
import tomllib

from helpers.sizing.fields import FIELDS, GIVEN_BY, NEVER_GUESSED, Brief, key_of
from helpers.sizing.typed import BriefError, nobody_knows, plain, read_one, shown, write_one

_SETTINGS = ("dimmer_lowest", "dimmer_highest")
#: The settings of the workshop behind a trailing edge, whose angles run the other way.
_TRAILING = {"dimmer_lowest": 54.0, "dimmer_highest": 180.0}
_PERCENT = " In per cent there are two ways: knob, the mark on it, and heat, of the whole."
_NO_TABLE = "Its fields stand on lines of their own below the line [{}]."
_MOST_BYTES = 65536
_NOBODY_KNOWS = {
    each.name: read_one(each.metadata["kind"], "unknown", each.name)
    for each in FIELDS if each.name in NEVER_GUESSED
}  # fmt: skip
#: What else is taken where nobody knows, the safer way; of a list, what each of it is.
SAFER = {
    each.name: read_one(each.metadata["kind"], each.metadata["safer"], each.name)
    for each in FIELDS if "safer" in each.metadata
}  # fmt: skip
_PAIRS = {"bin_ratings": "bin_volts", "bin_volts": "bin_ratings"}


def _way(typed):
    """How settings are given, the workshop's way where it cannot be read, and behind which edge."""
    given_by, edge = (
        str(typed.get(name, "")).strip().lower() for name in ("dimmer_given_by", "dimmer_edge")
    )
    return given_by if given_by in GIVEN_BY else Brief.dimmer_given_by, edge


def such_setting(name, typed):
    """Return an example of a setting in the way that it is given: '20 %', '126°'.

    Parameters
    ----------
    name : str
        dimmer_lowest or dimmer_highest.
    typed : dict
        Fields by name, as a form or a file holds them.

    Examples
    --------
    >>> such_setting("dimmer_lowest", {"dimmer_given_by": "heat"})
    '20 %'
    """
    (given_by, edge), lowest = _way(typed), name == _SETTINGS[0]
    if given_by == "angle":
        trailing = _TRAILING if edge == "trailing" else {}
        return f"{trailing.get(name, getattr(Brief, name)):g}°"
    if GIVEN_BY.get(given_by) == "percent":
        return ("20 %" if given_by == "heat" else "30 %") if lowest else "100 %"
    of, sort = ("heater_power", "power") if given_by == "power" else ("supply_volts", "voltage")
    try:
        whole = read_one(sort, typed.get(of) or getattr(Brief, of), "")
    except BriefError:
        whole = getattr(Brief, of)
    return write_one((0.2 if sort == "power" else 0.5) ** lowest * whole, sort).strip('"')


def tables(text):
    """Return what a TOML text holds, as a dictionary of sections; `BriefError` if it is no TOML."""
    if len(text) > _MOST_BYTES:
        raise BriefError(f"The brief has more than {_MOST_BYTES} characters. Write a short one.")
    try:
        # Some editors put a mark before the first letter.
        text = text if isinstance(text, str) else text.decode("utf-8-sig")
        return tomllib.loads(text.removeprefix("\ufeff"))
    except UnicodeDecodeError:
        why = "it is not stored as UTF-8. Save it as UTF-8 in your editor"
    except RecursionError:
        why = "it is nested too deep"
    except ValueError as error:
        why = _no_toml(text, error)
    raise BriefError(f"The brief is no TOML: {why}. See `size --example` for one.")


def _no_toml(text, error):
    """Which line is none, and what one looks like."""
    found, lines = re.search(r"\(at (?:line (\d+)|end)", str(error)), text.rstrip().splitlines()
    if not found:
        return "it holds a number of thousands of digits"
    line = min(int(found[1] or len(lines)), len(lines))
    read = f"line {line} was read as {plain(lines[line - 1])}"
    if "overwrite" in str(error) or "twice" in str(error):
        return f"{read}. It names what stands above already: each stands once"
    return (
        f"{read}. A line is a section such as [heater], or a field with its value in quotation "
        'marks, such as power = "90 W"'
    )


def from_toml(text):
    """Return the brief that a TOML text holds.

    Parameters
    ----------
    text : str or bytes
        Sections and keys as `to_toml` writes them.

    Returns
    -------
    brief : Brief

    Raises
    ------
    BriefError
        If it is no TOML, a section or field is unknown, or a value impossible; the message names
        the field, what was read and what to write.

    Notes
    -----
    Text is read by the grammar of `helpers.quantities` and never evaluated. What it leaves out is
    as in the workshop's, but for `NEVER_GUESSED`, which is then unknown; `left_out` names it all.
    Of what it calls unknown the safer is taken, `SAFER`; `unknown` names what cannot say so itself.

    References
    ----------
    TOML 1.0.

    Examples
    --------
    >>> from_toml('[led]\\ncolour = "green"\\ncount = 2').led_volts
    6.2
    >>> from_toml('[lamp]\\ncolour = "green"')
    Traceback (most recent call last):
    ...
    helpers.sizing.typed.BriefError: The section [lamp] is not known. There are: use, supply, \
heater, dimmer, led, neon, seen, box, bin.
    """
    return from_tables(tables(text))


def from_tables(held):
    """Return the brief that sections, as `tables` returns them, hold; as `from_toml` does."""
    known = [each.name for each in FIELDS]
    sections = dict.fromkeys(name.partition("_")[0] for name in known)
    typed = {}
    for section, table in held.items():
        if section not in sections:
            why = f"The section [{plain(section)}] is not known. "
            if not isinstance(table, dict):
                why = f"{plain(section)} stands in no section. "
            raise BriefError(f"{why}There are: {', '.join(sections)}.")
        if not isinstance(table, dict):
            raise BriefError(f"{section} was read as {shown(table)}. {_NO_TABLE.format(section)}")
        for key, value in table.items():
            name = f"{section}_{key}"
            if name not in known:
                keys = [n.partition("_")[2] for n in known if n.startswith(f"{section}_")]
                raise BriefError(
                    f"{plain(key)} in [{section}] is not known. There are: {', '.join(keys)}."
                )
            typed[name] = value
    brief, wrong = read_fields(typed)
    if wrong:
        raise BriefError(next(iter(wrong.values())))
    return brief


def read_fields(typed):
    """Return the brief of typed fields, or what is wrong with each that cannot be used.

    Parameters
    ----------
    typed : dict
        Values by the names of `FIELDS`, as a file holds them; what is left out has no name here.

    Returns
    -------
    brief : Brief or None
        None if a field cannot be used.
    wrong : dict of str
        Of each such field what was read, and what to write.
    """
    read, wrong, unknown = {}, {}, []
    given_by, edge = _way(typed)
    for each in FIELDS:
        name, sort = each.name, each.metadata["kind"]
        if sort == "setting":
            sort = GIVEN_BY[given_by]
        try:
            if name not in typed:
                continue
            if not nobody_knows(typed[name]):
                read[name] = read_one(sort, typed[name], key_of(name), each.metadata["bare"])
            elif "unknown" in sort or sort[0] == "?":
                read[name] = read_one(sort, "unknown", key_of(name))
            else:
                unknown.append(name)
        except BriefError as error:
            wrong[name] = str(error)
            if name in _SETTINGS and name in typed:
                wrong[name] += f" By {given_by} it is such as {such_setting(name, typed)}."
                if "%" in str(typed[name]) and GIVEN_BY.get(given_by) != "percent":
                    wrong[name] += _PERCENT
    left_out = tuple(each.name for each in FIELDS if each.name not in typed)
    taken = {name: value for name, value in _NOBODY_KNOWS.items() if name in left_out}
    taken |= {name: SAFER[name] for name in unknown if name in SAFER}
    for name in _PAIRS.keys() & taken:
        other = _PAIRS[name]
        taken[name] *= 1 if other in unknown else len(read.get(other, Brief.bin_ratings))
    try:
        if not wrong:
            if edge != "none":
                taken |= _settings_taken(typed, read)
            return Brief(**taken | read, left_out=left_out, unknown=tuple(unknown)), {}
    except BriefError as error:
        wrong[error.field] = str(error)
    return None, wrong


def _settings_taken(typed, read):
    """What is taken for a setting that is open: the usual, and no brighter than the highest."""
    given_by, edge = _way(typed)
    taken = {
        name: read_one(GIVEN_BY[given_by], such_setting(name, typed), "")
        for name in _SETTINGS if name not in read
    }  # fmt: skip
    if "dimmer_lowest" in taken and "dimmer_highest" in read:
        darker = max if given_by == "angle" and edge != "trailing" else min
        taken["dimmer_lowest"] = darker(taken["dimmer_lowest"], read["dimmer_highest"])
    return taken


def to_toml(brief, comments=False):
    """Return a brief as TOML text, without what nobody gave.

    Parameters
    ----------
    brief : Brief
        What to write.
    comments : bool
        Whether each field says what it is [-].

    Returns
    -------
    text : str
        `from_toml` reads the same brief from it, and takes the same for what was left out.

    Examples
    --------
    >>> to_toml(Brief()).splitlines()[:2]
    ['[use]', 'connection = "plug-in"']
    >>> to_toml(from_toml('[heater]\\npower = "60 W"'))
    '[heater]\\npower = "60 W"\\n'
    """
    lines, last = [], None
    for each in FIELDS:
        if each.name in brief.left_out:
            continue
        section, _, key = each.name.partition("_")
        if section != last:
            lines += ["", f"[{section}]"] if last else [f"[{section}]"]
            last = section
        if comments:
            lines.append(f"# {each.metadata['called']}: {each.metadata['says']}")
        lines.append(f"{key} = {brief.typed(each.name)}")
    return "\n".join(lines) + "\n"
