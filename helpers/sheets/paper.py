"""Questions on paper: a pack for each learner, with their own numbers and room to answer.

Never says what is right: that is the key's. What stands on a pack is what its card shows.
"""

from typing import NamedTuple

from helpers.exercises.answer_log import MOST_DRAWS
from helpers.exercises.bank import lessons
from helpers.exercises.wording import CAUTION, STAMP, Line, question_lines
from helpers.pages import templates
from helpers.pages.page import Page
from helpers.pages.pictures import draw_picture
from helpers.physics.mains import SUPPLIES


class Asked(NamedTuple):
    """One question as it stands on paper, and what stands by each line to write on."""

    question: object
    markup: object
    places: list


def chosen(wanted, draw=0):
    """Return what a pack asks.

    Parameters
    ----------
    wanted : sequence of str
        Numbers of the lessons, such as "02".
    draw : int
        0, or the number of a fresh draw, for which only danger items are asked again.

    Returns
    -------
    chosen : list of (module, list of Question)
        The lessons in their order, each with its questions in theirs.

    Raises
    ------
    ValueError
        If a lesson is not in the bank, there is no such draw, or fresh draws are wanted of lessons
        without danger items.

    Examples
    --------
    >>> [(module.LESSON, len(questions)) for module, questions in chosen(["00"])]
    [('00', 3)]
    """
    if not 0 <= draw < MOST_DRAWS:
        raise ValueError(f"Draw {draw} was asked for; 1 is the first fresh one.")
    bank = lessons()
    numbers = sorted({number.zfill(2) for number in wanted})
    for number in numbers:
        if number not in bank:
            held = ", ".join(bank)
            raise ValueError(f"Lesson {number!r} was asked for; the bank holds {held}.")
    found = []
    for module in map(bank.get, numbers):
        questions = [q for q in module.QUESTIONS if q.danger or not draw]
        found += [(module, questions)] if questions else []
    if not numbers:
        raise ValueError("Which lessons? Give their numbers, such as --lessons 02 03.")
    if not found:
        told = " and ".join(numbers)
        raise ValueError(
            f"Fresh draws are of danger items alone, and there are none in: {told}. Lesson 01 has "
            "some."
        )
    return found


def numbers_of(question, settings, draw=0):
    """Return the personal numbers of one draw for whoever has these settings."""
    supply = SUPPLIES[settings.supply]
    return question.numbers_for(settings.learner, settings.class_word, supply, draw)


def asked(question, settings, draw=0):
    """Return one question as it stands on the paper of one learner.

    Parameters
    ----------
    question : Question
    settings : Settings
        Whose numbers: learner, class word and supply.
    draw : int
        Which draw of it.

    Returns
    -------
    asked : Asked
    """
    from markupsafe import Markup, escape

    numbers = numbers_of(question, settings, draw)
    by_hand = question.kind.by_hand(numbers)
    places = [tuple(map(escape, each)) for each in by_hand.places]
    lines = [line for line in question_lines(question, numbers, draw) if line.role != "hint"]
    if by_hand.ticks:
        lines = [line for line in lines if line.role != "option"]
    lines.append(Line("hint", by_hand.how))
    lines += [Line("option", text) for text in by_hand.ticks]
    picture = draw_picture(question.picture(numbers))[0] if question.picture else ""
    ticked = "cw-ticked" if by_hand.ticks else ""
    return Asked(question, Markup(Page(lines, picture, name=ticked).html()), places)


def pieces(people, wanted, draw=0, template="paper", told=asked):
    """Yield the packs of some learners as one page to print, piece by piece.

    Parameters
    ----------
    people : sequence of Settings
        Who gets a pack, in this order.
    wanted : sequence of str
        Numbers of the lessons.
    draw : int
        As for `chosen`.
    template : str
        What each learner's part is set by.
    told : callable
        From question, settings and draw to what that template shows of it.

    Returns
    -------
    pieces : iterator of str
        One self-contained document; a pack is worked out when its turn comes.

    Raises
    ------
    ValueError
        As `chosen`.
    """
    lessons_asked = chosen(wanted, draw)
    packs = (
        (settings, [(m, [told(q, settings, draw) for q in qs]) for m, qs in lessons_asked])
        for settings in people
    )
    return templates.page(
        template,
        packs=packs,
        draw=draw,
        numbers=", ".join(module.LESSON for module, _ in lessons_asked),
        count=sum(len(questions) for _, questions in lessons_asked),
        caution=CAUTION,
        stamp=STAMP,
    )
