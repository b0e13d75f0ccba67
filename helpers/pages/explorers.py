"""All explorers, a row each: what is drawn, what can be moved and from where, what to try.

Most hand the state of their controls to a figure; those that say more have a function in
`explained`.
"""

from dataclasses import replace

from helpers.figures import areas, faulty, guesses, job, readings, settings, waves
from helpers.figures.chart import axis
from helpers.figures.comparison import dropper_pulse, seven_circuits
from helpers.figures.dimmed import at_once
from helpers.figures.guesses import Guess
from helpers.figures.words import NAMES
from helpers.pages import explained, light_and_eye, on_the_bench
from helpers.pages.explained import FIGURES, MULTIPLIERS
from helpers.pages.explorer import Choice, Entry, Explorer, Slider
from helpers.pages.light_and_eye import ROOM
from helpers.physics import heater, leds, mains, ratings, resistors
from helpers.physics.operating_point import operating_point
from helpers.physics.phase_cut import Dimmer
from helpers.quantities import write
from helpers.sizing import rules

POTS_WATTS = (60.0, 90.0, 120.0, 200.0)
LOW_DEGREES, LEAST_AMPS = 130.0, 0.1e-3
"""Lowest setting and wish of the worked example in lesson 05 [deg], [A]."""
HEAT_OHMS = 47e3
"""The dropper of the worked example in lesson 04, behind a diode [ohm]."""
ROW_OHMS = (33e3, 56e3, 82e3, 120e3)
COLUMN_DEGREES = (0.0, 60.0, 90.0, 120.0, 150.0)
DROPPER_OHMS = (27e3, 33e3, 39e3, 47e3, 56e3, 68e3, 82e3, 100e3, 120e3)
DROPPER_FARADS = (33e-9, 47e-9, 68e-9, 100e-9)
SURGE_OHMS = (120.0, 470.0, 1e3, 4.7e3, 10e3)
BENCH_OHMS = [ohms for ohms in (10.0 * r for r in resistors.SERIES["E12"]) if ohms >= 220]
BENCH_OHMS = sorted([*BENCH_OHMS, 2000.0, *(100.0 * r for r in resistors.SERIES["E12"])])
"""The E12 series, and the 2 kΩ of the worked example in lesson 02 [ohm]."""
FINDER_OHMS = (33e3, 47e3, 56e3, 82e3, 120e3)
REHEARSED_OHMS = (39e3, 82e3, 100e3, 120e3, 390e3, 1e6, 3.3e6)
PERCENTS = (0.5, 1.0, 2.0, 5.0, 10.0)
TOUCH_OHMS = (1e3, 4.7e3, 10e3, 22e3, 47e3, 100e3, 330e3, 560e3, 1e6)
TOUCH_VOLTS = (5.0, 265.0)
TOUCH_SECONDS = (0.01, 0.02, 0.04, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0)
EDGES = {"leading: on late": "leading", "trailing: off early": "trailing"}
EDGE = Choice("edge", "Edge", EDGES, "leading")


def _written(values, quantity):
    return {write(value, quantity): value for value in values}


def _same(names):
    return {name: name for name in names}


def _angle(label, start):
    return Slider("angle_degrees", label, 0.0, 180.0, 1.0, start)


CIRCUIT = Choice("circuit", "Circuit", {NAMES[key]: key for key in NAMES}, "series_diode")
WITH_A_DIODE = {NAMES[key]: key for key in ("series_diode", "diode_across", "bridge")}
SHOWN = {"a fault that I choose": 0}
SHOWN |= {f"riddle {number + 1}": number + 1 for number in range(len(faulty.RIDDLES))}
DROPPER = Choice("ohms", "Dropper", _written(DROPPER_OHMS, "resistance"), 27e3)


def _brightness(supply, circuit, ohms, angle_degrees):
    """Four droppers at six settings; the one that is spoken of stands in the last column."""
    angles = (*COLUMN_DEGREES, angle_degrees)
    chosen = ROW_OHMS.index(ohms), len(COLUMN_DEGREES)
    return settings.brightness(circuit, supply, ROW_OHMS, angles, chosen=chosen)


def _heat_controls(supply):
    """Open on the worked example of the lesson: its heat at the highest mains, its rating."""
    loss = operating_point("series_diode", mains.highest(supply), ohms=HEAT_OHMS).resistor_watts
    sizes = _written(ratings.COMMON_WATTS, "power")
    return (
        Slider("watts", "Power in W", 0.01, 5.0, 0.01, round(loss, 3)),
        Slider("ambient_celsius", "Air around the part in °C", 0.0, 150.0, 5.0, 40.0),
        Choice("rated_watts", "Rating of the part", sizes, rules.rating_for(loss)),
    )


def _dimmed(supply, dimmer, circuit, ohms, volts_rms, heater_watts, room_lux):
    today = mains.Supply(volts_rms, supply.hertz)
    return at_once(circuit, supply, dimmer, ohms, heater_watts, today, room_lux)


def _dimmer_controls(supply):
    """Open on the worked example of lesson 05: its lowest setting on the lowest mains."""
    low = mains.lowest(supply)
    most = leds.dropper_for_mean("series_diode", low, LEAST_AMPS, Dimmer("leading", LOW_DEGREES))
    return (
        _angle("Angle of the edge in degrees", LOW_DEGREES),
        EDGE,
        CIRCUIT,
        Choice("ohms", "Each of two resistors", _written(DROPPER_OHMS, "resistance"),
               resistors.next_down(most / 2, "E12")),
        replace(_today(supply), start=low.volts_rms),
        Choice("heater_watts", "Pot", _written(POTS_WATTS, "power"), heater.POT_WATTS),
        ROOM,
    )  # fmt: skip


def _today(supply):
    days = ("lowest", mains.lowest(supply)), ("label", supply), ("highest", mains.highest(supply))
    options = {f"{name}, {write(each.volts_rms, 'voltage')}": each.volts_rms for name, each in days}
    return Choice("volts_rms", "Mains today", options, supply.volts_rms)


def _wave_controls(supply):
    sources = {f"the mains, {write(supply.volts_rms, 'voltage')}": supply.volts_rms}
    sources |= {f"bench transformer, {volts:g} V": volts for volts in (24.0, 12.0, 6.0)}
    return (
        Choice("volts_rms", "Supply", sources, supply.volts_rms),
        CIRCUIT,
        replace(DROPPER, start=100e3),
        Slider("instant_degrees", "Cursor in degrees", 0.0, 360.0, 1.0, 90.0),
    )


def _seven_controls(supply):
    return (
        _angle("Angle of the edge in degrees", 0.0),
        EDGE,
        _today(supply),
        replace(DROPPER, start=100e3),
    )


def _cut(draw):
    """Hand edge and angle on as a dimmer."""
    return lambda supply, edge, angle_degrees, **rest: draw(
        supply, Dimmer(edge, angle_degrees), **rest
    )


_DEGREES, _PERCENT = (0, 180, 30), (0, 100, 20)
GUESSES = {
    "current": Guess(
        "A red LED behind 2 kΩ takes 5 mA from 12 V; what does it take from 4 V, a third of it?",
        axis("bench supply in V", 0, 12, 2), axis("current in mA", 0, 6, 1), 4.0,
        "mA", guesses.led_milliamps,
        "The LED keeps its 2 V of 12 V and of 4 V, so what is left for the dropper falls to less "
        "than a third.",
    ),
    "wave": Guess(
        "A sine is at its crest at 90°; how much of the crest is there at 45°, half of the way?",
        axis("place in the half-cycle in degrees", *_DEGREES),
        axis("of the crest in %", *_PERCENT),
        45.0, "%", guesses.sine,
        "It rises steeply and is flat on top, so it is high for most of the time. With the rms it "
        "is the same share of the crest.",
    ),
    "warm-up": Guess(
        "In 3 min a part makes 63 % of its rise; how much of it is there after 6 min?",
        axis("minutes since switching on", 0, 15, 3), axis("share of the rise in %", *_PERCENT),
        6.0, "%", guesses.warm_up,
        "Every 3 min make the same share of what is still to come, never of the whole.",
    ),
    "heat": Guess(
        "At 60° two thirds of each half-cycle are let through; how much of the heat is left?",
        axis("firing angle in degrees", *_DEGREES), axis("share of full mains in %", *_PERCENT),
        60.0, "%", guesses.shares_left,
        "The ends of a half-cycle are weak, and heat goes with the square of the volts.",
    ),
    "look": Guess(
        "A tenth of the light is left; how bright does the LED look from close by?",
        axis("light, of full light in %", *_PERCENT),
        axis("how bright it looks in %", *_PERCENT),
        10.0, "%", guesses.looks,
        "The eye makes large steps of light small.",
    ),
}  # fmt: skip


def _guess(name, then, caution=""):
    """Return a picture to predict on: a mark to be put, and the curve that is shown when asked."""
    asked = GUESSES[name]
    low, high = asked.up[:2]
    return Explorer(
        lambda _, mark, shown: guesses.guess(asked, mark, shown),
        lambda _: (
            Slider("mark", f"Your mark in {asked.unit}", low, high, high / 100.0, high / 2.0),
            Choice("shown", "Show", {"my mark alone": False, "the curve": True}, False),
        ),
        (
            "Put the mark where you expect the answer: drag it, type it, or use the arrow keys. "
            "Then show the curve.",
            then,
        ),
        caution,
    )


EXPLORERS = {
    "job": Explorer(
        job.knob,
        lambda _: (Slider("percent", "Knob in %", 0.0, 100.0, 1.0, 60.0),),
        (
            "Turn the knob down slowly. Which fades first, the heat or the look of the light?",
            "Where is the pot nearly cold, and the light still plain to see?",
        ),
        "Danger: a picture of mains voltage, which kills. At 0 % the light is dark, and every wire "
        "counts as live.",
    ),
    "dropper": Explorer(
        explained.dropper,
        lambda _: (
            Slider("volts", "Supply in V", *explained.BENCH_VOLTS, 0.5, 12.0),
            Choice("ohms", "Dropper", _written(BENCH_OHMS, "resistance"), 2000.0),
        ),
        (
            "At 12 V, find the smallest dropper that keeps the arrow between its marks.",
            "Drag the column from 12 V to 24 V. Does the arrow double exactly? What stays the "
            "same?",
            "Compare the two currents in the sentence at 5 V and at 24 V. Where does leaving out "
            "the LED's own volts hurt more?",
        ),
    ),
    "waveform": Explorer(
        lambda supply, volts_rms, circuit, ohms, instant_degrees: waves.led_current(
            circuit,
            mains.Supply(volts_rms, supply.hertz),
            ohms=ohms,
            instant_degrees=instant_degrees,
        ),
        _wave_controls,
        (
            "Drag the cursor through one cycle. Where does the LED begin to glow, and what holds "
            "off the volts at 270 degrees?",
            "Compare the mean current with the quick sum for the series diode. How many times too "
            "big is the quick sum? Then try the bridge.",
            "Take the 6 V transformer. The LED now waits for its volts: where in the cycle does it "
            "start, and why is that hard to see on the mains?",
            "Choose the resistor only. What happens in the half-cycle that should be dark?",
        ),
        "Danger: this wave kills. Look at it here, never at a socket: only electrically skilled or "
        "instructed people measure inside mains equipment, under local rules.",
    ),
    "heat": Explorer(
        explained.heat,
        _heat_controls,
        (
            "Warm the air until the verdict changes. How far is that from the air beside a hot "
            "pot?",
            "Find the smallest rating that passes with your power at 100 °C.",
            "Set the power to the rating at 70 °C. What does the film reach, and would you want "
            "plastic or wax near it?",
        ),
        "Danger: a part that is within its rating can still burn skin and soften plastic, and on "
        "the mains it is live: never feel for warmth. Watch the film temperature, not only the "
        "verdict. And the verdict is for sound parts: when one of two in series shorts, the other "
        "takes four times its heat.",
        takes=("ambient_celsius",),
    ),
    "dimmer": Explorer(
        _cut(_dimmed),
        _dimmer_controls,
        (
            "Drag the edge of the wave from 0 to 90 degrees. The heat halves. What does the peak "
            "do, and what does that mean for a diode?",
            "Find the setting at which the pot makes a tenth of its heat. From how far would you "
            "still notice the light?",
            "Find where the plain meter is off by a third. Does a trailing edge change that?",
            "Go to full on the highest mains. Which resistors would be too warm for 0.25 W?",
        ),
        "Danger: behind a dimmer everything counts as live at every setting, also turned down and "
        "switched off. With a broken element, the terminals of an off pot can swing to nearly "
        "twice the crest of the mains. Dark never means dead. Nothing here is a reason to open a "
        "dimmer.",
        takes=("angle_degrees", "edge", "heater_watts", "room_lux"),
    ),
    "guess current": _guess(
        "current", "What would the curve be like without the LED? Where does it part from this one?"
    ),
    "guess wave": _guess(
        "wave",
        "At which place is half of the crest there?",
        "Danger: this wave kills.",
    ),
    "guess warm-up": _guess(
        "warm-up",
        "After how many times 3 min is less than a twentieth still to come?",
        "Danger: a part can burn skin long before it has settled, and on the mains it is live.",
    ),
    "guess heat": _guess(
        "heat",
        "Which curve is straight, and why are the others not?",
        "Danger: behind a dimmer everything counts as live at every setting.",
    ),
    "guess look": _guess(
        "look",
        "How much of the light looks half as bright from close by? And from afar?",
        "Danger: a dim light says nothing about the volts on the wires.",
    ),
    "areas": Explorer(
        lambda _, angle_degrees: areas.shares(angle_degrees),
        lambda _: (_angle("Firing angle in degrees", 70.0),),
        (
            "Go from 70 to 110 degrees. When does the part above the box no longer make up for "
            "what is missing below it?",
            "Go to 90 degrees. Why are time, heat and light all a half there?",
            "Go to 150 degrees. Which area shrinks faster, that of the squares or that of the "
            "wave?",
        ),
        "Danger: behind a dimmer everything counts as live at every setting. A small area is no "
        "small voltage.",
        takes=("angle_degrees",),
    ),
    "brightness": Explorer(
        _brightness,
        lambda _: (
            _angle("Your angle in degrees", 135.0),
            Choice("ohms", "Dropper", _written(ROW_OHMS, "resistance"), 56e3),
            CIRCUIT,
        ),
        (
            "Go down one column. The ohms grow nearly fourfold; by how much does the look fall?",
            "Find the angle at which your light looks half as bright. How much light is left "
            "there?",
            "Turn to 180 degrees. The light is out. Is the heater's wire dead?",
        ),
        "Danger: a dim or dark light says nothing about the volts on the wires. They kill at every "
        "setting.",
        takes=("angle_degrees",),
    ),
    "light and eye": Explorer(
        light_and_eye.light_and_eye,
        light_and_eye.controls,
        (
            "Halve the current. By how much does the distance shrink, and by how much the look?",
            "Go round the light: at which angle is it lost from where you stand?",
            "Put the light in the sun. Is there any current that helps, or only another place?",
        ),
        "Danger: a light that is not noticed leaves a live, hot pot looking off. Dark never means "
        "dead. More current means more heat in the dropper and higher pulses at full: it is a "
        "change of the whole sum.",
        takes=("colour", "room_lux", "metres", "off_axis_degrees"),
    ),
    "circuits": Explorer(
        _cut(seven_circuits),
        _seven_controls,
        (
            "Which circuit makes the most light for each watt? Which repeats its light the most "
            "often?",
            "Which circuit drives its LED backwards, and by how much?",
            "Cut a leading edge to 90 degrees. Which peak runs away, and which stays?",
            "Go from the lowest mains to the highest. Which grows faster: light, or heat?",
        ),
        "Danger: every part of all seven circuits is at mains voltage, the LED's legs too. "
        "Comparing them is not permission to build one; a ready-made indicator, certified or "
        "conforming for this use, is always a choice.",
        takes=("angle_degrees", "edge"),
    ),
    "dropper pulse": Explorer(
        _cut(dropper_pulse),
        lambda _: (
            _angle("Angle of the edge in degrees", 90.0),
            EDGE,
            Choice("farads", "Capacitor", _written(DROPPER_FARADS, "capacitance"), 100e-9),
            Choice("surge_ohms", "Surge resistor", _written(SURGE_OHMS, "resistance"), 1e3),
        ),
        (
            "Turn from 0 to 90 degrees. What happens to the mean, and so to the light? And to the "
            "highest current?",
            "Take the trailing edge. The pulse is lower: is it low enough?",
            "Take the largest surge resistor, at 90 degrees. Is the pulse within what a small LED "
            "stands for long? How much heat does the resistor give even on a whole sine?",
        ),
        "Danger: this is why a capacitor dropper does not go behind any cutting dimmer, leading or "
        "trailing. The pulse comes twice in every cycle. All of it is live, and its capacitor can "
        "stay charged with the plug out.",
        takes=("angle_degrees", "edge"),
    ),
    "meter": Explorer(
        _cut(readings.meters),
        lambda _: (
            _angle("Angle of the edge while on, in degrees", 80.0),
            Choice("place", "Measured", readings.PLACES, "on"),
            EDGE,
            replace(DROPPER, label="Dropper of the LED", start=68e3),
            Choice(
                "farads",
                "Capacitor across the switch",
                _written((10e-9, 47e-9, 100e-9, 220e-9), "capacitance"),
                100e-9,
            ),
            Choice("heater_watts", "Pot", _written(POTS_WATTS, "power"), heater.POT_WATTS),
        ),
        (
            "At which angle does the plain meter show half of the true value?",
            "Switch the dimmer off, then unplug the heater as well. Which reading would fool you?",
            "Now let the element be broken. What do both AC ranges leave out, and what must a "
            "tester stand there?",
            "Measure the LED's current. Which of the three follows its light?",
        ),
        "⚠ Danger: a reading of 0 V proves nothing. Isolate, prove the tester, prove dead, prove "
        "the tester again. Measuring on the mains is work for an electrically skilled or "
        "instructed person, with a meter and leads rated for all that can stand there.",
        takes=("angle_degrees", "edge", "farads", "heater_watts"),
    ),
    "faults": Explorer(
        explained.one_fault,
        lambda _: (
            Choice("riddle", "Show", SHOWN, 0),
            Choice("fault", "Fault, or guess", _same(faulty.FAULTS), list(faulty.FAULTS)[1]),
            Choice("circuit", "Circuit", WITH_A_DIODE, "series_diode"),
            Choice("ohms", "Each of two resistors", _written(FINDER_OHMS, "resistance"), 82e3),
            Slider("angle_degrees", "Firing angle in degrees", 0.0, 150.0, 1.0, 0.0),
        ),
        (
            "Go through the faults. Which leave the light as it was, or make it brighter?",
            "Choose the shorted diode, then another circuit. In which does the light go out?",
            "Solve a riddle by its symptoms alone. How often does more than one fault fit?",
        ),
        "Danger: whatever the light says here, all of it counts as live and can kill. Finding a "
        "fault in a real pot is work with the plug out and dead proved, for an electrically "
        "skilled or instructed person.",
        takes=("angle_degrees",),
    ),
    "agreement": Explorer(
        on_the_bench.agreement,
        lambda _: (
            Slider("read_volts", "Reading in V", 0.0, 24.0, 0.01, 11.2),
            Choice("volts", "Rehearsal supply", _written((12.0, 24.0), "voltage"), 24.0),
            Choice("supply_percent", "Supply, ±", _written(PERCENTS[:3], "percent"), 1.0),
            Choice("ohms", "Each of two resistors", _written(REHEARSED_OHMS, "resistance"), 100e3),
            Choice("ohms_percent", "Resistors, ±", _written(PERCENTS, "percent"), 5.0),
            Choice(
                "sheet",
                "Sheet of the meter",
                _same(on_the_bench.SHEETS),
                list(on_the_bench.SHEETS)[1],
            ),
        ),
        (
            "Find the two readings at which agreement ends. How far are they from the prediction?",
            "Take parts of 1 %. Does the reading still agree? What would a better meter change?",
            "Take 3.3 MΩ each. Why does the prediction fall, although the supply is the same?",
            "One of the two is short: read all of the volts. How many uncertainties is that?",
        ),
        "Danger: a rehearsal on an isolated, current-limited supply shows wiring and values. It "
        "shows no heat, no insulation and no distance, and the mains can kill. No agreement is "
        "permission to connect.",
    ),
    "settled": Explorer(
        on_the_bench.settling,
        lambda _: (
            Slider("minutes", "Time switched on in min", 1.0, 360.0, 1.0, 62.0),
            Choice(
                "tau_minutes",
                "Time constant",
                {f"{minutes:g} min": minutes for minutes in (3.0, 10.0, 30.0, 45.0)},
                30.0,
            ),
            Choice(
                "rise_kelvin",
                "Rise in the end",
                _written((10.0, 40.0, 80.0), "temperature rise"),
                40.0,
            ),
            Choice(
                "step_kelvin",
                "Display shows steps of",
                _written((0.1, 1.0), "temperature rise"),
                1.0,
            ),
        ),
        (
            "Find two equal readings a minute apart that are furthest from the end.",
            "Take the display with tenths. Are two readings still equal there?",
            "After how many time constants is less than one kelvin of 40 still to come?",
        ),
        "Danger: on the mains this is read from outside a closed, touch-proof cover, by a "
        "competent person. A box that goes on getting hotter while nobody looks can burn.",
    ),
    "touch current": Explorer(
        explained.touch_current,
        lambda supply: (
            Slider("volts", "Touched voltage in V", *TOUCH_VOLTS, 1.0, supply.volts_rms),
            Choice(
                "ohms",
                "Ohms in the way",
                {"none: bare contact": 0.0} | _written(TOUCH_OHMS, "resistance"),
                0.0,
            ),
            Choice("seconds", "Touched for", _written(TOUCH_SECONDS, "time"), 1.0),
        ),
        (
            "It opens at bare contact. How soon can that kill?",
            "Find the ohms that keep the current in AC-1 at your supply. Would one part alone do, "
            "if it can fail short?",
            "At bare contact, go from your supply down to 24 V. By how much does the current fall, "
            "and is it harmless then? The ohms stay as they are here: at low volts dry skin holds "
            "back more, wet skin does not.",
        ),
        "⚠ Danger: this shows why rules exist; it makes no touch safe. One dry body in twenty has "
        "fewer ohms than the sum assumes, and a wet one far fewer. Never test it.",
        remembers=True,
    ),
    "bands": Explorer(
        explained.bands,
        lambda _: (
            Choice("first", "First figure", _same(FIGURES[1:]), "yellow"),
            Choice("second", "Second figure", _same(FIGURES), "violet"),
            Choice("multiplier", "Multiplier", _same(MULTIPLIERS), "red"),
            Choice("tolerance", "Tolerance", _same(("silver", "gold", "red", "brown")), "gold"),
            Entry("Or type a value in Ω, such as 4k7", explained.bands_of),
        ),
        (
            "Cover the sentence, press the bands on the resistor until you like them, say the "
            "value, then look.",
            "Change the multiplier only. What does each step do to the value?",
            "Write the bands of 68 kΩ and of 330 Ω on paper, then type each value and compare.",
        ),
    ),
}
"""By the name that a lesson's cell gives to `explore`."""
