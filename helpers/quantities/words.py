"""The words around a number, such as “about 342 V peak”: taken off, kept and shown again.

Knows a fixed list of words; must never know what a number is worth.
"""

import re

MEASURES = ("peak", "rms", "mean", "each", "total")
_FRONT = ("about", "exactly", "at least", "at most", "±")
_FORMS = {
    "about": "about, approximately, approx., approx, around, roughly, circa, ca., ca, or so, ~",
    "exactly": "exactly, precisely",
    "at least": "at least, minimum, or more, ≥",
    "at most": "at most, or less, ≤",
    "±": "±, plus or minus, to either side, either side",
    "AC": "ac, a.c., a.c",
    "DC": "dc, d.c., d.c",
    "peak": "peak, pk., pk, crest",
    "rms": "rms, r.m.s., r.m.s",
    "mean": "mean, average, avg., avg",
    "each": "each, apiece, per resistor, per part",
    "total": "total, in total, in all, altogether",
}
_WORDS = {form: word for word, forms in _FORMS.items() for form in forms.split(", ")}
_ANY = "|".join(re.escape(form) for form in sorted(_WORDS, key=len, reverse=True))
_WORDS["p"] = "peak"  # only right behind its unit, as in Vp: alone it is pico
_FIRST = re.compile(rf"(?:the )?({_ANY})(?![a-z])(?: value)?(?: of(?![a-z]))? *", re.I)
_LAST = re.compile(rf"[ ,_(]*(?:(?<![a-z])({_ANY})|(?<=[vawiu_])({_ANY}|p))(?: value)?\)?$", re.I)
_SPREAD = re.compile(r"(?<=.) *± *([0-9]+(?:[.,][0-9]+)?) ?(%|[kmµ]?[VAWΩ]|)$")
_EQUALS = re.compile(r"[=:]|(?=[~≥≤])|\bis ")
_WRAPS = ("()", "[]", '""', "''")


def unworded(typed):
    """Take the words off.

    Returns
    -------
    label : str
        What stood before an equals sign or the like, its words taken off too.
    bare : str
        The rest, number and unit.
    before, after : tuple of str
        The words, as they are shown around the number.
    """
    typed = typed.replace(">=", "≥").replace("<=", "≤").replace("+/-", "±")
    typed = typed.replace("+-", "±").removesuffix(".")
    while typed[:1] + typed[-1:] in _WRAPS:
        typed = typed[1:-1].strip().removesuffix(".")
    equals = _EQUALS.search(typed)
    if not equals:
        return "", *_stripped(typed, (), ())
    label = typed[: equals.start()].removeprefix("the ").removeprefix("The ").strip()
    label, before, after = _stripped(label, (), ())
    return label.strip(" _").lower(), *_stripped(typed[equals.end() :].strip(), before, after)


def _stripped(typed, before, after):
    while True:
        if found := _FIRST.match(typed):
            typed, word = typed[found.end() :], _WORDS[found[1].lower()]
        elif found := _LAST.search(typed):
            typed, word = typed[: found.start()], _WORDS[(found[1] or found[2]).lower()]
        elif "±" in typed and (found := _SPREAD.search(typed)):
            typed, word = typed[: found.start()], f"± {found[1]} {found[2]}".strip()
        else:
            return typed, before, after
        before += (word,) * (word in _FRONT)
        after += (word,) * (word not in (*_FRONT, *after))
