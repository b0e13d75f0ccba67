"""Distances that keep the mains apart from what may be touched: clearance and creepage.

Look-up for low-voltage equipment up to 2000 m above the sea, pollution degree 2. Where a value
lies between two steps the next higher one counts. A product standard may ask for more. Clearance
follows the impulse on the mains, creepage the working rms volts; solid insulation is no distance
but a type test.
"""

from dataclasses import dataclass

from helpers.physics import limits, mains

#: Overvoltage category of what hangs on the mains: electronics behind a filter, plugged-in
#: equipment, fixed installation, origin of the installation.
CATEGORIES = ("I", "II", "III", "IV")
MATERIAL_GROUPS = ("I", "II", "III")

# IEC 60664-1:2020 Table F.1: volts to earth -> rated impulse volts by category. Confirmed.
_IMPULSE = {
    150.0: (800.0, 1500.0, 2500.0, 4000.0),
    300.0: (1500.0, 2500.0, 4000.0, 6000.0),
}
# Table F.2, inhomogeneous field, pollution degree 2: impulse volts -> metres. Confirmed.
_CLEARANCE = {
    800.0: 0.2e-3, 1500.0: 0.5e-3, 2500.0: 1.5e-3, 4000.0: 3.0e-3, 6000.0: 5.5e-3, 8000.0: 8.0e-3,
}  # fmt: skip
# Table F.5 (F.4 in the edition of 2007), pollution degree 2: volts rms -> metres for groups I, II,
# III and printed board. Confirmed.
_CREEPAGE = {
    125.0: (0.75e-3, 1.05e-3, 1.5e-3, 0.25e-3),
    160.0: (0.80e-3, 1.1e-3, 1.6e-3, 0.40e-3),
    200.0: (1.0e-3, 1.4e-3, 2.0e-3, 0.63e-3),
    250.0: (1.25e-3, 1.8e-3, 2.5e-3, 1.0e-3),
    320.0: (1.6e-3, 2.2e-3, 3.2e-3, 1.6e-3),
    400.0: (2.0e-3, 2.8e-3, 4.0e-3, 2.0e-3),
}


def rated_impulse_volts(volts_rms, category="II"):
    """Return the impulse that insulation on the mains must withstand.

    Parameters
    ----------
    volts_rms : float
        Voltage of the supply, line to neutral, up to 300 V [V].
    category : str
        'I' to 'IV'; 'II' for what is plugged in [-].

    Returns
    -------
    volts : float
        Rated impulse voltage, crest [V].

    Raises
    ------
    ValueError
        If the voltage is above the table or the category unknown.

    Notes
    -----
    The next step of line-to-neutral voltage at or above the one given.

    References
    ----------
    IEC 60664-1:2020 Table F.1, the same as in 2007.

    Examples
    --------
    >>> rated_impulse_volts(230.0), rated_impulse_volts(120.0)
    (2500.0, 1500.0)
    """
    column = CATEGORIES.index(limits.one_of(category, "category", CATEGORIES))
    return _next_step(_IMPULSE, volts_rms, "volts_rms")[column]


def clearance_metres(impulse_volts, reinforced=False):
    """Return the least distance through air.

    Parameters
    ----------
    impulse_volts : float
        Rated impulse voltage, from `rated_impulse_volts` [V].
    reinforced : bool
        True between the mains and what may be touched; False for basic insulation [-].

    Returns
    -------
    metres : float
        Clearance [m].

    Raises
    ------
    ValueError
        If the voltage is above the table.

    Notes
    -----
    Reinforced insulation takes the next higher impulse step. Up to 2000 m above the sea.

    References
    ----------
    IEC 60664-1:2020 Table F.2, inhomogeneous field, the same as in 2007.

    Examples
    --------
    >>> clearance_metres(2500.0) * 1e3, clearance_metres(2500.0, reinforced=True) * 1e3
    (1.5, 3.0)
    """
    step = _step(_CLEARANCE, impulse_volts, "impulse_volts")
    if reinforced:
        step = _step(_CLEARANCE, step + 1.0, "impulse_volts, one step up for reinforced,")
    return _CLEARANCE[step]


def creepage_metres(volts_rms, material_group="III", reinforced=False, printed_board=False):
    """Return the least distance along a surface.

    Parameters
    ----------
    volts_rms : float
        Working voltage, up to 400 V [V].
    material_group : str
        'I' best to 'III', which is right for an unknown plastic [-].
    reinforced : bool
        True between the mains and what may be touched; False for basic insulation [-].
    printed_board : bool
        True for tracks on a clean printed board of any group but IIIb [-].

    Returns
    -------
    metres : float
        Creepage distance; it may never be less than the clearance [m].

    Raises
    ------
    ValueError
        If the voltage is above the table or the group unknown.

    Notes
    -----
    The next step of the table at or above the voltage; twice as much for reinforced insulation.
    The standard lets a mains be read by its name (Table F.3a, from memory); `towards_a_hand` reads
    it at its highest, which may be a step further.

    References
    ----------
    IEC 60664-1:2020 Table F.5 (F.4 in the edition of 2007), pollution degree 2.

    Examples
    --------
    >>> creepage_metres(230.0) * 1e3, creepage_metres(230.0, reinforced=True) * 1e3
    (2.5, 5.0)
    """
    group = MATERIAL_GROUPS.index(limits.one_of(material_group, "material_group", MATERIAL_GROUPS))
    row = _next_step(_CREEPAGE, volts_rms, "volts_rms")
    return row[3 if printed_board else group] * (2.0 if reinforced else 1.0)


@dataclass(frozen=True)
class Distances:
    """What has to lie between a live part and what a hand may touch: reinforced insulation."""

    clearance_metres: float
    """Least distance through air [m]."""
    creepage_metres: float
    """Least distance along the surface that joins the two, by the table of creepage alone [m]."""
    row_volts: float
    """The row in which the creepage was read, at or above the highest mains [V]."""

    @property
    def metres(self):
        """The larger of both: what applies where a surface joins the two [m]."""
        return max(self.clearance_metres, self.creepage_metres)


def towards_a_hand(supply, category="II", printed_board=False):
    """Return the distances between live parts and what a hand may touch.

    Parameters
    ----------
    supply : mains.Supply
        At its nominal voltage.
    category : str
        'I' to 'IV'; 'II' for what is plugged in [-].
    printed_board : bool
        True along a clean printed board, False along a plastic that nobody knows [-].

    Returns
    -------
    distances : Distances
        Clearance and creepage of reinforced insulation, and the larger of both.

    Raises
    ------
    ValueError
        If the voltage is above the tables or the category unknown.

    Notes
    -----
    Clearance by the rated impulse of the nominal voltage, creepage by the highest mains, material
    group III. Pollution degree 2: no soot, no damp.

    References
    ----------
    IEC 60664-1 Tables F.1, F.2 and F.4 (F.5 in the edition of 2020).

    Examples
    --------
    >>> far = towards_a_hand(mains.Supply(230.0, 50.0))
    >>> far.clearance_metres * 1e3, far.creepage_metres * 1e3, far.row_volts, far.metres * 1e3
    (3.0, 6.4, 320.0, 6.4)
    """
    volts = mains.highest(supply).volts_rms
    return Distances(
        clearance_metres(rated_impulse_volts(supply.volts_rms, category), reinforced=True),
        creepage_metres(volts, reinforced=True, printed_board=printed_board),
        _step(_CREEPAGE, volts, "highest mains"),
    )


def _step(table, volts, name):
    volts = limits.positive(volts, name, "V")
    steps = [step for step in table if step >= volts]
    if not steps:
        raise ValueError(
            f"{name} was read as {volts:g} V; the table ends at {max(table):g} V. Ask somebody "
            "competent rather than stretching it."
        )
    return steps[0]


def _next_step(table, volts, name):
    return table[_step(table, volts, name)]
