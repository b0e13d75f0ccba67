"""A bench log: readings as people type them, and the CSV file that they are filled into.

Nothing that was typed is evaluated. Knows the names of rows; judges no reading.
"""

import csv
import io
import re
from math import floor, log10

from helpers import quantities
from helpers.bench.predictions import BENCH_METERS, Reading
from helpers.bench.report import named, should_be, unit_of
from helpers.bench.rows import COMPETENT
from helpers.sizing.typed import plain

OVERLOAD = ("ol", "0l", "o.l", "o.l.", "overload", "open")
"""What people write where the display shows an overload."""
_WORDS = {"dark": 0, "none": 0, "lit": 1, "one": 1, "both": 2, "two": 2}
# `1.750 V` and `1.020k` off a display are no thousands: a nought behind them makes that plain.
_OFF_A_DISPLAY = re.compile("^[+-]?[1-9][0-9]{0,2}[.,][0-9]{3}(?= *[VWkKM]|$)")
_COLUMNS = ("row", "where", "with", "should be", "reading")
_MOST_BYTES, _MOST_ROWS = 65536, 200
_EXAMPLES = {"resistance": "99.2 kΩ, or OL", "voltage": "11.8 V, or OL", "power": "57 W"}
_COUNTS = BENCH_METERS["ohms"].counts
OF = "Log of: "
"""Before the name of its build."""
_HOW = "Print one to fill in with: bench BRIEF.toml --blank"


class BenchLogError(ValueError):
    """A log cannot be used; the message names the row, what was read and what to write."""


def blank(rows, notes=(), build=None):
    """Return the CSV text to fill in: every row that is not a competent person's.

    Parameters
    ----------
    rows : list of predictions.Row
    notes : sequence of str
        Lines to stand above, each after a hash; `from_csv` passes them over.
    build : world.Build, optional
        Whose log it is; then one more line names it.

    Returns
    -------
    text : str

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> from helpers.bench.predictions import Build, table
    >>> text = blank(table(Build(Brief(), "bridge", 100e3, 2)), ["Plan only."])
    >>> text.splitlines()[0], text.splitlines()[2].replace("\\xa0", " ")
    ('# Plan only.', 'R1,"across resistor 1, counted from the live lead",ohms,94.1 kΩ to 106 kΩ,')
    """
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    notes = [*notes, OF + named(build)] if build else notes
    writer.writerows([f"# {note}"] for note in notes)
    writer.writerow(_COLUMNS)
    for row in rows:
        if row.by != COMPETENT:
            writer.writerow([row.name, row.where, row.meter, should_be(row), ""])
    return out.getvalue()


def read_one(typed, row):
    """Return one reading in SI, infinite for an overload.

    Parameters
    ----------
    typed : str, int or float
        As written off the display, such as `99.2k`, `-0.55 V` or `OL`. Text without a unit is in
        the unit of the row; a number is one of a program [SI].
    row : predictions.Row
        What it is a reading of.

    Returns
    -------
    reading : predictions.Reading
        With its last place: of `20.7 V` that is 0.1 V, of `20.70 V` 0.01 V. Nothing, and what is
        no text, has the place of the meter. Of a whole number, noughts beyond the third figure
        only fill up: a meter of three digits shows 101 kΩ for `101000` [SI].

    Raises
    ------
    BenchLogError
        If it is no such reading.

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> from helpers.bench.predictions import Build, table
    >>> row = table(Build(Brief(), "bridge", 100e3, 2))[0]
    >>> read_one("99.2k", row), read_one("99.2k", row).place, read_one("OL", row)
    (99200.0, 100.0, inf)
    >>> read_one("99.2", row), read_one("99.2", row).bare
    (99200.0, '99.2')
    """
    word = str(typed).strip().lower()
    try:
        if row.unit == "count":
            if word not in _WORDS and not (word.isdecimal() and word.isascii() and len(word) < 4):
                raise ValueError("Write 1 for one LED that lights, 0 for none.")
            return Reading(_WORDS[word] if word in _WORDS else int(word))
        if word in OVERLOAD and row.unit != "power":
            return Reading("inf")
        sort = {"name": row.unit, "example": lambda: _EXAMPLES[row.unit]}
        if not isinstance(typed, str):
            return Reading(quantities.read(typed, **sort).value)
        unit, own = unit_of(row), quantities.GLOSSARY[row.unit].unit
        if not (unit == "Ω" and word[-1:].isdecimal()):
            typed = _OFF_A_DISPLAY.sub(r"\g<0>0", typed.strip())
        value = quantities.read(typed, bare_unit=unit, **sort).value
        alone = quantities.read(typed, **sort).value
        if alone != value and not 1.0 <= abs(alone) < _COUNTS:
            raise ValueError(f"That can be in {unit} or in {own}. Write its unit.")
        bare = alone != value or (unit == own == "Ω" and word[-1:].isdecimal())
        return Reading(value, _place(word, value), plain(word) if bare else "")
    except ValueError as error:
        raise BenchLogError(f"Row {row.name} was read as {plain(str(typed))}. {error}") from None


def _place(word, value):
    """One step of the last figure that was typed, in SI."""
    number = re.split("(?<=[0-9]) *[ex*×]", word.split("=")[-1])[0]  # without a power of ten
    figures = "".join(re.findall("[0-9]", number)).lstrip("0")
    many = len(figures)
    if not re.search("[.,a-z][0-9]", number):
        many = max(min(many, 3), len(figures.rstrip("0")))
    return 10.0 ** (floor(log10(abs(value)) + 1e-12) + 1 - many) if value else 0.0


def readings(typed, rows):
    """Return the readings of a log in SI.

    Parameters
    ----------
    typed : dict of str to str, int or float
        By the name of a row; what is empty or None was not read.
    rows : list of predictions.Row
        What the log can hold.

    Returns
    -------
    readings : dict of str to predictions.Reading
        Infinite for an overload [SI].

    Raises
    ------
    BenchLogError
        If a row is unknown or a reading cannot be read.
    """
    known = {row.name: row for row in rows}
    found = {}
    for name, one in typed.items():
        if one is None or not str(one).strip():
            continue
        if name not in known:
            raise BenchLogError(f"There is no row {plain(str(name))} on this build. {_HOW}")
        found[name] = read_one(one, known[name])
    return found


def from_csv(text, rows, build=None):
    """Return the readings that a CSV text holds.

    Parameters
    ----------
    text : str or bytes
        With the columns row and reading; parted by comma, semicolon or tab.
    rows : list of predictions.Row
        What the log can hold.
    build : world.Build, optional
        Whose log it has to be, if it names one.

    Returns
    -------
    readings : dict of str to predictions.Reading
        Infinite for an overload [SI].

    Raises
    ------
    BenchLogError
        If it is no such table, is too long, is of another build, names a row twice or that is
        unknown, or holds what cannot be read.

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> from helpers.bench.predictions import Build, table
    >>> rows = table(Build(Brief(), "bridge", 100e3, 2))
    >>> from_csv("row;reading\\nR1;99,2k\\nR2;\\n", rows)
    {'R1': 99200.0}
    >>> from_csv("row,reading\\nR1,about right\\n", rows)
    Traceback (most recent call last):
    ...
    helpers.bench.log.BenchLogError: Row R1 was read as about right. “about right” has no \
number. Type one number and its unit, such as 99.2 kΩ, or OL.
    """
    if len(text) > _MOST_BYTES:
        raise BenchLogError(f"The log has more than {_MOST_BYTES} characters. {_HOW}")
    try:
        text = (text if isinstance(text, str) else text.decode("utf-8")).lstrip("\ufeff")
        _held_against(build, text)
        told = [line for line in text.splitlines() if line.strip() and line.lstrip(' "')[:1] != "#"]
        parted_by = max(",;\t", key="".join(told[:1]).count)
        table = csv.reader(told, delimiter=parted_by, strict=True)
        lines = [[cell.strip() for cell in line] for line in table if any(map(str.strip, line))]
    except (UnicodeDecodeError, csv.Error) as error:
        raise BenchLogError(f"The log is no CSV file in UTF-8 ({error}). {_HOW}") from None
    header = [cell.lower() for cell in lines[0]] if lines else []
    if not {"row", "reading"} <= set(header):
        shown = plain(", ".join(header)) or "nothing"
        raise BenchLogError(f"The first line was read as {shown}. It needs row and reading. {_HOW}")
    if len(lines) > _MOST_ROWS:
        raise BenchLogError(f"The log has {len(lines)} lines; {_MOST_ROWS} are possible. {_HOW}")
    typed = {}
    for line in lines[1:]:
        cells = dict(zip(header, line, strict=False))
        name = cells.get("row", "")
        if len(line) > len(header):
            raise BenchLogError(
                f"Row {plain(name)} has {len(line)} cells instead of "
                f"{len(header)}. A comma inside a reading? Write a point, or quotation marks."
            )
        if cells.get("reading"):
            if name in typed:
                raise BenchLogError(f"Row {plain(name)} stands there twice. Keep one.")
            typed[name] = cells["reading"]
    return readings(typed, rows)


def _held_against(build, text):
    """Refuse a log that names another build; letters that a spreadsheet has spoilt do not count."""
    found = re.search(f'^ *"?# *{OF}([^",;\t\r\n]*)', text, re.MULTILINE)
    if not build or not found:
        return
    one, other = (re.sub("[^!-~]", "", name) for name in (found[1], named(build)))
    if one != other:
        raise BenchLogError(
            f"This log is of another build: {plain(found[1].strip(), 160)}. The brief gives: "
            f"{named(build)}. Nothing was compared. Take the brief of that log, or a log of this "
            "brief."
        )
