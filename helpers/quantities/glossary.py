"""What the course measures: names, symbols, units and sizes. Imports nothing of ours."""

from dataclasses import dataclass
from math import inf


@dataclass(frozen=True)
class Quantity:
    """One glossary entry; sizes are in `unit`, zero is always allowed besides them."""

    name: str
    symbol: str
    unit: str
    meaning: str
    smallest: float  # the smallest and the largest size, sign left out, that the course meets
    largest: float
    lowest: float = 0.0  # no value can lie below it: 0 for what is never negative
    prefixed: bool = True  # written with milli, kilo and the like


GLOSSARY = {
    quantity.name: quantity
    for quantity in (
        Quantity("voltage", "V", "V", "the push between two points", 1e-6, 1e4, -inf),
        Quantity("current", "I", "A", "the flow of charge through a part", 1e-9, 100, -inf),
        Quantity("resistance", "R", "Ω", "volts needed for each amp", 0.1, 1e8),
        Quantity("power", "P", "W", "energy turned over each second", 1e-9, 1e4),
        Quantity("capacitance", "C", "F", "charge stored for each volt", 1e-12, 0.1),
        Quantity("frequency", "f", "Hz", "cycles each second", 0.1, 1e7),
        Quantity("time", "t", "s", "how long it takes", 1e-9, 1e6),
        Quantity("energy", "E", "Wh", "power used over time", 1e-9, 1e6),
        Quantity("charge", "Q", "C", "current carried over time", 1e-9, 1, -inf),
        Quantity("length", "l", "m", "distance, thickness or gap", 1e-6, 1e3),
        Quantity("luminous intensity", "Iv", "cd", "light sent one way", 1e-7, 1e3),
        Quantity("illuminance", "Ev", "lx", "light that arrives on a surface", 1e-8, 2e5),
        Quantity("angle", "α", "°", "place in the mains cycle", 1e-3, 3600, -inf, False),
        Quantity("percent", "p", "%", "parts in a hundred", 1e-3, 1000, -inf, False),
        Quantity("ratio", "r", "", "one size divided by another", 1e-6, 1e6, -inf, False),
        Quantity("temperature", "T", "°C", "how hot it is", 1e-2, 3000, -273.15, False),
        Quantity("temperature rise", "ΔT", "K", "how much hotter", 1e-3, 3000, -inf, False),
        Quantity("thermal resistance", "Rth", "K/W", "rise per watt", 1e-3, 1e4, 0.0, False),
    )
}


def entry(name):
    """The entry of that name; a ValueError where there is none."""
    if name not in GLOSSARY:
        raise ValueError(f"{name!r} is not in the glossary, which has: {', '.join(GLOSSARY)}")
    return GLOSSARY[name]
