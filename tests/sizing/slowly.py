"""A brief worked out by loops and quadrature, one string, corner and condition after the other.

Shares nothing with helpers.sizing but the brief: its circuits, limits and formulas stand here anew.
"""

from functools import cache
from itertools import product
from math import asin, cos, log, pi, radians, sin, sqrt

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


def broken(brief, circuit, each, count, rated, type_volts, farads=0.0):
    """Return the rules that a string breaks, as (rule, state)."""
    other = {"neon": broken_neon, "capacitor_dropper": broken_dropper}.get(circuit)
    if other:
        found = other(brief, each, count, rated, type_volts, *[farads] * bool(farads))
        return found | ({("count", "none")} if count < 2 else set())
    return broken_string(brief, circuit, each, count, rated, type_volts)


def surface(brief):
    box = brief.box_length, brief.box_width, brief.box_height
    faces = sorted([box[0] * box[1], box[0] * box[2], box[1] * box[2]])
    return 2.0 * (faces[0] + faces[1]) + faces[2]


def warmth(brief, air):
    """Air too warm for an LED; an outside, half as far above the room, that burns in a minute."""
    outside = brief.box_air + (air - brief.box_air) / 2.0
    too = {"air": air > 85.0, "box": outside > 60.0}
    return {(rule, "none") for rule, broken in too.items() if broken}


def judged(brief, states, rated, type_volts):
    """Rules on heat, volts, film and air of states: hottest part, its volts, all heat."""
    found, film = set(), 0.0
    for state, (hot, volts, whole) in states.items():
        air = brief.box_air + whole / (4.0 * surface(brief))
        if hot > derated(rated, air) * (0.5 if state == "none" else 1.0):
            found.add(("heat", state))
        if volts > type_volts:
            found.add(("volts", state))
        film = max(film, air + hot * 85.0 / rated)
        if state == "none":
            found |= warmth(brief, air)
    return found | ({("film", "none")} if film > 155.0 else set())


@cache
def lamp(crest, strike, hold, on, off):
    """Mean and square of a neon lamp's current behind one ohm, between two angles of the dimmer."""
    steps = 4000
    lit, mean, square = False, 0.0, 0.0
    for step in range(steps):
        angle = (step + 0.5) * pi / steps
        volts = crest * sin(angle) if on <= angle <= off else 0.0
        lit = volts >= strike or (lit and volts > hold)
        amps = volts - hold if lit else 0.0
        mean, square = mean + amps / steps, square + amps**2 / steps
    return mean, square


def broken_neon(brief, each, count, rated, type_volts):
    crests = [sqrt(2.0) * supply.volts_rms for supply in (brief.low, brief.high)]
    off = brief.bin_tolerance / 100.0
    leading = brief.dimmer_edge == "leading"
    windows = [radians(brief.lowest_degrees), radians(brief.highest_degrees), pi]
    dimmed = [(pi - w, pi) if leading else (0.0, w) for w in windows]
    states, most = {}, 0.0
    unit = lamp(crests[1], brief.neon_strike, 50.0, 0.0, pi)
    for state in ("none", "dropper", "dropper drift", "lamp"):
        left = count - (state == "dropper")
        if not left:
            continue
        corners = []
        for signs in product((-off, off), repeat=left):
            string = [each * (1.0 + sign) for sign in signs]
            string[0] *= 2.0 if state == "dropper drift" else 1.0
            ohms = sum(string)
            if state == "lamp":
                mean, square, hold = 0.0, (brief.high.volts_rms / ohms) ** 2, 0.0
            else:
                # The current of one ohm, over the ohms.
                mean, square = (one / ohms**n for n, one in enumerate(unit, 1))
                hold = 50.0
            most = max(most, mean) if state == "none" else most
            share = max(string) / ohms
            corners.append((
                share * ohms * square, share * brief.high.volts_rms, ohms * square + hold * mean,
            ))  # fmt: skip
        hot, volts, whole = (max(column) for column in zip(*corners, strict=True))
        states[state] = hot, 0.0 if state == "lamp" else volts, whole
    states["half wave"] = states["other half wave"] = states["none"][0] / 2.0, 0.0, 0.0
    found = judged(brief, states, rated, type_volts)
    if most > brief.neon_limit:
        found.add(("lamp mean", "none"))
    least = min(lamp(crests[0], 1.2 * brief.neon_strike, 70.0, *at)[0] for at in dimmed) / (
        count * each * (1.0 + off)
    )
    luminance = 0.5 * brief.seen_lux / pi
    threshold = 0.242e-6 * (1.0 + sqrt(0.4 * luminance)) ** 2
    if sqrt(brief.neon_intensity * least / brief.neon_limit / (100.0 * threshold)) < (
        brief.seen_distance
    ):
        found.add(("light", "none"))
    side = max(count // 2 - 1, 0) * each * (1.0 - off)
    if brief.box_touch != "closed window" and (count < 4 or crests[1] / (side + 2000.0) > 0.7e-3):
        found.add(("touch", "none"))
    return found


def broken_dropper(brief, each, count, rated, type_volts, farads):
    """By what a capacitor alone lets through: its resistors change that by one or two in a hundred.

    It follows the mains less the drops, from where they have turned until the next crest.
    """
    low, high = (sqrt(2.0) * supply.volts_rms for supply in (brief.low, brief.high))
    off, turns = brief.bin_tolerance / 100.0, 2.0 * pi * brief.supply_hertz
    stray = STRAY * brief.led_count

    def line(drops, share, crest):
        begin = asin(1.0 - 2.0 * drops / crest)
        square = quad(lambda a: cos(a) ** 2, -begin, pi / 2)[0] / pi
        mean = 4.0 * brief.supply_hertz * share * farads * (crest - drops)
        return mean, square * (turns * share * farads * crest) ** 2

    drops = max(brief.led_volts - stray, 0.0) + 2 * DIODE
    states = {}
    for state, volts in {
        "none": drops, "dropper": drops, "dropper drift": drops, "led": 2 * DIODE,
        "diode": drops / 2.0,
    }.items():  # fmt: skip
        left = count - (state == "dropper") + (state == "dropper drift")
        if left < 1:
            continue
        mean, square = line(volts, 1.1, high)
        hot = each * (1.0 + off) * (2.0 if state == "dropper drift" else 1.0)
        states[state] = hot * square, hot * sqrt(square), left * each * square + volts * mean
    hot = each * (1.0 + off)
    least = count * each * (1.0 - off)
    share = hot / (hot + (count - 1.0) * each * (1.0 - off))
    volts = brief.high.volts_rms
    states["capacitor"] = share * volts**2 / least, share * volts, volts**2 / least
    crest_seconds = log(high / 34.0) * 1.1 * farads * (1.0 + off) * 2.0
    values = [each for each in brief.ohms if each * crest_seconds <= 1.0]
    bleeder = max(values, default=0.0)
    if bleeder:
        watts = volts**2 / (bleeder * (1.0 - off))
        states["bleeder"] = watts, volts, watts
    found = judged(brief, states, rated, type_volts)
    found |= set() if bleeder else {("pins", "none")}
    mean, square = line(drops, 1.1, high)
    # Its peak is that of the cosine where the mains begins to turn it over.
    if turns * 1.1 * farads * high > brief.led_limit:
        found.add(("LED", "none"))
    if mean > brief.led_limit:
        found.add(("LED mean", "none"))
    dim, _ = line(brief.led_volts + stray + 2 * DIODE, 0.9 * 0.8, low)
    if seen_metres(brief, dim) < brief.seen_distance:
        found.add(("light", "none"))
    if brief.led_surge and 2.0 * (high - drops) / least > brief.led_surge:
        found.add(("inrush", "none"))
    if brief.bin_diode < 2.0 * high:
        found.add(("diode", "none"))
    if brief.bin_capacitor_volts < volts:
        found.add(("capacitor volts", "none"))
    if brief.bin_capacitor_class not in ("X1", "X2"):
        found.add(("capacitor class", "none"))
    if brief.box_touch != "closed window":
        found.add(("touch", "none"))
    return found


def broken_string(brief, circuit, each, count, rated, type_volts):
    """The same of five circuits with resistors and an LED."""
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
        air = brief.box_air + whole / (4.0 * surface(brief))
        allowed = derated(rated, air) * (0.5 if state == "none" else 1.0)
        if hot > allowed:
            found.add(("heat", state))
        film = max(film, air + hot * 85.0 / rated)
        if state in ("none", "dropper", "dropper drift") and (
            share_most * brief.high.volts_rms > type_volts
        ):
            found.add(("volts", state))
        if state == "none":
            found |= warmth(brief, air)
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
