"""What a learner can do after each lesson, in plain words, and the questions that show it.

Written from what the lessons set out to teach, not from the bank: a row with no question would be
something taught and never tested.
"""

OUTCOMES = {
    "00": {
        "type a quantity with its unit": ("start-1",),
        "choose an answer, and take no dark light for a proof": ("start-2",),
    },
    "01": {
        "work out the current through a body, and say what it does": ("safe-1", "safe-3"),
        "say why volts alone do not tell the harm": ("safe-2",),
        "say what a residual-current device does and what it does not": ("safe-4", "safe-5"),
        "say how an LED straight across the mains ends": ("safe-6",),
        "isolate, prove the tester, prove dead, prove the tester again": ("safe-7", "safe-8"),
        "say which parts stay live, a dropper and a capacitor among them": ("safe-9",),
        "help somebody who hangs on the mains, without joining them": ("safe-10",),
        "say what earth, an unbroken cover and a second layer are for": ("safe-9", "safe-17"),
        "find the way through air and along a surface that mains needs": (
            "safe-16",
            "safe-17",
            "safe-18",
            "safe-19",
        ),
        "tell a meter and its leads that may be used from those that may not": (
            "safe-8",
            "safe-17",
        ),
        "choose fuse and residual-current device for a lead": ("safe-18",),
        "spot what is wrong with a cord, a fuse, a second hand, heat near plastic and heat that "
        "nobody watches": ("safe-5", "safe-17"),
    },
    "02": {
        "change between milli, micro, kilo and mega": ("ohm-1", "ohm-8"),
        "find a current from volts and ohms": ("ohm-2", "ohm-13"),
        "find the dropper of an LED, with the LED's own drop": ("ohm-3", "ohm-4", "ohm-9"),
        "choose a preferred value, and say what tolerance does": ("ohm-6", "ohm-7"),
        "read and find colour bands, and read letter codes": ("ohm-5", "ohm-8", "ohm-15"),
        "combine resistors in series and in parallel": ("ohm-10", "ohm-11"),
        "say what another supply does to the current": ("ohm-12",),
        "choose a dropper and its rating": ("ohm-14",),
    },
    "03": {
        "change between peak, rms and mean, and say what each decides": (
            "wave-1",
            "wave-3",
            "wave-4",
            "wave-5",
        ),
        "say what a diode leaves of the wave": ("wave-8", "wave-15"),
        "find the mean and the peak current of an LED, beside the quick sum": (
            "wave-6",
            "wave-7",
            "wave-8",
            "wave-9",
        ),
        "say what must be held off in reverse, and by which part": (
            "wave-12",
            "wave-13",
            "wave-14",
        ),
        "find the instants at which an LED conducts": ("wave-10", "wave-11"),
        "say what 50 and 60 Hz change": ("wave-2", "wave-16"),
        "allow for a supply that stands high or low": ("wave-12", "wave-17"),
    },
    "04": {
        "find a power from any two of volts, amperes and ohms, with the right volts": (
            "heat-3",
            "heat-5",
            "heat-6",
        ),
        "say why heat needs the rms and not the mean": ("heat-1", "heat-2"),
        "weigh ten milliamperes against one": ("heat-6",),
        "say when half a wave means half the heat, and when it does not": (
            "heat-3",
            "heat-4",
            "heat-5",
        ),
        "choose a rating with a margin": ("heat-8", "heat-14", "heat-15", "heat-16"),
        "derate a part for a warm place": ("heat-9", "heat-16"),
        "share the crest among resistors in series": ("heat-10", "heat-11", "heat-15"),
        "tell how warm a part gets in a closed box, and when it has settled": (
            "heat-12",
            "heat-13",
        ),
        "weigh the cost of the forgotten pot against that of its light": ("heat-7",),
    },
    "05": {
        "say what a leading and a trailing edge do to the wave": ("dim-1", "dim-15"),
        "turn an angle into its shares of rms, of heat and of the knob": (
            "dim-2",
            "dim-3",
            "dim-4",
            "dim-5",
            "dim-9",
        ),
        "find the light and the dropper's heat at any setting": ("dim-6", "dim-7"),
        "choose for the lowest setting and rate for the highest": ("dim-8", "dim-10"),
        "place the light before or after the dimmer, and say what it then tells": ("dim-13",),
        "say what a plain meter shows, and find the true rms from it": ("dim-11", "dim-12"),
        "say what off leaves, with a sound element and with a broken one": ("dim-14", "dim-15"),
        "say what is needed before a dimmed pot may be touched": ("dim-16",),
    },
    "06": {
        "say how bright a share of the light looks, and what a wanted look takes": (
            "see-1",
            "see-2",
            "see-3",
        ),
        "find an LED's intensity from its sheet, its current and its beam": ("see-4", "see-5"),
        "find how far a light is noticed, and the current that a place asks for": (
            "see-6",
            "see-7",
            "see-8",
        ),
        "find the lowest setting with all covers closed, and the light that is left": (
            "see-9",
            "see-10",
        ),
        "choose LED and dropper for the lowest setting": ("see-11",),
        "say what a colour asks in volts, and what it tells people": ("see-12", "see-13"),
        "say what fused flashes look like, and judge flicker and bursts": (
            "see-14",
            "see-15",
            "see-16",
        ),
        "find what is wrong in an argument about seeing": ("see-17",),
        "say what holds while a light is not noticed": ("see-18",),
    },
    "07": {
        "say what five circuits with a resistor give in light, heat and flicker": (
            "better-1",
            "better-2",
            "better-3",
        ),
        "work out a capacitor dropper on a plain sine": ("better-4", "better-5", "better-6"),
        "say what stays on the pins, and choose a bleeder": ("better-7", "better-8"),
        "work out the pulse at an edge, and what it does": ("better-9", "better-10", "better-11"),
        "say when a neon lamp goes out, and what an always-on light takes": (
            "better-12",
            "better-13",
        ),
        "choose a circuit, or one that needs no building": ("better-14",),
        "find what is wrong in an argument about circuits": ("better-15",),
        "say what hurts in a plan": ("better-16", "better-17"),
    },
    "08": {
        "say what one short does to current, light and heat of what is left": (
            "fail-1",
            "fail-2",
            "fail-3",
            "fail-4",
        ),
        "find the fault of a string from a reading": ("fail-5",),
        "say which faults make the light lie, and that dark never means dead": ("fail-6",),
        "find the heat in a loose joint": ("fail-7",),
        "judge a barrier with one part shorted": (
            "safe-11",
            "safe-12",
            "safe-13",
            "safe-14",
            "safe-15",
            "fail-8",
        ),
        "say what a fuse clears, and choose one": ("fail-9", "fail-10"),
        "say why no fuse protects a person": ("fail-11",),
        "say what is replaced after something has smoked": ("fail-12",),
        "find what is wrong in an argument about faults": ("fail-13",),
    },
    "09": {
        "go from a plan to a decision in order": ("meter-1",),
        "say how far off a reading and a prediction may be": (
            "meter-2",
            "meter-3",
            "meter-4",
            "meter-5",
        ),
        "choose a meter, and say where its sheet does not hold": ("meter-6", "meter-7"),
        "say which meter, leads and ranges hurt on the mains": ("meter-8", "meter-9"),
        "choose supply, limit and range for a rehearsal": ("meter-10",),
        "say when a part has settled": ("meter-11", "meter-12"),
        "say whether reading and prediction agree, and what to do if not": (
            "meter-13",
            "meter-16",
        ),
        "find the wrong part from the readings": ("meter-14", "meter-15"),
        "accept or reject with a guard band": ("meter-17",),
        "find what is wrong in a report from the bench": ("meter-18",),
        "say what follows a failed rehearsal, or one dead reading": ("meter-19", "meter-20"),
    },
    "10": {
        "size a light for a brief, or say what forbids it": ("own-1",),
    },
}
