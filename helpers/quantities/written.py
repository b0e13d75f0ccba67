"""The quantities that questions speak of most, written as people read them."""

from helpers.quantities.writing import write, write_as


def volts(value):
    return write(value, "voltage")


def milliamps(amps):
    return write_as(amps, "mA")


def ohms(value):
    return write(value, "resistance")
