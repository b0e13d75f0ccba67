"""The bank: one file a lesson; this loader finds them all and is the only one that imports them."""

from functools import cache
from importlib import import_module
from pkgutil import iter_modules


@cache
def lessons():
    """Return the bank's files by lesson number, in order.

    Returns
    -------
    files : dict
        From "00", "02" ... to the module, which holds TITLE and QUESTIONS.

    Examples
    --------
    >>> list(lessons())[0]
    '00'
    """
    names = sorted(one.name for one in iter_modules(__path__) if one.name.startswith("lesson_"))
    modules = [import_module(f"{__name__}.{name}") for name in names]
    return {module.LESSON: module for module in modules}


@cache
def bank():
    """Return every question by its id, in the order of the lessons.

    Raises
    ------
    ValueError
        If two questions share an id.
    """
    questions = {}
    for module in lessons().values():
        for question in module.QUESTIONS:
            if question.id in questions:
                raise ValueError(f"two questions have the id {question.id!r}")
            questions[question.id] = question
    return questions


@cache
def lesson_of(question_id):
    """Return the number of the lesson that a question belongs to."""
    return next(
        number
        for number, module in lessons().items()
        if any(question.id == question_id for question in module.QUESTIONS)
    )
