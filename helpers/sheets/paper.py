"""Questions on paper: a pack for each learner, with their own numbers and room to answer.

Never says what is right: that is the key's. What stands on a pack is what its card shows.
"""

from difflib import get_close_matches
from typing import NamedTuple

from helpers.exercises.answer_log import MOST_DRAWS
from helpers.exercises.bank import bank, lessons
from helpers.exercises.wording import CAUTION, STAMP, Line, question_lines
from helpers.pages import templates
from helpers.pages.page import Page
from helpers.pages.pictures import draw_picture
from helpers.physics.mains import SUPPLIES

IN_WORDS = {"colour code"}  # pictures that are told instead: their colours are no help in ink alone


class Asked(NamedTuple):
    """One question as it stands on paper, and what stands by each line to write on."""

    question: object
    markup: object
    places: list


def always_the_same(wanted):
    """Return which of the questions that are named have no other numbers, as a sorted list."""
    return sorted(q.id for q in bank().values() if q.id in wanted and not q.has_fresh_numbers)


def chosen(wanted, draw=0):
    """Return what a pack asks.

    Parameters
    ----------
    wanted : sequence of str
        Numbers of lessons, such as "02", and ids of single questions, such as "ohm-3".
    draw : int
        0, or the number of a fresh draw, for which only the danger items of a lesson are asked
        again, and of single questions those that are not always the same.

    Returns
    -------
    chosen : list of (module, list of Question)
        The lessons in their order, each with its questions in theirs.

    Raises
    ------
    ValueError
        If there is no such lesson, question or draw, or nothing that has fresh draws.

    Examples
    --------
    >>> [(module.LESSON, len(questions)) for module, questions in chosen(["00", "ohm-3"])]
    [('00', 3), ('02', 1)]
    """
    if not 0 <= draw < MOST_DRAWS:
        raise ValueError(f"Set {draw} was asked for; 1 is the first with other numbers.")
    held, known = lessons(), bank()
    wanted = {one.strip().lower().zfill(2) for one in wanted}
    for one in sorted(wanted - held.keys() - known.keys()):
        near = get_close_matches(one, known, n=3)
        raise ValueError(
            f"{one!r} was asked for; the bank holds the lessons {', '.join(held)}, and questions "
            f"such as {', '.join(near) or 'ohm-3'}."
        )
    stale = always_the_same(wanted) if draw else []
    found = []
    for number, module in held.items():
        of_lesson = number in wanted
        asked = [
            q
            for q in module.QUESTIONS
            if q.id not in stale and (q.id in wanted or (of_lesson and (q.danger or not draw)))
        ]
        found += [(module, asked)] if asked else []
    if not wanted:
        raise ValueError("Which lessons, or questions? Name them, such as 02 03, or heat-3.")
    if not found:
        raise ValueError(
            f"{' and '.join(sorted(wanted))}: nothing of it has other numbers. Again can be asked: "
            "the danger items of lessons, as those of 01, and single questions that have other "
            "numbers, such as ohm-3."
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
    picture, drawn = "", question.picture and question.picture(numbers)
    if drawn:
        picture, words = draw_picture(drawn)
        if drawn.drawing in IN_WORDS:
            picture, lines = "", [*lines, Line("text", words.text.partition(": ")[2])]
    lines.append(Line("hint", by_hand.how))
    lines += [Line("option", text) for text in by_hand.ticks]
    ticked = "cw-ticked" if by_hand.ticks else ""
    return Asked(question, Markup(Page(lines, picture, name=ticked).html()), places)


def pieces(people, wanted, draw=0, template="paper", told=asked):
    """Yield the packs of some learners as one page to print, piece by piece.

    Parameters
    ----------
    people : sequence of Settings
        Who gets a pack, in this order.
    wanted, draw
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
    found = chosen(wanted, draw)
    packs = (
        (settings, [(m, [told(q, settings, draw) for q in qs]) for m, qs in found])
        for settings in people
    )
    asked_alone = [q.id for _, qs in found for q in qs if q.id in wanted]
    numbers = [m.LESSON for m, qs in found if any(q.id not in wanted for q in qs)]
    whole = f"lessons {', '.join(numbers)}" if numbers else ""
    again = "danger items again, other cases" if numbers else "again, with other numbers"
    return templates.page(
        template,
        packs=packs,
        draw=draw,
        named=" and ".join(filter(None, [whole, ", ".join(asked_alone)])),
        what=again if draw else "questions on paper",
        count=sum(len(questions) for _, questions in found),
        danger=any(q.danger for _, questions in found for q in questions),
        caution=CAUTION,
        stamp=STAMP,
    )
