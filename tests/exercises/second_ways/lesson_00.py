"""Lesson 00: ohms in words."""

WITHIN = 1e-12

RIGHT = {"start-1": lambda n: n.ohms}
SIMPLE = {}
SLIPS = {"start-1": {"mixed up a prefix": lambda n: n.ohms * 1000}}
