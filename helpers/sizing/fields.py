"""A brief: the fields of `fields.toml`, and what follows from them.

How they are typed into a file is in `brief`. Judges nothing.
"""

import tomllib
from dataclasses import dataclass, field, fields, make_dataclass
from math import inf, prod
from pathlib import Path

import numpy as np

from helpers.physics import heater, leds, limits, mains, meters, phase_cut_inverse, resistors
from helpers.physics.leakage import USUAL_SNUBBER
from helpers.quantities import write
from helpers.sizing.typed import BriefError, plain, read_one, write_one

#: How a dimmer's setting may be given, and as which quantity.
GIVEN_BY = {
    "knob": "percent", "angle": "angle", "volts": "voltage", "heat": "percent", "power": "power",
    "average meter": "voltage", "true rms meter": "voltage",
}  # fmt: skip
_WHOLE = {"heat": "All of the heat", "knob": "The whole turn"}
COLOURS = tuple(colour for colour in leds.TYPICAL_VOLTS if colour != "infrared")
LABEL_STRAYS = 0.1
"""How far above the heater's label a reading counts as full: common practice, no source [-]."""
_MOST_STRINGS = 4000
_MOST = {"bin_ratings": 12, "bin_capacitors": 6, "bin_surge": 4}
_WORDS = {
    "colour of an LED": COLOURS, "way to give a setting": tuple(GIVEN_BY),
    "series of resistors": tuple(resistors.SERIES),
}  # fmt: skip


def _asked(name, row):
    """One field of the table, with its example as read, and what else the table says of it."""
    sort, (least, most) = row["kind"], row.get("possible", (0.0, inf))
    if isinstance(sort, list):
        sort = tuple(sort)
    elif sort.startswith("list of "):
        sort = [sort.removeprefix("list of ")]
    else:
        sort = _WORDS.get(sort, sort)
    about = {"says": ", ".join(sort), "bare": None} | row
    about |= {"kind": sort, "least": least, "most": most}
    example = read_one(GIVEN_BY["angle"] if sort == "setting" else sort, row["example"], name)
    return name, object, field(default=example, metadata=about)


_TABLE = tomllib.loads(Path(__file__).with_name("fields.toml").read_text("utf-8"))
_Asked = make_dataclass(
    "_Asked",
    [_asked(f"{part}_{key}", row) for part, rows in _TABLE.items() for key, row in rows.items()],
    frozen=True,
)


@dataclass(frozen=True)
class Brief(_Asked):
    """What is wanted, in SI units; as it stands, that of the workshop with its 90 W pot.

    Its fields are those of `fields.toml`. In a file, a field is the key after its section:
    `heater_power` is power under [heater]. `left_out` names the fields that a file did not give,
    `unknown` those of which it says that nobody knows them.
    """

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
        whole = _WHOLE.get(self.dimmer_given_by)
        if self.cuts and whole and self.dimmer_highest <= 1.0:
            self._refuse("dimmer_highest", f"{whole} is 100 %, and a fifth is 20 %.")
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

    @property
    def workshops(self):
        """Fields that hold the workshop's value for want of the reader's; of a plan's own alone."""
        return tuple(
            each.name for each in FIELDS
            if each.name in self.assumed and each.name not in COMPARED_ALONE
            and getattr(self, each.name) not in (None, "unknown")
            and not (each.name in self.unknown and "safer" in each.metadata)
        )  # fmt: skip

    def typed(self, name):
        """Write a field as it would be typed into a file."""
        return '"unknown"' if name in self.unknown else self.taken(name)

    def taken(self, name):
        """Write what a field is taken as, whoever said so."""
        value, kind = getattr(self, name), self.kind_of(name)
        if isinstance(value, tuple):
            return "[" + ", ".join(write_one(each, kind[0]) for each in value) + "]"
        return write_one(value, kind)

    def told(self, name):
        """Say the same where people read."""
        if self.kind_of(name) == "yes":
            return "yes" if getattr(self, name) else "no"
        return self.taken(name).strip("[]").replace('"', "")

    def compares(self, part):
        """Whether somebody gave what only a circuit needs that is compared alone: neon or bin."""
        return any(n.startswith(part) and n not in self.left_out for n in COMPARED_ALONE)

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
            if self.dimmer_given_by == "knob":  # its mark is taken as a share of time
                return 1.8 * limits.between(value, "The knob", "%", 0.0, 100.0)
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
COMPARED_ALONE = tuple(each.name for each in FIELDS if "compared_alone" in each.metadata)
#: What could hurt somebody if it were guessed: unknown, where a file leaves it out.
NEVER_GUESSED = tuple(each.name for each in FIELDS if "never_guessed" in each.metadata)


def key_of(name):
    """Return a field as a file has it: its key and its section."""
    section, _, key = name.partition("_")
    return f"{key} in [{section}]"


def called(name):
    """Return what a field is called where people read."""
    return Brief.__dataclass_fields__[name].metadata["called"]


def _possible(of, about):
    """Between which limits a value may lie, as they are typed."""
    sort, most = of[0] if isinstance(of, list) else of, about["most"]
    least, most = (
        f"{each:g}" if sort == "count" or each == inf else write_one(float(each), sort).strip('"')
        for each in (about["least"], most)
    )  # fmt: skip
    return f"{least}{' or more' if most == 'inf' else f' to {most}'} is possible."
