"""Computations, questions and cards behind the lessons."""
