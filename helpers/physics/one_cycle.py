"""The sums over one mains cycle of a wiring, each worked out when it is asked for.

Takes checked numbers; who may pass what is decided in `operating_point`. Works on floats and on
arrays of one length alike. Knows no ratings.
"""

from functools import cached_property

import numpy as np

from helpers.physics.circuits import IN_LEDS, LEDS
from helpers.physics.flows import flow
from helpers.physics.parts import Part

_TURN = 2.0 * np.pi


class Cycle:
    """One wiring behind a dimmer; its methods are the numbers of an `OperatingPoint`.

    Parameters
    ----------
    wiring : circuits.Wiring
        The ways of the current.
    laws : dict of str to parts.Part
        Law of every part that it names.
    crest, window, hertz, ohms : float or array
        Peak of the supply, what the dimmer lets through of a half-cycle, frequency, resistance of
        the dropper [V], [rad], [Hz], [ohm].
    """

    def __init__(self, wiring, laws, crest, window, hertz, ohms):
        self.wiring, self.laws, self.hertz, self.ohms = wiring, laws, hertz, ohms
        self.volts_peak = crest * np.sin(np.minimum(window, 0.5 * np.pi))

        def through(way):
            chain = None if way is None else [Part(ohms=ohms), *(laws[name] for name in way)]
            return flow(crest, window, chain)

        self.forward = through(wiring.forward)
        alike = wiring.backward == wiring.forward
        self.backward = self.forward if alike else through(wiring.backward)
        self.ways = (
            (wiring.forward or (), self.forward),
            (wiring.backward or (), self.backward),
        )

    def flows(self, *names):
        """The flows that pass one of some parts; one that serves both half-cycles stands twice."""
        return [flow for way, flow in self.ways if any(name in way for name in names)]

    def led_amps_mean(self):
        """Mean forward current of the LED: what makes light [A]."""
        return sum(flow.mean for flow in self.flows("led"))

    def led_amps_net_mean(self):
        """Mean current of the LED with its sign: what a DC meter in series shows [A]."""
        return self.led_amps_mean() - sum(flow.mean for flow in self.flows("breakdown"))

    def led_amps_rms_forward(self):
        """Rms of the forward current of the LED [A]."""
        return np.sqrt(sum(flow.square for flow in self.flows("led")))

    def led_amps_rms(self):
        """Rms of its whole current, reverse breakdown included [A]."""
        return np.sqrt(sum(flow.square for flow in self.flows("led", "breakdown")))

    def led_amps_peak(self):
        """Highest forward current of the LED [A]."""
        return _highest(self.flows("led"))

    def led_reverse_amps_peak(self):
        """Highest breakdown current of the LED [A]."""
        return _highest(self.flows("breakdown"))

    def led_conduction_fraction(self):
        """Share of the cycle in which the LED carries forward current [-]."""
        return sum(flow.width for flow in self.flows("led")) / _TURN

    def led_bright_fraction(self):
        """Share of the cycle in which it carries over 1 % of its peak current [-]."""
        return sum(flow.width_above(0.01 * flow.peak) for flow in self.flows("led")) / _TURN

    def second_led_amps_mean(self):
        """Mean forward current of the second LED, zero if there is none [A]."""
        return sum(flow.mean for flow in self.flows("second_led"))

    def second_led_amps_peak(self):
        """Highest forward current of the second LED, zero if there is none [A]."""
        return _highest(self.flows("second_led"))

    def second_led_reverse_amps_peak(self):
        """Highest breakdown current of the second LED, which only a fault can bring [A]."""
        return _highest(self.flows("second_breakdown"))

    def branch_amps_rms(self):
        """Rms of the current in the resistor [A]."""
        return np.sqrt(self.forward.square + self.backward.square)

    def branch_amps_peak(self):
        """Highest current in the resistor, in either direction [A]."""
        return np.maximum(self.forward.peak, self.backward.peak)

    def resistor_watts(self):
        """Mean power in the resistor [W]."""
        return self.ohms * (self.forward.square + self.backward.square)

    def led_watts(self):
        """Mean power in all LEDs, breakdown included [W]."""
        return self._watts(IN_LEDS)

    def diode_watts(self):
        """Mean power in all silicon diodes [W]."""
        return self._watts(("diode",))

    def _watts(self, names):
        return sum(
            flow.watts_in(self.laws[name]) for way, flow in self.ways for name in way
            if name in names
        )  # fmt: skip

    def branch_watts(self):
        """Mean power that the indicator takes from its terminals [W]."""
        return self.forward.delivered + self.backward.delivered

    def branch_watt_hours_per_day(self):
        """Energy that it takes in 24 hours [Wh]."""
        return 24.0 * self.branch_watts()

    def _held(self, names, amps):
        """Volts of some parts at a current, never more than the wave's own peak."""
        return np.minimum(sum(self.laws[name].volts_at(amps) for name in names), self.volts_peak)

    def led_reverse_volts_peak(self):
        """Highest reverse voltage of the LED if diodes block ideally [V]."""
        return self._held(self.wiring.led_holds, self.backward.peak)

    def led_reverse_volts_bound(self):
        """The same at most, if the diode leaks more than the LED [V]."""
        most = self.wiring.led_may_hold
        return self._held(self.wiring.led_holds if most is None else most, self.backward.peak)

    def diode_reverse_volts_peak(self):
        """Highest reverse voltage of any silicon diode, zero if there is none [V]."""
        return self._held(self.wiring.diode_holds, self.forward.peak)

    def gap_volts_peak(self):
        """Highest voltage across a part that is open, zero if none is [V]."""
        return self._held(self.wiring.gap_holds, self.branch_amps_peak())

    @cached_property
    def _light(self):
        """Flows that light an LED, and the mean of all of them."""
        lit = self.flows(*LEDS)
        return lit, sum(flow.mean for flow in lit)

    def _of_light(self, value):
        """Divide by the mean; a dark light has no flicker, and dividing by one keeps its zeros."""
        mean = self._light[1]
        return value / np.where(mean > 0.0, mean, 1.0)

    def light_percent_flicker(self):
        """Highest less lowest light over their sum; zero if dark [%]."""
        return 100.0 * (self._light[1] > 0.0)

    def light_flicker_index(self):
        """Light above the mean over all light; zero if dark [-]."""
        lit, mean = self._light
        return self._of_light(sum(flow.mean_above(mean) for flow in lit))

    @cached_property
    def _modulations(self):
        lit, _ = self._light
        found = []
        for order, turned in ((1, -1.0), (2, 1.0)):
            cosine = sine = 0.0
            for each, sign in zip(lit, (1.0, turned), strict=False):
                own = each.harmonic(order)
                cosine, sine = cosine + sign * own[0], sine + sign * own[1]
            found.append(200.0 * self._of_light(np.sqrt(cosine * cosine + sine * sine)))
        return found

    def light_modulation_at_line_percent(self):
        """Amplitude of the light at line frequency over its mean; zero if dark [%]."""
        return self._modulations[0]

    def light_modulation_at_twice_line_percent(self):
        """The same at twice line frequency [%]."""
        return self._modulations[1]

    def light_fundamental_hertz(self):
        """Rate at which the light repeats; zero if dark [Hz]."""
        lit, mean = self._light
        differ = len(lit) < 2 or np.abs(lit[0].mean - lit[1].mean) > 1e-9 * mean
        return (mean > 0.0) * np.where(differ, self.hertz, 2.0 * self.hertz)

    def light_dominant_hertz(self):
        """Frequency of the larger of the two modulations; zero if dark [Hz]."""
        at_line, at_twice = self._modulations
        lit = self._light[1] > 0.0
        return lit * np.where(at_line >= at_twice, self.hertz, 2.0 * self.hertz)


def _highest(flows):
    peaks = [flow.peak for flow in flows]
    return peaks[0] if len(peaks) == 1 else np.maximum(*peaks) if peaks else 0.0
