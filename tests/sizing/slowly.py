"""A brief worked out by loops and quadrature, one string, corner and condition after the other.

Shares nothing with helpers.sizing but the brief: its circuits, limits and formulas stand here anew.
"""

from itertools import product
from math import asin, log, pi, radians, sin, sqrt

from scipy.integrate import quad

DIODE = 0.7
STRAY = 0.2


def ways(circuit, led, breakdown):
    """Of each state: drop and what the LED does in the own and in the other half-cycle."""
    dark, bare = (None, ""), (breakdown, "pushed")
    led_alone, wire, silicon = (led, "lit"), (0.0, ""), (DIODE, "")
    states = {
        "resistor_only": {"none": (led_alone, bare), "led": (wire, wire)},
        "series_diode": {
            "none": ((led + DIODE, "lit"), dark),
            "led": (silicon, dark),
            "diode": (led_alone, bare),
        },
        "diode_across": {
            "none": (led_alone, silicon),
            "led": (wire, wire),
            "led open": (dark, silicon),
            "diode": (wire, wire),
            "diode open": (led_alone, bare),
        },
        "two_leds": {
            "none": (led_alone, (led, "second")),
            "led": (wire, wire),
            "led open": ((breakdown, "pushed"), (led, "second")),
            "second_led": (wire, wire),
            "second_led open": (led_alone, bare),
        },
        "bridge": {
            "none": ((led + 2 * DIODE, "lit"), (led + 2 * DIODE, "lit")),
            "led": ((2 * DIODE, ""), (2 * DIODE, "")),
            "diode": ((led + DIODE, "lit"), silicon),
            "diode open": ((led + 2 * DIODE, "lit"), dark),
        },
    }[circuit]
    own, other = states["none"]
    return states | {"half wave": (own, dark), "other half wave": (dark, other)}


def half_cycle(crest, ohms, drop, window):
    """Mean and square of the current over a whole cycle, and its peak."""
    if drop is None or drop >= crest:
        return 0.0, 0.0, 0.0

    def amps(angle):
        return max(crest * sin(angle) - drop, 0.0) / ohms

    start, stop = asin(drop / crest), min(pi - asin(drop / crest), window)
    if stop <= start:
        return 0.0, 0.0, 0.0
    mean = quad(amps, start, stop, epsabs=1e-13)[0] / (2 * pi)
    square = quad(lambda a: amps(a) ** 2, start, stop, epsabs=1e-16)[0] / (2 * pi)
    return mean, square, amps(min(max(pi / 2, start), stop))


def point(brief, circuit, state, ohms, crest, led, window):
    """Heat of the string, of all, currents of the LED."""
    breakdown = brief.led_count * max(5.0, brief.led_volts / brief.led_count + 1.0)
    found = {"string": 0.0, "all": 0.0, "mean": 0.0, "peak": 0.0, "pushed": 0.0}
    for drop, does in ways(circuit, led, breakdown)[state]:
        mean, square, peak = half_cycle(crest, ohms, drop, window)
        found["string"] += ohms * square
        found["all"] += ohms * square + (drop or 0.0) * mean
        if does == "lit":
            found["mean"] += mean
        if does in ("lit", "second"):
            found["peak"] = max(found["peak"], peak)
        if does == "pushed":
            found["pushed"] = max(found["pushed"], peak)
    return found


def derated(rated, air):
    return rated * min(max(1.0 - (air - 70.0) / 85.0, 0.0), 1.0)


def seen_metres(brief, amps):
    luminance = 0.5 * brief.seen_lux / pi
    threshold = 0.242e-6 * (1.0 + sqrt(0.4 * luminance)) ** 2
    order = log(0.5) / log(sin(radians(90.0 - brief.led_half_angle)))
    candelas = brief.led_intensity * amps / brief.led_at
    candelas *= sin(radians(90.0 - brief.seen_angle)) ** order
    return sqrt(candelas / (100.0 * threshold))


def broken(brief, circuit, each, count, rated, type_volts):
    """Return the rules that a string breaks, as (rule, state)."""
    box = brief.box_length, brief.box_width, brief.box_height
    faces = sorted([box[0] * box[1], box[0] * box[2], box[1] * box[2]])
    surface = 2.0 * (faces[0] + faces[1]) + faces[2]
    crests = [sqrt(2.0) * each.volts_rms for each in (brief.low, brief.high)]
    windows = [radians(brief.lowest_degrees), radians(brief.highest_degrees), pi]
    stray = STRAY * brief.led_count
    drops = [max(brief.led_volts - stray, 0.0), brief.led_volts + stray]
    off = brief.bin_tolerance / 100.0
    found, film, least = set(), 0.0, float("inf")
    if count < 2:
        found.add(("count", "none"))
    states = list(ways(circuit, 1.0, 1.0))
    for state in ["none", "dropper", "dropper drift", *states[1:]]:
        left = count - (state == "dropper")
        if not left:
            continue
        wiring = state if state in states else "none"
        hot = whole = peak = share_most = mean_most = 0.0
        # With a drift the worst corner has the drifted one high or low: all are tried.
        for signs in product((-off, off), repeat=left):
            string = [each * (1.0 + sign) for sign in signs]
            if state == "dropper drift":
                string[0] *= 2.0
            ohms = sum(string)
            share_most = max(share_most, max(string) / ohms)
            for crest, led, window in product(crests, drops, windows):
                at = point(brief, circuit, wiring, ohms, crest, led, window)
                hot = max(hot, at["string"] * max(string) / ohms)
                whole, peak = max(whole, at["all"]), max(peak, at["peak"])
                if state == "none":
                    least, mean_most = min(least, at["mean"]), max(mean_most, at["mean"])
        air = brief.box_air + whole / (4.0 * surface)
        allowed = derated(rated, air) * (0.5 if state == "none" else 1.0)
        if hot > allowed:
            found.add(("heat", state))
        film = max(film, air + hot * 85.0 / rated)
        if state in ("none", "dropper", "dropper drift") and (
            share_most * brief.high.volts_rms > type_volts
        ):
            found.add(("volts", state))
        if state == "none":
            found |= {("air", "none")} if air > 85.0 else set()
            found |= {(rule, "none") for rule in ("LED", "pulses") if peak > brief.led_limit}
            found |= {("LED mean", "none")} if mean_most > brief.led_limit else set()
    if film > 155.0:
        found.add(("film", "none"))
    if circuit == "resistor_only" and crests[1] > brief.led_reverse:
        found.add(("reverse volts", "none"))
    across = {"diode_across": DIODE, "two_leds": drops[1]}.get(circuit, 0.0)
    if across > brief.led_reverse:
        found.add(("reverse volts", "none"))
    if circuit in ("series_diode", "diode_across", "bridge") and brief.bin_diode < 2 * crests[1]:
        found.add(("diode", "none"))
    if circuit == "series_diode" and brief.suppression_farads:
        most = 2.0 * crests[1] - drops[0] - DIODE
        if brief.bin_diode < most:
            found.add(("diode at off", "none"))
    if seen_metres(brief, least) < brief.seen_distance:
        found.add(("light", "none"))
    if brief.box_touch != "closed window":
        side = max(count // 2 - 1, 0) * each * (1.0 - off)
        if count < 4 or crests[1] / (side + 2000.0) > 0.7e-3:
            found.add(("touch", "none"))
    return found
