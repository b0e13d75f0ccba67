"""The steps of the course, each with the wrong turns that people take there.

A turn stands here once, under one name, whatever question it is taken in. A turn that one question
alone knows stays with that question.
"""
