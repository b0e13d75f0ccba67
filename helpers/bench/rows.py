"""Which readings a bench log asks for, in the order in which they are taken, and who takes them.

Unpowered first, then on a bench supply of 24 V at most, then from outside the closed covers for a
competent person. What is read there is `world`'s.
"""

from collections.abc import Callable
from functools import partial
from typing import NamedTuple

from helpers.bench.world import AC_VOLTS, HIGH_VOLTS, LOW_VOLTS, TEST_OHMS, World, shown_ohms
from helpers.physics import joints

ANYONE, REHEARSAL, COMPETENT = "anyone, unpowered", "rehearsal", "competent person"
_TRANSFORMER = "a short-circuit-proof safety transformer"
LEAST_SPARE = 2.0
"""With less beyond the LEDs' drop, the meter's own current would decide what is read [V]."""


class Ask(NamedTuple):
    """One reading that is asked for, and what is read there."""

    name: str
    where: str
    meter: str
    by: str
    read: Callable
    """From a `World` to values [SI]."""

    @property
    def unit(self):
        """What kind of quantity that is, as in `helpers.quantities`; count for the eye."""
        return METERS[self.meter]


METERS = {
    "ohms": "resistance", "diode test": "voltage", "DC volts": "voltage",
    "AC volts, true rms": "voltage", "AC volts, average": "voltage",
    "plug-in volts": "voltage", "plug-in watts": "power", "eye": "count",
}  # fmt: skip


def asks(build):
    """Return every reading that is asked for on a build, in the order in which it is taken.

    Parameters
    ----------
    build : Build

    Returns
    -------
    asks : list of Ask
        Unpowered, then the rehearsal, then what only a competent person reads.

    Notes
    -----
    The LED is tested on more volts than a meter's diode test has, since that one lights no blue
    LED; and in both directions, since an open LED and one that is turned round differ only there.
    Where something beside an LED conducts, each LED is also tested with one leg lifted: soldered
    in, it cannot be told from what lies beside it.
    Backwards the supply gives no more than the sheet of the LED allows: what happens beyond, no
    sheet says.

    Examples
    --------
    >>> from helpers.bench.world import Build
    >>> from helpers.sizing.brief import Brief
    >>> [ask.name for ask in asks(Build(Brief(), "series_diode", 120e3, 2))][:4]
    ['R1', 'R2', 'whole string', 'leads to metal']
    """
    return [*_unpowered(build), *_led_test(build), *_rehearsed(build), *_on_mains(build)]


_ENDS = {
    "a": "the end of the string", "b": "the lead without resistors", "m": "the LED's cathode",
    "p": "the LED's anode", "n": "the LED's cathode",
}  # fmt: skip
_ENDS_APART = _ENDS | {
    "a": "the inner end of the live half",
    "b": "the inner end of the neutral half",
}


def _unpowered(build):
    def row(name, where, read, meter="ohms"):
        return Ask(name, where, meter, ANYONE, read)

    live, neutral = build.each_wire
    for at in range(live + neutral):
        where = f"across resistor {at + 1}, counted from the live lead"
        if neutral:
            wire, place = ("live", at + 1) if at < live else ("neutral", live + neutral - at)
            where = f"across resistor {place} in the {wire} wire, counted from its lead"
        yield row(f"R{at + 1}", where, lambda world, at=at: shown_ohms(world.ohms[at]))
    if build.count > 1:
        where = "from the live lead to the end of the last resistor"
        if neutral:
            where = "across each half of the string, both readings added"
        yield row("whole string", where, lambda world: shown_ohms(world.string))
    where = "from both leads together to any metal that a hand can touch"
    yield row("leads to metal", where, World.metal)
    if build.plug_in:
        where = "across the pins of the heater's plug, pulled out, in the hand, not at an outlet"
        yield row("element", where, World.element)
    for name, ends in build.joints.items():
        for turned in (False, True) if joints.kind(name) == "diode" else ():
            each = ends[::-1] if turned else ends
            if turned and joints.way(build.joints, *each) is not None:
                continue  # the LED beside it conducts there: the LED test asks that
            at = _ENDS_APART if neutral else _ENDS
            where = f"red lead on {at[each[0]]}, black lead on {at[each[1]]}"
            read = partial(World.of_diode, ends=each)
            yield row(f"{name}{', turned' if turned else ''}", where, read, "diode test")


def _led_test(build):
    through = f"V DC through {TEST_OHMS / 1e3:g} kΩ"
    for name, words in (("led", "LED"), ("second_led", "second LED")):
        ends = build.joints.get(name)
        if ends and joints.way(build.joints, ends[1], ends[0]):
            where = f"across the {words}, one leg lifted: {build.test_volts:g} {through}, "
            where += "plus and red lead on its anode"
            read = partial(World.of_alone, name=name, volts=build.test_volts)
            yield Ask(f"{words} alone", where, "DC volts", REHEARSAL, read)
    for turned, volts in ((False, build.test_volts), (True, build.turned_volts)):
        if not volts:
            continue
        name = "LED test, turned" if turned else "LED test"
        said = "plus and red lead on its anode"
        if turned:
            said = "the clips of the supply and the leads of the meter changed over"
        where = f"across the LED, soldered in, on no other supply: {volts:g} {through}, {said}"
        read = partial(World.of_test, turned=turned, volts=volts)
        yield Ask(name, where, "DC volts", REHEARSAL, read)
        read = partial(World.lit_in_test, turned=turned, volts=volts)
        yield Ask(f"{name}, LEDs lit", "how many light in that test", "eye", REHEARSAL, read)


def _rehearsed(build):
    apart = "each half of the string, both readings added"
    string = apart if build.each_wire[1] else "the whole string"

    def row(name, where, read, meter="DC volts"):
        return Ask(name, f"across {where}", meter, REHEARSAL, read)

    for volts in (LOW_VOLTS, HIGH_VOLTS):
        if volts < build.brief.led_volts + LEAST_SPARE:
            continue
        on = f"{volts:g} V DC, plus on the live lead"
        yield row(
            f"{volts:g} V, supply", f"both leads, {on}", partial(World.of_supply, volts=volts)
        )
        yield row(f"{volts:g} V, string", f"{string}, {on}", partial(World.of_string, volts=volts))
        yield row(f"{volts:g} V, LED", f"the LED, {on}", partial(World.of_led, volts=volts))
        for at in range(int(build.count)) if volts == HIGH_VOLTS and build.count > 1 else ():
            read = partial(World.of_string, volts=volts, at=at)
            yield row(f"{volts:g} V, R{at + 1}", f"R{at + 1}, {on}", read)
    if volts := build.turned_volts:
        on = f"{volts:g} V DC, minus on the live lead, the leads of the meter changed over, too"
        read = partial(World.of_supply, volts=volts, turned=True)
        yield row("turned, supply", f"both leads, {on}", read)
        read = partial(World.of_string, volts=volts, turned=True)
        yield row("turned, string", f"{string}, {on}", read)
    true, on = "AC volts, true rms", f"{AC_VOLTS:g} V AC from {_TRANSFORMER}"
    yield row("AC, supply", f"both leads, {on}", World.of_transformer, true)
    for coupling, meter in (("ac", true), ("dc", "DC volts")):
        read = partial(World.of_alternating, coupling=coupling)
        yield row(f"AC, string on {coupling.upper()}", f"{string}, {on}", read, meter)


def _on_mains(build):
    first = "plug-in meter in the wall outlet, covers closed"
    outlet = "at the dimmer's outlet by a plug adapter, covers closed"
    if not build.plug_in:
        first = outlet = "as the competent person decides, covers closed"

    def row(name, where, meter, read):
        return Ask(name, where, meter, COMPETENT, read)

    yield row("mains", first, "plug-in volts", lambda world: world.mains.volts_rms)
    for at in range(len(build.windows)):
        name = f"setting {at + 1}"
        yield row(f"{name}, watts", first, "plug-in watts", partial(World.watts, at=at))
        for response in ("true_rms", "average"):
            read = partial(World.volts, at=at, response=response)
            shown = response.replace("_", " ")
            yield row(f"{name}, {shown}", outlet, f"AC volts, {shown}", read)
    seen = "how many light, seen from outside, covers closed"
    yield row(f"setting {len(build.windows)}, LEDs lit", seen, "eye", World.lit_on_mains)
