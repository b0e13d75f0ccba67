"""A brief field by field, as people type it into a form: its texts, and what is wrong beside which.

Which fields there are, and what each is, stands in `brief` alone.
"""

from helpers.sizing.brief import FIELDS, key_of, read_fields
from helpers.sizing.typed import write_one

_YES = {"yes": True, "no": False}


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
    >>> from helpers.sizing.brief import Brief
    >>> typed = typed_of(Brief(bin_ratings=(0.4, 1.0)))
    >>> typed["heater_power"], typed["bin_ratings"], typed["use_by_others"]
    ('90 W', '0.4 W; 1 W', 'yes')
    """
    typed = {}
    for each in FIELDS:
        value, kind = getattr(brief, each.name), brief.kind_of(each.name)
        if each.name in brief.unknown:
            text = "unknown"
        elif isinstance(value, bool):
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
    kinds = {each.name: each.metadata["kind"] for each in FIELDS}
    brief, wrong = read_fields({n: parted(kinds[n], text) for n, text in texts.items() if text})
    return brief, {name: _beside(text, name) for name, text in wrong.items()}


def parted(sort, text):
    """Return a text as a file holds it: yes or no as such, a list parted at its semicolons."""
    if sort == "yes":
        return _YES.get(text.strip().lower(), text)
    return [one.strip() for one in text.split(";")] if isinstance(sort, list) else text


def _beside(message, name):
    for there, here in (
        ("was left out. ", "Nothing stands here yet. "),
        ("was left out and", "Left open and"), ("was read", "Read"),
    ):  # fmt: skip
        message = message.replace(f"{key_of(name)} {there}", here)
    return message
