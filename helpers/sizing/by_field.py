"""A brief field by field, as people type it into a form: its texts, and what is wrong beside which.

Which fields there are, and what each is, stands in `brief` alone.
"""

from helpers.sizing.brief import FIELDS, GIVEN_BY, NEVER_GUESSED, Brief, key_of
from helpers.sizing.typed import BriefError, read_one, write_one

_YES = {"yes": True, "no": False}
_OTHERS = set(GIVEN_BY) - {Brief.dimmer_given_by}  # under which no setting can be left out


def typed_of(brief):
    """Return each field of a brief as it is typed into a form, '' for what it left out.

    Parameters
    ----------
    brief : brief.Brief

    Returns
    -------
    typed : dict of str
        By the names of `FIELDS`; `read_all` reads the same brief from it.

    Examples
    --------
    >>> typed = typed_of(Brief(bin_ratings=(0.4, 1.0)))
    >>> typed["heater_power"], typed["bin_ratings"], typed["use_by_others"]
    ('90 W', '0.4 W; 1 W', 'yes')
    """
    typed = {}
    for each in FIELDS:
        value, kind = getattr(brief, each.name), brief.kind_of(each.name)
        if isinstance(value, bool):
            text = "yes" if value else "no"
        elif isinstance(value, tuple):
            text = "; ".join(write_one(one, kind[0]).strip('"') for one in value)
        else:
            text = write_one(value, kind).strip('"')
        typed[each.name] = "" if each.name in brief.left_out else text
    return typed


def read_all(typed):
    """Return the brief of a form, or what is wrong beside each field.

    Parameters
    ----------
    typed : dict of str
        Texts by the names of `FIELDS`; '' or no text is left out, as in a file.

    Returns
    -------
    brief : brief.Brief or None
        None if a field cannot be used.
    wrong : dict of str
        Of each such field what was read, and what to write.

    Examples
    --------
    >>> read_all({"heater_power": "ninety"})[1]["heater_power"].partition(". ")[0]
    "Read as 'ninety'"
    >>> read_all({"heater_power": "60 W"})[0].heater_power
    60.0
    """
    texts = {each.name: str(typed.get(each.name, "")).strip() for each in FIELDS}
    given_by = texts["dimmer_given_by"] or Brief.dimmer_given_by
    read, wrong = {}, {}
    for each in FIELDS:
        if text := texts[each.name]:
            try:
                read[each.name] = _read(each, text, given_by)
            except BriefError as error:
                wrong[each.name] = str(error)
        elif each.metadata["kind"] == "setting" and given_by in _OTHERS:
            such = "20 %" if given_by == "heat" else "60 V"
            wrong[each.name] = f"Nothing stands here yet. Type it by {given_by}, such as {such}."
    left_out = tuple(name for name, text in texts.items() if not text)
    brief = None
    if not wrong:
        unknown = {name: "unknown" for name in NEVER_GUESSED if name in left_out}
        try:
            brief = Brief(**unknown | read, left_out=left_out)
        except BriefError as error:
            named = (name for name in texts if str(error).startswith(f"{key_of(name)} was "))
            wrong[next(named)] = str(error)
    return brief, {name: _beside(text, name) for name, text in wrong.items()}


def _read(each, text, given_by):
    sort = each.metadata["kind"]
    if sort == "setting":
        sort = GIVEN_BY.get(given_by, "angle")
    return read_one(sort, parted(sort, text), key_of(each.name))


def parted(sort, text):
    """Return a text as a file holds it: yes or no as such, a list parted at its semicolons."""
    if sort == "yes":
        return _YES.get(text.strip().lower(), text)
    return [one.strip() for one in text.split(";")] if isinstance(sort, list) else text


def _beside(message, name):
    return message.replace(f"{key_of(name)} was read as", "Read as")
