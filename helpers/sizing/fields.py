"""The fields of a brief, each with its section, kind, example and limits, and what follows.

How they are typed into a file is in `brief`. Judges nothing.
"""

from dataclasses import dataclass, field, fields
from math import inf, prod

import numpy as np

from helpers.physics import heater, leds, limits, mains, meters, phase_cut_inverse, resistors
from helpers.physics.leakage import USUAL_SNUBBER
from helpers.quantities import write
from helpers.sizing.typed import BriefError, plain, read_one, write_one

#: How a dimmer's setting may be given, and as which quantity.
GIVEN_BY = {
    "angle": "angle", "volts": "voltage", "heat": "percent", "power": "power",
    "average meter": "voltage", "true rms meter": "voltage",
}  # fmt: skip
EDGES = ("leading", "trailing", "unknown", "none")
TOUCH = ("closed window", "touchable", "unknown")
CONNECTIONS = ("plug-in", "fixed", "unknown")
TROUBLES = ("left on", "too hot", "not seen", "none")
COLOURS = tuple(colour for colour in leds.TYPICAL_VOLTS if colour != "infrared")
LABEL_STRAYS = 0.1
"""How far above the heater's label a reading counts as full: common practice, no source [-]."""
_RANGE = "unknown takes 10 % or the national figure"
_MOST_STRINGS = 4000
_MOST = {"bin_ratings": 12, "bin_capacitors": 6, "bin_surge": 4}


def _asked(kind, example, says, least=0.0, most=inf, bare=None):
    """One field: kind, value in the workshop's brief as typed, what it is, limits, unit if bare."""
    about = {"kind": kind, "says": says, "least": least, "most": most, "bare": bare}
    typed = GIVEN_BY["angle"] if kind == "setting" else kind
    return field(default=read_one(typed, example, "the example"), metadata=about)


@dataclass(frozen=True)
class Brief:
    """What is wanted, in SI units; as it stands, that of the workshop with its 90 W pot.

    In a file, a field is the key after its section: `heater_power` is power under [heater].
    `left_out` names the fields that a file did not give, `unknown` those of which it says that
    nobody knows them.
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
    dimmer_rated: float = _asked(
        "?power", "300 W", "the most it is made for; unknown counts as too little", 0.1)
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
    led_surge: float = _asked(
        "?current", "unknown", "one short pulse that its sheet allows; unknown takes the steady "
        "current", 1e-4, 1e3)
    neon_strike: float = _asked(
        "voltage", "90 V", "a neon lamp instead: volts at which a new one strikes", 40.0, 200.0)
    neon_limit: float = _asked("current", "1 mA", "mean current that it is made for", 1e-5, 0.1)
    neon_intensity: float = _asked("cd", "5 mcd", "its intensity at that current", 1e-6, 10.0)
    seen_lux: float = _asked(
        "lx", "300 lx", "light where the pot stands: a room in the evening has 50 to 100 lx, a "
        "workshop 300 to 500, a place by a sunny window 2000 and more", 0.0, 1e5)
    seen_distance: float = _asked("length", "3 m", "from how far to be noticed", 0.05, 1e3)
    seen_angle: float = _asked("angle", "10°", "between its axis and the eye", 0.0, 90.0)
    box_air: float = _asked(
        "temperature", "50 °C", "air in and around the box, without the light", -40.0, 150.0)
    box_length: float = _asked("length", "10 cm", "outer length of the box", 0.01, 2.0, "mm")
    box_width: float = _asked("length", "6 cm", "outer width", 0.01, 2.0, "mm")
    box_height: float = _asked("length", "5 cm", "outer height", 0.01, 2.0, "mm")
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
    bin_capacitors: tuple = _asked(
        ["capacitance"], ["100 nF", "330 nF"], "for a capacitor dropper, on plain mains alone",
        1e-9, 1e-5)
    bin_capacitor_class: str = _asked(
        ("X1", "X2", "none", "unknown"), "X2", "class that is printed on those capacitors")
    bin_capacitor_volts: float = _asked(
        "voltage", "305 V", "mains volts that are printed on them", 10.0)
    bin_surge: tuple = _asked(
        ["resistance"], ["470 Ω", "1 kΩ"], "surge resistors in series with them", 10.0, 1e5)
    # fmt: on
    left_out: tuple = field(default=(), compare=False)
    unknown: tuple = field(default=(), repr=False)

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
        for name, most in _MOST.items():
            if len(getattr(self, name)) > most:
                self._refuse(name, f"Write at most {most}.")
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
        taken = "was left out and taken as" if name in self.assumed else "was read as"
        raise BriefError(f"{key_of(name)} {taken} {plain(self.taken(name))}. {what}", name)

    @property
    def assumed(self):
        """Fields for which something had to be taken: left out, or known to nobody."""
        return (*self.left_out, *self.unknown)

    def typed(self, name):
        """Write a field as it would be typed into a file."""
        return '"unknown"' if name in self.unknown else self.taken(name)

    def taken(self, name):
        """Write what a field is taken as, whoever said so."""
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
                share = value / (100.0 if self.dimmer_given_by == "heat" else self.heater_power)
                if share > 1.0:
                    self._above_all(share)
                return phase_cut_inverse.for_power(min(share, 1.0), edge).conduction_degrees
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

    def _above_all(self, share):
        """Refuse more heat than there is; of watts, a label that strays a little counts as full."""
        over = write(100.0 * (share - 1.0), "percent", 2)
        if self.dimmer_given_by == "heat":
            raise ValueError(f"That is {over} above all of the heat, which is 100 %.")
        if share > 1.0 + LABEL_STRAYS:
            raise ValueError(
                f"That is {over} above the heater's label of {write(self.heater_power, 'power')}. "
                f"A label may stray some per cent, and up to {100.0 * LABEL_STRAYS:.0f} % above it "
                "counts as full. Is the label right, and was it read at this supply's volts?"
            )

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
#: What only the circuits need that are compared alone: a sheet and a bench log know none of it.
COMPARED_ALONE = (
    "led_surge", "neon_strike", "neon_limit", "neon_intensity", "bin_capacitors",
    "bin_capacitor_class", "bin_capacitor_volts", "bin_surge",
)  # fmt: skip
#: What could hurt somebody if it were guessed: unknown, where a file leaves it out.
NEVER_GUESSED = (
    "use_connection", "heater_full_power_safe", "dimmer_edge", "dimmer_rated", "box_touch",
    "bin_capacitor_class",
)  # fmt: skip


def key_of(name):
    """Return a field as a file has it: its key and its section."""
    section, _, key = name.partition("_")
    return f"{key} in [{section}]"


def _possible(of, about):
    """Between which limits a value may lie, as they are typed."""
    sort, most = of[0] if isinstance(of, list) else of, about["most"]
    least, most = (
        f"{each:g}" if sort == "count" or each == inf else write_one(float(each), sort).strip('"')
        for each in (about["least"], most)
    )  # fmt: skip
    return f"{least}{' or more' if most == 'inf' else f' to {most}'} is possible."
