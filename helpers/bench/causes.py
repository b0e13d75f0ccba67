"""What may be wrong with a pilot light, its surroundings or its meter, each as states of the bench.

One list for diagnosis, tests and planted faults: names, words, dangers, most of which stand in
`causes.toml`. Computes nothing.
"""

import tomllib
from dataclasses import dataclass, replace
from math import inf
from pathlib import Path

from helpers.bench.rows import LEAST_SPARE
from helpers.bench.world import HIGH_VOLTS, LOW_VOLTS, changed
from helpers.physics import faults, joints, resistors

DRIFTED, DRIFTED_LOOSE = 2.0, 35.0
"""How many times its value a drifted resistor has, and how widely that varies: common practice, no
source [-], [%]."""
_HELD = tomllib.loads(Path(__file__).with_name("causes.toml").read_text("utf-8"))
_METER = {("meter", how): row for how, row in _HELD["meter"].items()}
_OUTSIDE, _LIGHT = (
    {tuple(name.split(" ", 1)): row for name, row in _HELD[table].items()}
    for table in ("outside", "light")
)
#: What could hurt somebody if it is so and the mains comes on.
DANGERS = {
    kind: row["danger"] for kind, row in (_OUTSIDE | _METER | _LIGHT).items() if "danger" in row
}
_BUILT = {"short": "is shorted", "open": "is open", "turned": "is the other way round"}
_NAMED = {"led": "the LED", "second_led": "the second LED", "diode": "the diode"}
#: What only shows with the mains on.
ON_MAINS = (
    ("neutral", "open"), *(each for each in faults.OUTSIDE if each[0] == "dimmer"),
    ("meter", "plain"), ("mains", "low"), ("settings", "turned"),
)  # fmt: skip


@dataclass(frozen=True)
class Cause:
    """One thing that may be wrong."""

    kind: tuple
    """Part and how, as in `faults.singles` where it is one of them."""
    words: tuple
    """What is said of each of its states."""
    states: tuple
    """The same, as `world.State`."""


def causes(build):
    """Return everything that is looked for on a build.

    Parameters
    ----------
    build : world.Build

    Returns
    -------
    causes : list of Cause
        Parts of the light, each in every place it may have; its surroundings; mistakes with the
        meter [-].

    Examples
    --------
    >>> from helpers.bench.world import Build
    >>> from helpers.sizing.brief import Brief
    >>> found = causes(Build(Brief(), "series_diode", 100e3, 2))
    >>> len(found), found[0].words
    (26, ('R1 is shorted', 'R2 is shorted'))
    """
    sound, found = build.sound, []

    def add(kind, said):
        found.append(Cause(kind, tuple(said), tuple(said.values())))

    for how, times, words in _strings(build):
        add(("dropper", how), {
            f"{place} {words[at]}": replace(
                sound,
                times=tuple(each if one in picked else 1.0 for one in range(build.count)),
                loose=tuple(
                    DRIFTED_LOOSE if how == "drift" and one in picked else build.brief.bin_tolerance
                    for one in range(build.count)
                ),
            )
            for at, each in enumerate(times) for place, picked in _places(build, how)
        })  # fmt: skip
    for sort in dict.fromkeys(joints.kind(name) for name in build.joints):
        for how in joints.FAULTS:
            add((sort, how), {
                f"{_NAMED.get(name, name)} {_BUILT[how]}": changed(sound, name, how)
                for name in build.joints if joints.kind(name) == sort
            })  # fmt: skip
    for outside, row in _OUTSIDE.items():
        add(outside, {row["says"]: replace(sound, outside=outside)})
    for meter, row in _METER.items():
        add(meter, {row["says"]: replace(sound, meter=meter[1])})
    if build.turned_volts:
        add(("meter", "unturned"), {
            f"the leads of the meter were not changed over {row['says']}, which is no fault of the "
            "light": replace(sound, meter=meter)
            for meter, row in _HELD["unturned"].items()
        })  # fmt: skip
    add(("supply", "set wrong"), {
        f"the bench supply was set to {wrong:g} V where {asked:g} V were asked for":
            replace(sound, set_to=((asked, wrong),))
        for asked, wrong in ((HIGH_VOLTS, LOW_VOLTS), (LOW_VOLTS, HIGH_VOLTS))
        if asked >= build.brief.led_volts + LEAST_SPARE
    })  # fmt: skip
    if build.brief.cuts:
        words = "the settings of the dimmer were taken from the highest down"
        add(("settings", "turned"), {words: replace(sound, reverse=True)})
    low = 0.9 * build.brief.low.volts_rms / build.brief.supply_volts
    add(("mains", "low"), {"the mains is too low": replace(sound, mains=low, mains_stray=0.08)})
    return found


def _strings(build):
    """What may be wrong with resistors: how, times its value, words."""
    series, ohms = build.brief.bin_series, build.ohms_each
    above = resistors.next_up(1.0001 * ohms, series) / ohms
    below = resistors.next_down(0.9999 * ohms, series) / ohms
    yield "short", (0.0,), ("is shorted",)
    yield "open", (inf,), ("is open",)
    yield "drift", (DRIFTED,), ("has drifted to about twice its value",)
    yield "decade", (10.0, 0.1), ("is ten times its value", "is a tenth of its value")
    said = "has the next value {} in its series"
    yield "neighbour", (above, below), (said.format("up"), said.format("down"))


def _places(build, how):
    """Each resistor; and all of them, where they came out of one wrong drawer."""
    found = [(f"R{at + 1}", (at,)) for at in range(build.count)]
    if how in ("decade", "neighbour") and build.count > 1:
        found.append(("each resistor", tuple(range(build.count))))
    return found
