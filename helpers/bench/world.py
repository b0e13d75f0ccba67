"""A pilot light as planned or as it really is, and what the meters of a bench log meet in it.

Every part and supply may be astray by a share of its half-width. States facts of one state, sound
or not; knows neither uncertainty nor verdict.
"""

from dataclasses import dataclass, field, replace
from functools import cache, cached_property

import numpy as np

from helpers.physics import (
    circuits,
    joints,
    leakage,
    leds,
    limits,
    mains,
    meters,
    parts,
    phase_cut,
    signals,
)
from helpers.physics.parts import Part
from helpers.sizing.candidates import LED_STRAY_VOLTS

LOW_VOLTS, HIGH_VOLTS, AC_VOLTS = 12.0, 24.0, 12.0
"""Of the bench supply, and of a safety transformer [V]."""
TEST_VOLTS, TEST_OHMS = 5.0, 4.7e3
"""Of the LED test, for each LED in series, and the resistor in its lead [V], [ohm]."""
SETTINGS = 5
"""From the lowest to the highest that is used [-]."""
MOST_OHMS = 20e6
"""What a range of ohms shows at most: common practice, no source [ohm]."""
MARK_DEGREES = 5.0
"""How well a mark on a knob says what it lets through: common practice, no source [deg]."""


@dataclass(frozen=True)
class Build:
    """A pilot light as it is meant to be: a brief, a circuit, and its string of resistors."""

    brief: object
    """All but the string: a `brief.Brief`."""
    circuit: str
    """A key of `circuits.CIRCUITS` [-]."""
    ohms_each: float
    """Each resistor [ohm]."""
    count: int
    """How many in series [-]."""

    def __post_init__(self):
        circuits.named(self.circuit)
        limits.positive(self.ohms_each, "ohms_each", "ohm")
        limits.between(self.count, "count", "resistors", 1, 12)

    @property
    def joints(self):
        """How its parts are joined."""
        return joints.JOINTS[self.circuit]

    @property
    def each_wire(self):
        """How many resistors stand in the live wire and in the neutral; both, where hands come."""
        neutral = 0 if self.brief.box_touch == "closed window" else int(self.count) // 2
        return int(self.count) - neutral, neutral

    @property
    def plug_in(self):
        """Whether the heater's own plug can be pulled and measured at."""
        return self.brief.use_connection == "plug-in"

    @property
    def windows(self):
        """What each setting lets through of a half-cycle, the lowest first [deg]."""
        brief = self.brief
        number = SETTINGS if brief.cuts else 1
        return np.linspace(brief.lowest_degrees, brief.highest_degrees, number)

    @property
    def test_volts(self):
        """Of the LED test, never above the rehearsal's [V]."""
        return min(self.brief.led_count * TEST_VOLTS, HIGH_VOLTS)

    @property
    def turned_volts(self):
        """What the supply may push backwards: no more than the sheet of the LED allows [V]."""
        return min(self.test_volts, self.brief.led_count * self.brief.led_reverse)

    @property
    def sound(self):
        """The state in which everything is as planned."""
        return State((1.0,) * int(self.count), self.joints)


@dataclass(frozen=True)
class State:
    """What differs from the plan."""

    times: tuple
    """What each resistor has of its value; 0 for a short, infinite for open [-]."""
    joints: dict = field(hash=False)
    """How the parts are joined, as `joints.JOINTS`."""
    loose: tuple = ()
    """Half-width of each resistor's value where that is wider than its tolerance [%]."""
    meter: str = "right"
    """Or on AC (coupling) or on DC all the time, or plain (average) in place of true rms; or its
    leads unturned in the rows where the supply is turned, or all unturned, LED test too [-]."""
    outside: tuple = ("none", "none")
    """One of `faults.OUTSIDE`, or a touch of metal."""
    set_to: tuple = ()
    """Pairs: the volts that are asked for, and those that the bench supply was set to [V]."""
    reverse: bool = False
    """Whether the settings of the dimmer were taken from the highest down [-]."""
    mains: float = 1.0
    """Of the label [-]."""
    mains_stray: float | None = None
    """Half-width of that; the range of the mains if none [-]."""


def changed(state, part, how):
    """Return the state in which one part of the light is shorted, open or turned round."""
    return replace(state, joints=joints.faulty(state.joints, part, how))


def shown_ohms(ohms):
    """What a range of ohms shows: infinite for OL."""
    return np.where(np.asarray(ohms) > MOST_OHMS, np.inf, ohms)


class World:
    """A build in a state, with every part and supply as far astray as `stray` says.

    Parameters
    ----------
    build : Build
    state : State
    stray : dict of str to array
        Input by input, in parts of its half-width, -1 to 1 [-].
    """

    def __init__(self, build, state, stray):
        self.build, self.state, self.stray = build, state, stray
        self.dimmed = cache(self._dimmed)
        brief = build.brief
        loose = state.loose or (brief.bin_tolerance,) * len(state.times)
        self.ohms = [
            joints.OPEN_OHMS if times == np.inf
            else build.ohms_each * times * (1.0 + 0.01 * wide * stray[f"R{at + 1}"])
            for at, (times, wide) in enumerate(zip(state.times, loose, strict=True))
        ]  # fmt: skip
        self.string = sum(self.ohms)
        live = build.each_wire[0]
        self.read_apart = [sum(each) for each in (self.ohms[:live], self.ohms[live:]) if each]
        self.laws = {
            "led": self._led("led"), "second_led": self._led("second_led"),
            "diode": parts.SILICON._replace(volts=0.1 * stray["diode"]),
        }  # fmt: skip

    def _led(self, name):
        brief = self.build.brief
        one, count = leds.real(brief.led_colour), brief.led_count
        usual = leds.typical_volts(brief.led_colour)
        moved = 0.0 if brief.led_drop is None else brief.led_drop - usual
        volts = count * (moved + LED_STRAY_VOLTS * self.stray[name])
        return Part(volts, count * one.ohms, count * one.slope_volts, one.saturation_amps)

    def on_dc(self, volts, unturned=False):
        """What a DC range shows of a steady voltage: nothing if it stands on AC."""
        return (0.0 if self.state.meter == "on AC" else -1.0 if unturned else 1.0) * volts

    def supply(self, volts):
        """Volts of the bench supply that is to be set to so many."""
        volts = dict(self.state.set_to).get(volts, volts)
        return volts * (1.0 + 0.03 * self.stray[f"{volts:g} V set"])

    def of_supply(self, volts, turned=False):
        """Volts across both leads, on the bench supply set to so many [V]."""
        return self.on_dc(self.supply(volts), turned and "unturned" in self.state.meter)

    def of_diode(self, ends):
        """What the diode test shows, red lead on the first joint; infinite for OL [V]."""
        return joints.diode_test(self.state.joints, self.laws, ends)

    def of_string(self, volts, at=None, turned=False):
        """DC volts across one resistor, or across all in each wire, read apart and added."""
        held, volts = (self.state.joints, self.laws), self.supply(volts)
        return self.on_dc(sum(
            joints.string_volts(*held, self.string - measured, measured, volts, turned)
            for measured in (self.read_apart if at is None else [self.ohms[at]])
        ), turned and "unturned" in self.state.meter)  # fmt: skip

    def of_led(self, volts):
        """Volts across the LED, on the bench supply set to so many [V]."""
        ends = self.build.joints["led"]
        return self.on_dc(
            joints.led_volts(self.state.joints, self.laws, ends, self.string, self.supply(volts))
        )

    def of_test(self, turned, volts):
        """Volts across the LED, soldered in, in the LED test on so many [V]."""
        ends = self.build.joints["led"]
        return self.on_dc(joints.pin_volts(
            self.state.joints, self.laws, ends[::-1] if turned else ends, TEST_OHMS,
            self.supply(volts),
        ), turned and self.state.meter == "all unturned")  # fmt: skip

    def of_alone(self, name, volts):
        """The LED test of one LED with a leg lifted, by the marks on the LED itself."""
        held, ends = self.state.joints, "ab"
        alone = {name: ends} if name in held else {"wire": ends} if "wire" in held else {}
        return self.on_dc(joints.pin_volts(alone, self.laws, ends, TEST_OHMS, self.supply(volts)))

    def lit_in_test(self, turned, volts):
        """How many LEDs light in that test [-]."""
        if volts < self.build.brief.led_volts:
            return 0
        ends = self.build.joints["led"]
        found = joints.lit(self.state.joints, *(ends[::-1] if turned else ends))
        return self.build.brief.led_count * len(found)

    @cached_property
    def transformer(self):
        """Volts of the safety transformer."""
        return AC_VOLTS * (1.0 + 0.2 * self.stray["AC set"])

    @cached_property
    def alternating(self):
        """Signal across the string on the safety transformer."""
        held = self.state.joints, self.laws, self.string
        return joints.string_signal(*held, self.transformer)

    def of_transformer(self):
        """What an AC range shows of the safety transformer [V]."""
        return self.transformer * (self.state.meter != "on DC")

    def of_alternating(self, coupling):
        """What an AC or a DC range shows across the string; the meter may stand on the other."""
        coupling = {"on AC": "ac", "on DC": "dc"}.get(self.state.meter, coupling)
        response = "mean" if coupling == "dc" else "true_rms"
        return meters.reading(self.alternating, response, coupling)

    def element(self):
        """What a range of ohms shows across the pins of the heater's plug [ohm]."""
        missing = self.state.outside in (("element", "open"), ("cut-out", "open"))
        return np.inf if missing else self.heater

    def metal(self):
        """What a range of ohms shows from the leads to metal that can be touched [ohm]."""
        return 1.0 if self.state.outside == ("metal", "touched") else np.inf

    @cached_property
    def heater(self):
        """Resistance of the element [ohm]."""
        return self.build.brief.heater_ohms * (1.0 + 0.1 * self.stray["heater"])

    @cached_property
    def mains(self):
        """The mains of the day."""
        brief, state, label = self.build.brief, self.state, self.build.brief.supply_volts
        wide = max(brief.high.volts_rms - label, label - brief.low.volts_rms) / label
        wide = wide if state.mains_stray is None else state.mains_stray
        volts = label * (state.mains + wide * self.stray["mains"])
        return mains.Supply(volts, brief.supply_hertz)

    def _dimmed(self, at):
        """Signal across the dimmer's outlet at one setting; None where nobody can say."""
        part, how = self.state.outside
        brief, supply = self.build.brief, self.mains
        if (part, how) in (("element", "open"), ("cut-out", "open")):
            return None
        if (part, how) == ("neutral", "open"):
            supply = mains.Supply(1e-9 * supply.volts_rms, supply.hertz)
        if (part, how) == ("dimmer", "open"):
            passed = 0.0 * supply.volts_rms
            if brief.suppression_farads:
                passed = leakage.off_state(
                    supply, brief.suppression_farads, leakage.USUAL_SNUBBER[1], self.heater
                ).volts_rms
            return signals.dimmed_mains(mains.Supply(np.maximum(passed, 1e-9), supply.hertz))
        at = len(self.build.windows) - 1 - at if self.state.reverse else at
        window = self.build.windows[at]
        if brief.cuts:
            window = np.clip(window + MARK_DEGREES * self.stray[f"setting {at + 1}"], 1.0, 180.0)
        short = (part, how) == ("dimmer", "short")
        dimmer = phase_cut.NO_DIMMER if short else phase_cut.Dimmer("trailing", window)
        if part == "dimmer" and "half" in how:
            return signals.half_wave(supply, dimmer)
        return signals.dimmed_mains(supply, dimmer)

    def volts(self, at, response):
        """What an AC range shows at the dimmer's outlet at one setting [V]."""
        signal = self.dimmed(at)
        if signal is None:
            return np.nan
        response = "average" if self.state.meter == "plain" else response
        return meters.reading(signal, response)

    def watts(self, at):
        """What a plug-in meter shows of the heater at one setting [W]."""
        signal = self.dimmed(at)
        return 0.0 if signal is None else signal.rms**2 / self.heater

    def lit_on_mains(self):
        """How many LEDs light on the mains, at the highest setting [-]."""
        part, how = self.state.outside
        if np.inf in self.state.times or (how == "open" and part in ("neutral", "dimmer")):
            return 0
        halves = {"half wave": ("ab",), "other half wave": ("ba",)}.get(how, ("ab", "ba"))
        found = set().union(*(joints.lit(self.state.joints, *each) for each in halves))
        return self.build.brief.led_count * len(found)


def inputs(build):
    """Return the names of all that may be astray."""
    return (
        *(f"R{at + 1}" for at in range(int(build.count))), "led", "second_led", "diode",
        *(f"{volts:g} V set" for volts in supplies(build)), "AC set", "heater", "mains",
        *(f"setting {at + 1}" for at in range(len(build.windows))),
    )  # fmt: skip


def supplies(build):
    """Return every voltage that the bench supply is set to [V]."""
    return tuple(sorted({LOW_VOLTS, HIGH_VOLTS, build.test_volts, build.turned_volts} - {0.0}))
