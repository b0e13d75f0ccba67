"""Pictures that follow a hand: SVG written directly, quick enough for every move of a slider.

Each gets numbers and returns an SVG string. Its label names the picture; what it shows, with its
numbers, is said by the sentence that the explorer puts beside it. Computes no physics.
"""
