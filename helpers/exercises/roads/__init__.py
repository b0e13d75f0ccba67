"""Roads: how a right number comes about, and how a wrong one is explained by a wrong turn."""

from helpers.exercises.roads.clear import clear
from helpers.exercises.roads.explained import explain, meanings
from helpers.exercises.roads.road import Road, Step, Turn, Wrong

__all__ = ["Road", "Step", "Turn", "Wrong", "clear", "explain", "meanings"]
