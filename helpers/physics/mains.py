"""The mains that a learner may have at home: voltage, frequency and the name to choose it by."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Supply:
    volts_rms: float
    hertz: float

    @property
    def name(self):
        return f"{self.volts_rms:g} V {self.hertz:g} Hz"


_HOUSEHOLD = ((230, 50), (120, 60), (240, 50), (127, 60), (100, 50), (100, 60))
SUPPLIES = {supply.name: supply for supply in (Supply(float(v), float(f)) for v, f in _HOUSEHOLD)}
