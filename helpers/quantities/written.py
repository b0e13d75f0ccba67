"""The quantities that questions speak of most, written as people read them."""

from helpers.quantities.writing import write, write_as


def volts(value):
    return write(value, "voltage")


def milliamps(amps):
    return write_as(amps, "mA")


def ohms(value):
    return write(value, "resistance")


def midway(value, name):
    """Write a figure in the middle of a sum: with a digit more, so that the sum comes out."""
    return write(value, name, digits=4)
