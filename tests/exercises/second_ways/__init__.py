"""Every number of the question banks a second time, one module a lesson.

RIGHT holds the right answers, SIMPLE the usual quick sums where the bank accepts them too, SLIPS
what each wrong turn gives, by its name alone; WITHIN is how well these ways agree with the bank.
All in SI units. Nothing here asks the physics of the project or the bank; the table of national
ranges is data.
"""

from helpers.physics.mains import NATIONAL


def lowest_volts(supply):
    """10 % below the label, IEC 60038, or the national figure below that."""
    return min(0.9 * supply.volts_rms, NATIONAL[supply.name].lowest)


def highest_volts(supply):
    """10 % above the label, IEC 60038, or the national figure above that."""
    return max(1.1 * supply.volts_rms, NATIONAL[supply.name].highest)
