"""Explorers of the bench: whether a reading agrees, and whether a box has settled."""

from math import hypot

from helpers.figures import on_bench
from helpers.physics import heat, rehearsal, uncertainty
from helpers.physics.uncertainty import Meter
from helpers.quantities import write, write_as

#: What sheets of meters say of a range of DC volts. Common practice, no source.
SHEETS = {
    "± (0.5 % + 2 digits)": Meter(0.5, 2.0, least_step=0.01),
    "± (0.8 % + 3 digits)": Meter(0.8, 3.0, least_step=0.01),
    "± (2 % + 5 digits)": Meter(2.0, 5.0, least_step=0.01),
}
ROOM_CELSIUS = 20.0
ALLOWS_NOTHING = "That alone allows nothing: a competent person decides about the mains."
STOP = "Stop and look for the reason; nothing goes on the mains."


def agreement(supply, volts, supply_percent, ohms, ohms_percent, sheet, read_volts):
    """Show a prediction of the rehearsal beside a reading, and whether they agree.

    Parameters
    ----------
    supply : mains.Supply
        The learner's supply, which a rehearsal does not depend on.
    volts, supply_percent : float
        The rehearsal supply and its limits [V], [%].
    ohms, ohms_percent : float
        Each of two resistors, and its limits [ohm], [%].
    sheet : str
        A key of `SHEETS` [-].
    read_volts : float
        What is read across one of them, 0 to 24 [V].

    Returns
    -------
    drawn : Drawn

    References
    ----------
    JCGM 100:2008, 4.3.7, 5.1 and 6.2. That a difference within the combined expanded uncertainty
    is agreement: rule of this course.

    Examples
    --------
    >>> sheet = "± (0.8 % + 3 digits)"
    >>> [agreement(None, 24.0, 1.0, 100e3, 5.0, sheet, read).finding.split(",")[0]
    ...  for read in (11.2, 21.1)]
    ['They agree', 'They disagree']
    """
    predicted = rehearsal.volts_on_one(
        volts, ohms, supply_percent=supply_percent, ohms_percent=ohms_percent
    )
    own = uncertainty.rectangular(SHEETS[sheet].half_width(read_volts))
    both, apart = hypot(predicted.standard, own), abs(read_volts - predicted.value)
    agrees = apart <= uncertainty.expanded(both)
    drawn = on_bench.agreement(
        (predicted.value, uncertainty.expanded(predicted.standard)),
        (read_volts, uncertainty.expanded(own)),
        agrees,
    )
    said = (
        f"{drawn.finding} {write_as(apart, 'V', 2)} lie between them, "
        f"{write(apart / both, 'ratio', 2)} combined uncertainties; 2 are allowed. "
        f"{ALLOWS_NOTHING if agrees else STOP}"
    )
    return drawn._replace(finding=said)


def settling(supply, minutes, tau_minutes, rise_kelvin, step_kelvin):
    """Show how far a closed box has warmed up, and what two readings a minute apart say.

    Parameters
    ----------
    supply : mains.Supply
        The learner's supply, which this does not depend on.
    minutes : float
        Time since switching on, 1 to 360 [min].
    tau_minutes : float
        Time constant [min].
    rise_kelvin : float
        Rise when all is settled [K].
    step_kelvin : float
        Last place of the display [K].

    Returns
    -------
    drawn : Drawn

    References
    ----------
    As `heat.celsius_after`; settled after five time constants: rule of this course.

    Examples
    --------
    >>> said = settling(None, 62.0, 30.0, 40.0, 1.0).finding.replace("\\xa0", " ")
    >>> "now 55 °C, a minute ago 55 °C" in said, "5.1 K are still to come" in said
    (True, True)
    """
    part = rise_kelvin, 1.0, 60.0 * tau_minutes, ROOM_CELSIUS
    drawn = on_bench.settling(60.0 * minutes, rise_kelvin, 60.0 * tau_minutes, ROOM_CELSIUS)
    now, before = (
        step_kelvin * round(heat.celsius_after(60.0 * at, *part) / step_kelvin)
        for at in (minutes, minutes - 1.0)
    )
    shown = (
        f"The display says now {write(now, 'temperature', 4)}, a minute ago "
        f"{write(before, 'temperature', 4)}."
    )
    settled = minutes >= heat.SETTLED_AFTER * tau_minutes
    if now == before:
        shown += " The two are equal" + (
            ", and here that fits." if settled else ", and that proves nothing."
        )
    span = write_as(60.0 * heat.SETTLED_AFTER * tau_minutes, "min")
    said = f"{drawn.finding} {shown} Five time constants are {span}."
    return drawn._replace(finding=said)
