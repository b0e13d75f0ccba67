"""Quantities: what the course measures, how people type it, and how it is shown to them.

Imports nothing of ours: everything else stands on it.
"""

from helpers.quantities.glossary import GLOSSARY
from helpers.quantities.reading import Ambiguous, NotUnderstood, QuantityError, read
from helpers.quantities.writing import write, write_as, write_letter_code

__all__ = [
    "GLOSSARY",
    "Ambiguous",
    "NotUnderstood",
    "QuantityError",
    "read",
    "write",
    "write_as",
    "write_letter_code",
]
