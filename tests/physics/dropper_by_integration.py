"""A capacitor dropper a second way: Kirchhoff's laws stepped by scipy's stiff integrator.

No modes, no closed forms: the current of the bridge is a broken line of the voltage that drives it,
asked at every step. The break points of the dimmer are given; cycles are run until all are alike.
"""

from math import inf, pi, sin, sqrt

import numpy as np
from scipy.integrate import solve_ivp

_ZENER_OHMS = 1e-4  # stands for none: results change in proportion to it


class Dropper:
    def __init__(self, parts, supply, dimmer, heater, suppression=0.0, suppression_ohms=100.0):
        self.p, self.heater, self.hertz = parts, heater, supply.hertz
        self.extra, self.extra_ohms = suppression, suppression_ohms
        self.crest = sqrt(2.0) * supply.volts_rms
        self.edge, self.degrees = dimmer.edge, dimmer.angle_degrees

    def load(self, drive, ohms, smoothing):
        """Amps into the load behind the bridge, and those of the LED, for a driving voltage."""
        p = self.p
        drive -= 2.0 * p.diode_volts
        if p.smoothing_farads:
            led = max(smoothing - p.led_volts, 0.0) / p.led_ohms
            return max(drive - smoothing, 0.0) / ohms, led
        amps = max(drive - p.led_volts, 0.0) / (ohms + p.led_ohms)
        if p.led_volts + p.led_ohms * amps > p.clamp_volts:
            amps = (drive - p.clamp_volts) / ohms
            return amps, (p.clamp_volts - p.led_volts) / p.led_ohms
        return amps, amps

    def currents(self, at, state, on):
        """Line current with its sign, LED current, volts at the terminals, suppressor current."""
        held, smoothing, extra = state[:3]
        mains = self.crest * sin(2.0 * pi * self.hertz * at)
        source, behind = mains, 0.0
        if not on:
            source, behind = 0.0, self.heater
            if self.extra:
                source = mains - extra
                behind = self.extra_ohms
                if self.heater < inf:
                    source *= self.heater / (self.heater + behind)
                    behind = 1.0 / (1.0 / self.heater + 1.0 / behind)
            elif self.heater == inf:
                return 0.0, self.load(0.0, 1.0, smoothing)[1], 0.0, 0.0
        drive = source - held
        size, led = self.load(abs(drive), behind + self.p.surge_ohms, smoothing)
        line = size if drive > 0.0 else -size
        terminals = source - behind * line
        leak = -extra / self.extra_ohms if on else (mains - extra - terminals) / self.extra_ohms
        return line, led, terminals, leak

    def rates(self, at, state, on):
        p = self.p
        line, led, terminals, leak = self.currents(at, state, on)
        held, smoothing = state[:2]
        into = 0.0
        if p.smoothing_farads:
            zener = max(smoothing - p.clamp_volts, 0.0) / _ZENER_OHMS
            into = (abs(line) - led - zener) / p.smoothing_farads
        given = terminals * line
        leaked = leak / self.extra if self.extra else 0.0
        return [
            (line - held / p.bleeder_ohms) / p.farads, into, leaked,
            led, led * led, line * line, held * held, given * on, -given * (not on), abs(line),
        ]  # fmt: skip

    def windows(self, cycle):
        cut = self.degrees / 180.0
        stops = {"none": [(0.0, 1.0, True)],
                 "leading": [(0.0, cut, False), (cut, 1.0, True)],
                 "trailing": [(0.0, cut, True), (cut, 1.0, False)]}[self.edge]  # fmt: skip
        for half in (2 * cycle, 2 * cycle + 1):
            for start, stop, on in stops:
                if stop > start:
                    yield (half + start) / 2.0 / self.hertz, (half + stop) / 2.0 / self.hertz, on

    def results(self, cycles=2):
        p = self.p
        state, lines, leds, volts = np.array([0.0, p.led_volts, 0.0]), [], [], []
        for cycle in range(cycles):
            sums = np.zeros(7)
            for start, stop, on in self.windows(cycle):
                run = solve_ivp(
                    self.rates, (start, stop), [*state, *sums], "Radau", args=(on,), rtol=1e-8,
                    atol=[1e-7, 1e-8, 1e-7, 1e-12, 1e-13, 1e-13, 1e-6, 1e-9, 1e-10, 1e-12],
                    max_step=1.0 / self.hertz / 400.0,
                )  # fmt: skip
                state, sums = run.y[:3, -1], run.y[3:, -1]
                if cycle == cycles - 1:
                    seen = [self.currents(t, y, on) for t, y in zip(run.t, run.y.T, strict=True)]
                    lines += [abs(one[0]) for one in seen]
                    leds += [one[1] for one in seen]
                    volts += list(np.abs(run.y[0]))
        led, led_square, line_square, held_square, source, heater, size = sums * self.hertz
        return {
            "led_amps_mean": led,
            "led_amps_rms": sqrt(led_square),
            "led_amps_peak": max(leds),
            "line_amps_rms": sqrt(line_square),
            "line_amps_peak": max(lines),
            "capacitor_volts_peak": max(volts),
            "surge_watts": p.surge_ohms * line_square,
            "bleeder_watts": held_square / p.bleeder_ohms,
            "led_watts": p.led_volts * led,
            "led_resistor_watts": p.led_ohms * led_square,
            "bridge_watts": 2.0 * p.diode_volts * size,
            "heater_watts": heater,
            "source_watts": source,
            "light_percent_flicker": 100.0 * (max(leds) - min(leds)) / (max(leds) + min(leds)),
        }
