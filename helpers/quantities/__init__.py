"""Quantities: what the course measures, how people type it, and how it is shown to them.

Imports nothing of ours: everything else stands on it.
"""

from helpers.quantities.glossary import GLOSSARY, Quantity
from helpers.quantities.letter_codes import read_letter_code, write_letter_code
from helpers.quantities.reading import Ambiguous, NotUnderstood, QuantityError, Reading, read
from helpers.quantities.writing import write, write_as

__all__ = [
    "GLOSSARY",
    "Ambiguous",
    "NotUnderstood",
    "Quantity",
    "QuantityError",
    "Reading",
    "read",
    "read_letter_code",
    "write",
    "write_as",
    "write_letter_code",
]
