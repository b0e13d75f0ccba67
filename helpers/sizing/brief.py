"""What somebody wants and has: the brief that a build is sized from, typed as people type.

Each field says its section, kind, example and limits once; TOML in and out, messages and the
commented example all come from that. Judges nothing.
"""

import re
import tomllib
from dataclasses import dataclass, field, fields
from math import inf, prod

import numpy as np

from helpers.physics import heater, leds, limits, mains, meters, phase_cut_inverse, resistors
from helpers.physics.leakage import USUAL_SNUBBER
from helpers.quantities import write
from helpers.sizing.typed import BriefError, plain, read_one, shown, write_one

#: How a dimmer's setting may be given, and as which quantity.
GIVEN_BY = {
    "angle": "angle", "volts": "voltage", "heat": "percent", "power": "power",
    "average meter": "voltage", "true rms meter": "voltage",
}  # fmt: skip
_SETTINGS = ("dimmer_lowest", "dimmer_highest")
#: The same two of the workshop behind a trailing edge, whose angles run the other way.
_TRAILING = {"dimmer_lowest": 54.0, "dimmer_highest": 180.0}
_NO_TABLE = "Its fields stand on lines of their own below the line [{}]."
EDGES = ("leading", "trailing", "unknown", "none")
TOUCH = ("closed window", "touchable", "unknown")
CONNECTIONS = ("plug-in", "fixed", "unknown")
TROUBLES = ("left on", "too hot", "not seen", "none")
COLOURS = tuple(colour for colour in leds.TYPICAL_VOLTS if colour != "infrared")
_RANGE = "unknown takes 10 % or the national figure"
_MOST_BYTES, _MOST_STRINGS, _MOST_RATINGS = 65536, 4000, 12


def _asked(kind, example, says, least=0.0, most=inf):
    """One field: its kind, its value in the workshop's brief as typed, what it is, its limits."""
    about = {"kind": kind, "says": says, "least": least, "most": most}
    typed = GIVEN_BY["angle"] if kind == "setting" else kind
    return field(default=read_one(typed, example, "the example"), metadata=about)


@dataclass(frozen=True)
class Brief:
    """What is wanted, in SI units; as it stands, that of the workshop with its 90 W pot.

    In a file, a field is the key after its section: `heater_power` is power under [heater].
    `left_out` names the fields that a file did not give.
    """

    # fmt: off
    use_connection: str = _asked(CONNECTIONS, "plug-in", "plug-in, fixed wiring, or unknown")
    use_by_others: bool = _asked("yes", True, "whether others than its builder use it")
    use_trouble: str = _asked(TROUBLES, "left on", f"what goes wrong: {', '.join(TROUBLES)}")
    supply_volts: float = _asked("voltage", "230 V", "on the label of the socket", 90.0, 264.0)
    supply_hertz: float = _asked("frequency", "50 Hz", "frequency", 45.0, 65.0)
    supply_lowest: float = _asked("?voltage", "unknown", f"lowest mains; {_RANGE}", 50.0, 300.0)
    supply_highest: float = _asked("?voltage", "unknown", f"highest mains; {_RANGE}", 50.0, 300.0)
    heater_power: float = _asked("power", "90 W", "on its label, at the supply's volts", 0.1)
    heater_full_power_safe: str = _asked(
        ("yes", "no", "unknown"), "yes", "whether it may stay at full power for good, unwatched")
    heater_long_use: bool = _asked("yes", True, "whether it is on for hours")
    dimmer_edge: str = _asked(EDGES, "leading", f"{', '.join(EDGES)}; none is no dimmer")
    dimmer_given_by: str = _asked(
        tuple(GIVEN_BY), "angle",
        "how settings are given: angle, volts, heat (of the whole), power (of the heater), "
        "average meter, true rms meter")
    dimmer_lowest: float = _asked("setting", "126°", "lowest setting that is used")
    dimmer_highest: float = _asked("setting", "0°", "highest setting that is used")
    dimmer_rated: float = _asked("power", "300 W", "the most it is made for", 0.1)
    dimmer_least: float = _asked("power", "40 W", "the least it works with")
    dimmer_suppression: float = _asked(
        "?capacitance", "unknown", "capacitor across its switch; unknown takes 100 nF", 0.0, 1e-5)
    led_colour: str = _asked(COLOURS, "red", ", ".join(COLOURS))
    led_count: int = _asked("count", 1, "how many in series", 1, 20)
    led_drop: float = _asked("?voltage", "unknown", "drop of one; unknown is usual", 0.5, 10.0)
    led_intensity: float = _asked("cd", "3000 mcd", "intensity on its sheet", 1e-6, 1e3)
    led_at: float = _asked("current", "20 mA", "current that its sheet states it at", 1e-4, 1.0)
    led_half_angle: float = _asked(
        "angle", "15°", "from its axis to half of its light: half of the sheet's", 1.0, 80.0)
    led_limit: float = _asked("current", "20 mA", "steady current it is made for", 1e-4, 1.0)
    led_reverse: float = _asked("voltage", "5 V", "reverse volts that its sheet allows", 0.0, 1e3)
    seen_lux: float = _asked("lx", "300 lx", "light of the room where the pot stands", 0.0, 1e5)
    seen_distance: float = _asked("length", "3 m", "from how far to be noticed", 0.05, 1e3)
    seen_angle: float = _asked("angle", "10°", "between its axis and the eye", 0.0, 90.0)
    box_air: float = _asked(
        "temperature", "50 °C", "air in and around the box, without the light", -40.0, 150.0)
    box_length: float = _asked("length", "10 cm", "outer length of the box", 0.01, 2.0)
    box_width: float = _asked("length", "6 cm", "outer width", 0.01, 2.0)
    box_height: float = _asked("length", "5 cm", "outer height", 0.01, 2.0)
    box_touch: str = _asked(
        TOUCH, "closed window", "closed window: LED and leads lie wholly behind a closed "
        "insulating window; touchable; unknown")
    bin_series: str = _asked(tuple(resistors.SERIES), "E12", "series of the values")
    bin_smallest: float = _asked("resistance", "10 kΩ", "smallest value", 10.0, 1e8)
    bin_largest: float = _asked("resistance", "1 MΩ", "largest value", 10.0, 1e8)
    bin_most: int = _asked("count", 4, "most resistors in series that have room", 1, 12)
    bin_tolerance: float = _asked("percent", "5 %", "tolerance of the resistors", 0.0, 20.0)
    bin_ratings: tuple = _asked(["power"], ["0.4 W", "0.6 W"], "ratings of the resistors", 0.01)
    bin_volts: tuple = _asked(["voltage"], ["200 V", "300 V"], "what each of them stands", 10.0)
    bin_surge_rated: bool = _asked("yes", False, "whether a sheet rates them for impulses")
    bin_fusible_at: float = _asked(
        "ratio", 0, "fusible resistors: times its rating at which one opens; 0 for none", 0.0, 1e3)
    bin_diode: float = _asked("voltage", "1000 V", "reverse volts of the silicon diodes", 1.0)
    # fmt: on
    left_out: tuple = field(default=(), compare=False)

    def __post_init__(self):
        for each in FIELDS:
            about, value = each.metadata, getattr(self, each.name)
            for one in value if isinstance(value, tuple) else (value,):
                fixed = isinstance(one, (str, bool, type(None)))
                if not fixed and not about["least"] <= one <= about["most"]:
                    self._refuse(each.name, _possible(self.kind_of(each.name), about))
        if not self.low.volts_rms <= self.supply_volts <= self.high.volts_rms:
            self._refuse("supply_volts", "It must lie between lowest and highest.")
        if self.bin_smallest > self.bin_largest:
            self._refuse("bin_smallest", "It must not be above the largest.")
        if len(self.bin_ratings) > _MOST_RATINGS:
            self._refuse("bin_ratings", f"Write at most {_MOST_RATINGS}.")
        if len(self.bin_ratings) != len(self.bin_volts):
            self._refuse("bin_volts", "Write one voltage for each rating in [bin].")
        if len(self.ohms) * self.bin_most > _MOST_STRINGS:
            self._refuse("bin_series", f"The bin makes over {_MOST_STRINGS} strings: take fewer.")
        if self.bin_fusible_at and self.bin_fusible_at < 1.0:
            self._refuse("bin_fusible_at", "A fusible part opens above its rating: 1 or more.")
        if self.cuts and self.dimmer_given_by == "heat" and self.dimmer_highest <= 1.0:
            self._refuse("dimmer_highest", "All of the heat is 100 %, and a fifth is 20 %.")
        if self.lowest_degrees > self.highest_degrees + 1e-9:
            self._refuse(
                "dimmer_lowest", "It must not be brighter than the highest: the larger angle is "
                "the darker one behind a leading edge, the brighter one behind a trailing edge."
            )  # fmt: skip

    def _refuse(self, name, what):
        taken = "was left out and taken as" if name in self.left_out else "was read as"
        raise BriefError(f"{key_of(name)} {taken} {plain(self.typed(name))}. {what}", name)

    def typed(self, name):
        """Write a field as it would be typed into a file."""
        value, kind = getattr(self, name), self.kind_of(name)
        if isinstance(value, tuple):
            return "[" + ", ".join(write_one(each, kind[0]) for each in value) + "]"
        return write_one(value, kind)

    def kind_of(self, name):
        """The kind that a field is read as; that of a setting depends on how it is given."""
        kind = self.__dataclass_fields__[name].metadata["kind"]
        return GIVEN_BY[self.dimmer_given_by] if kind == "setting" else kind

    @property
    def supply(self):
        """At its label."""
        return mains.Supply(self.supply_volts, self.supply_hertz)

    @property
    def low(self):
        """At its lowest."""
        if self.supply_lowest is None:
            return mains.lowest(self.supply)
        return mains.Supply(self.supply_lowest, self.supply_hertz)

    @property
    def high(self):
        """At its highest."""
        if self.supply_highest is None:
            return mains.highest(self.supply)
        return mains.Supply(self.supply_highest, self.supply_hertz)

    @property
    def cuts(self):
        """Whether a dimmer may cut the wave; an unknown one may."""
        return self.dimmer_edge != "none"

    @property
    def lowest_degrees(self):
        """What the lowest setting lets through of each half-cycle [deg]."""
        return self._conduction("dimmer_lowest")

    @property
    def highest_degrees(self):
        """The same of the highest setting [deg]."""
        return self._conduction("dimmer_highest")

    def _conduction(self, name):
        if not self.cuts:
            return 180.0
        edge = "trailing" if self.dimmer_edge == "trailing" else "leading"
        value = getattr(self, name)
        try:
            if self.dimmer_given_by == "angle":
                angle = limits.between(value, "angle", "deg", 0.0, 180.0)
                ways = {"trailing": angle, "leading": 180.0 - angle}
                if self.dimmer_edge != "unknown":
                    return ways[edge]
                # Either may be meant: the darker one as the lowest, the brighter as the highest.
                return (min if name == "dimmer_lowest" else max)(ways.values())
            if self.dimmer_given_by in ("heat", "power"):
                whole = 100.0 if self.dimmer_given_by == "heat" else self.heater_power
                return phase_cut_inverse.for_power(value / whole, edge).conduction_degrees
            # A meter shows the mains of its hour, which may lie above the label.
            if value > self.high.volts_rms:
                most = write(self.high.volts_rms, "voltage")
                raise ValueError(f"A dimmer cannot give more than the mains: at most {most}.")
            value = min(value, self.supply_volts)
            if self.dimmer_given_by == "average meter":
                value /= meters.SINE_FORM_FACTOR
                return phase_cut_inverse.for_mean(value, self.supply, edge).conduction_degrees
            return phase_cut_inverse.for_rms(value, self.supply, edge).conduction_degrees
        except ValueError as error:
            self._refuse(name, str(error))

    @property
    def heater_ohms(self):
        """Resistance of the sound element [ohm]."""
        return heater.resistance(self.supply_volts, self.heater_power)

    @property
    def led_volts(self):
        """Drop of the whole string of LEDs [V]."""
        each = leds.typical_volts(self.led_colour) if self.led_drop is None else self.led_drop
        return self.led_count * each

    @property
    def suppression_farads(self):
        """Capacitor across the dimmer's switch, a usual one if nobody knows [F]."""
        if not self.cuts:
            return 0.0
        unknown = self.dimmer_suppression is None
        return USUAL_SNUBBER[0] if unknown else self.dimmer_suppression

    @property
    def box_square_metres(self):
        """Outer surface that gives heat off: without the face that it stands on [m2]."""
        sides = self.box_length, self.box_width, self.box_height
        pairs = [prod(sides) / each for each in sides]
        return 2.0 * sum(pairs) - max(pairs)

    @property
    def ohms(self):
        """Values of the bin [ohm]."""
        found, each = [], resistors.next_up(self.bin_smallest, self.bin_series)
        while each <= self.bin_largest * (1.0 + 1e-9):
            found.append(each)
            each = resistors.next_up(each * 1.0001, self.bin_series)
        return np.array(found)


FIELDS = tuple(each for each in fields(Brief) if each.metadata)
_OTHERS = set(GIVEN_BY) - {Brief.dimmer_given_by}  # under these no setting can be left out
#: What could hurt somebody if it were guessed: unknown, where a file leaves it out.
NEVER_GUESSED = ("use_connection", "heater_full_power_safe", "dimmer_edge", "box_touch")


def key_of(name):
    """Return a field as a file has it: its key and its section."""
    section, _, key = name.partition("_")
    return f"{key} in [{section}]"


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
    first, lowest = typed.get, name == _SETTINGS[0]
    given_by = first("dimmer_given_by") or Brief.dimmer_given_by
    if given_by == "angle":
        trailing = _TRAILING if first("dimmer_edge") == "trailing" else {}
        return f"{trailing.get(name, getattr(Brief, name)):g}°"
    if given_by == "heat":
        return "20 %" if lowest else "100 %"
    of, sort = ("heater_power", "power") if given_by == "power" else ("supply_volts", "voltage")
    try:
        whole = read_one(sort, first(of) or getattr(Brief, of), "")
    except BriefError:
        whole = getattr(Brief, of)
    return write_one((0.2 if sort == "power" else 0.5) ** lowest * whole, sort).strip('"')


def _possible(kind, about):
    """Between which limits a value may lie, as they are typed."""
    sort, most = kind[0] if isinstance(kind, list) else kind, about["most"]
    least, most = (
        f"{each:g}" if sort == "count" or each == inf else write_one(float(each), sort).strip('"')
        for each in (about["least"], most)
    )  # fmt: skip
    return f"{least}{' or more' if most == 'inf' else f' to {most}'} is possible."


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
heater, dimmer, led, seen, box, bin.
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
    read, wrong = {}, {}
    given_by = str(typed.get("dimmer_given_by", Brief.dimmer_given_by)).strip().lower()
    edge = str(typed.get("dimmer_edge", "")).strip().lower()
    for each in FIELDS:
        name, sort = each.name, each.metadata["kind"]
        if sort == "setting":
            sort = GIVEN_BY.get(given_by, "angle")
        try:
            if name in typed:
                read[name] = read_one(sort, typed[name], key_of(name))
            elif name in _SETTINGS and edge != "none" and given_by in _OTHERS:
                such = such_setting(name, typed)
                raise BriefError(
                    f"{key_of(name)} was left out. Type it by {given_by}, such as {such}."
                )
        except BriefError as error:
            wrong[name] = str(error)
    left_out = tuple(each.name for each in FIELDS if each.name not in typed)
    taken = {name: "unknown" for name in NEVER_GUESSED}
    if edge == "trailing" and given_by == Brief.dimmer_given_by:
        taken |= _TRAILING
    try:
        if not wrong:
            taken = {name: value for name, value in taken.items() if name in left_out}
            return Brief(**taken | read, left_out=left_out), {}
    except BriefError as error:
        wrong[error.field] = str(error)
    return None, wrong


def to_toml(brief, comments=False):
    """Return a brief as TOML text.

    Parameters
    ----------
    brief : Brief
        What to write.
    comments : bool
        Whether each field says what it is [-].

    Returns
    -------
    text : str
        `from_toml` reads the same brief from it.

    Examples
    --------
    >>> to_toml(Brief()).splitlines()[:2]
    ['[use]', 'connection = "plug-in"']
    """
    lines, last = [], None
    for each in FIELDS:
        section, _, key = each.name.partition("_")
        if section != last:
            lines += ["", f"[{section}]"] if last else [f"[{section}]"]
            last = section
        if comments:
            lines.append(f"# {each.metadata['says']}")
        lines.append(f"{key} = {brief.typed(each.name)}")
    return "\n".join(lines) + "\n"
