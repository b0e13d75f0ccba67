"""Lesson 10: no quantity is asked there; its design is judged by the twin in tests/sizing."""

WITHIN = 1e-12

RIGHT = {}
SIMPLE = {}
SLIPS = {}
