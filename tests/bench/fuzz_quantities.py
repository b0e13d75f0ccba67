"""Throw strings at the reader of quantities: valid, mutated and hostile ones.

Run `python tests/bench/fuzz_quantities.py` for 100,000 strings; it ends with code 1 if a bar is
missed. tests/test_quantities.py runs a hundredth of it. It must never touch an answer log.
"""

import datetime
import os
import platform
import random
import sys
import time
from collections import Counter
from dataclasses import dataclass, field
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from helpers import quantities

BAR_SHARE_UNDER_1_MS = 0.999
BAR_SLOWEST_MS = 100.0
UNITS = {
    "voltage": ("V", "mV", "kV", "volts", "µV"),
    "current": ("A", "mA", "\u03bcA", "uA", "milliamps", "amp"),
    "resistance": ("Ω", "k\u2126", "kohm", "MΩ", "R", "k", "kilohm", "ohms", "m", "M"),
    "power": ("W", "mW", "kW", "watt", "MW"),
    "capacitance": ("nF", "µF", "pF", "uF", "farads"),
    "frequency": ("Hz", "kHz", "hz", "hertz"),
    "time": ("s", "ms", "min", "h", "m"),
    "angle": ("°", "deg", "degrees", ""),
    "percent": ("%", "percent", ""),
    "ratio": ("", "x", "%"),
    "temperature": ("°C", "C", "\u2103"),
    "temperature rise": ("K", "°C"),
    "energy": ("Wh", "kWh", "J"),
    "charge": ("C", "mC", "µC"),
    "length": ("m", "mm", "cm"),
    "thermal resistance": ("K/W", "°C/W"),
}
BEFORE = ("", "", "", "about ", "~", "\u2248 ", "= ", "R = ", "the rms value is ", "(", '"')
AFTER = ("", "", "", " peak", "rms", " each", " \u00b1 5 %", " +/-0.1 V", ".", ")", " or so", " DC")
BLANKS = ("", " ", "\u00a0", "\u2009", "\u202f", "  ")
CHARACTERS = (
    "0123456789.,'eE+-\u2212 kKmMRµuΩVAWFnp%°=/*^()x\u00a0\u00b2\u0663\uff15\x00\u202e\ud800\n"
)
HOSTILE = (
    "9**9**9",
    "__import__('os').system('true')",
    "exec('1')",
    "{}[]:%s%n$(1)`1`",
    "1e999999999",
    "1e-999999999",
    "-1e309",
    "nan",
    "inf",
    "0x1F",
    "1_000",
    "1j",
    "10\u00b2",
    "\u00bd",
    "\uff11\uff12",
    "\u0661\u0662",
    "\u202e5 V",
    "\ud800\udfff",
    "\x005",
    "5\n6",
    "e\u0301" * 9,
    "=1+1",
    "R=R=1",
    "\u2028",
    "\ufeff5",
)
REPEATED = ("9", "1 ", "1,", "1.", "'1", "e9", " ", "k", "Ω", "-", "=", "(", "\x00", "1e", "\u00a0")
REPEATED += ("about ", " peak", "the ", "\u00b1 5", "5x10^", "()", " is ", "~", "p", " of", ">=")


@dataclass
class Outcome:
    """What came of a run: how often each ending came, strange errors, and times [s]."""

    endings: Counter = field(default_factory=Counter)
    strange: list = field(default_factory=list)
    seconds: list = field(default_factory=list)

    @property
    def share_under_1_ms(self):
        return sum(spent < 1e-3 for spent in self.seconds) / len(self.seconds)

    @property
    def slowest_ms(self):
        return 1e3 * max(self.seconds)


def valid(chance, name):
    """A number as people type it, with one of the quantity's units and words around it."""
    number = chance.choice(
        (
            f"{chance.uniform(1, 999):.{chance.randint(0, 4)}f}",
            f"{chance.uniform(1, 99):.2f}".replace(".", ","),
            f"{chance.randint(1000, 99_999_999):,}".replace(",", chance.choice(" ',.\u202f")),
            f"{chance.uniform(1, 9):.3g}{chance.choice('eE')}{chance.randint(-3, 3)}",
            f".{chance.randint(1, 999)}",
            f"{chance.randint(0, 99)}{chance.choice('kRMnpµ')}{chance.randint(0, 99)}",
            f"{chance.uniform(1, 9):.2f}{chance.choice(('x10^', ' * 10**', '·10^-'))}3",
        )
    )
    return (
        chance.choice(BEFORE)
        + chance.choice(("", "", "", "+", "-"))
        + number
        + chance.choice(BLANKS)
        + chance.choice(UNITS[name])
        + chance.choice(AFTER)
    )


def mutated(chance, name):
    """A valid string with one to five characters put in, taken out, changed or moved."""
    letters = list(valid(chance, name))
    for _ in range(chance.randint(1, 5)):
        place = chance.randrange(len(letters) + 1)
        removed = chance.choice((0, 1))
        letters[place : place + removed] = chance.choices(CHARACTERS, k=chance.choice((0, 1, 1)))
        if chance.random() < 0.2:
            chance.shuffle(letters)
    return "".join(letters)


def hostile(chance, name):
    """Text that means harm: code, huge numbers, long repeats, characters from anywhere."""
    return chance.choice(
        (
            chance.choice(HOSTILE),
            chance.choice(HOSTILE) + valid(chance, name),
            chance.choice(REPEATED) * chance.choice((5, 19, 20, 39, 40, 41, 1000, 100_000)),
            "".join(chance.choices(CHARACTERS, k=chance.randint(0, 60))),
            "".join(chr(chance.randrange(0x110000)) for _ in range(chance.randint(1, 45))),
            "1" * chance.randint(1, 40) + "e" + "9" * chance.randint(1, 20),
        )
    )


def cases(count, seed):
    """Yield pairs of text and quantity name: valid, mutated, hostile in turn."""
    chance = random.Random(seed)
    makers = (valid, mutated, hostile)
    for number in range(count):
        name = chance.choice(tuple(UNITS))
        yield makers[number % len(makers)](chance, name), name


def run(count, seed):
    """Read all cases, timing each and keeping every error that is not the reader's own."""
    outcome = Outcome()
    for text, name in cases(count, seed):
        start = time.perf_counter()
        try:
            quantities.read(text, name)
            ending = "read"
        except quantities.QuantityError as error:
            ending = type(error).__name__
        except Exception as error:  # kept and counted: any one of these fails the run
            ending = "strange"
            outcome.strange.append((text[:60], name, repr(error)))
        outcome.seconds.append(time.perf_counter() - start)
        outcome.endings[ending] += 1
    return outcome


def main(count=100_000, seed=60062):
    outcome = run(count, seed)
    missed = (
        bool(outcome.strange)
        or outcome.share_under_1_ms < BAR_SHARE_UNDER_1_MS
        or outcome.slowest_ms > BAR_SLOWEST_MS
    )
    print(f"{datetime.date.today()}: {count} strings into the quantity reader, seed {seed}")
    print("command: python tests/bench/fuzz_quantities.py")
    print(
        f"machine: {os.cpu_count()} cores, {platform.machine()}, {platform.system()}, "
        f"Python {platform.python_version()}"
    )
    print("endings: " + ", ".join(f"{name} {n}" for name, n in outcome.endings.most_common()))
    print(f"errors not its own: {len(outcome.strange)} (bar 0) {outcome.strange[:3] or ''}")
    print(f"under 1 ms: {outcome.share_under_1_ms:.3%} (bar {BAR_SHARE_UNDER_1_MS:.1%})")
    print(f"median: {1e6 * sorted(outcome.seconds)[count // 2]:.1f} µs")
    print(f"slowest: {outcome.slowest_ms:.2f} ms (bar {BAR_SLOWEST_MS:.0f} ms)")
    print("bar missed" if missed else "all bars met")
    return int(missed)


if __name__ == "__main__":
    sys.exit(main())
