"""The wrong turns of a class, counted while it is marked, and who was right at the first try.

Knows standings; must never know whose they are.
"""

from textwrap import shorten

from helpers.classroom.mark_book import NO_KNOWN_TURN, SlipCount

DANGEROUS = "would be dangerous if built"
LONGEST_TURN = 70


def count_slips(book, question, standing):
    """Add one learner's wrong turns on a question to the book.

    Parameters
    ----------
    book : MarkBook
        Its `slips` and `first_right` are counted up.
    question : Question
    standing : Standing
        Of one learner, on this question.
    """
    seen = set()
    draws = [draw for draw in standing.draws.values() if draw.class_word == standing.class_word]
    for draw in draws:
        for _, verdict in draw.tried.values():
            if verdict.right:
                continue
            slip = verdict.slip or (verdict.danger and DANGEROUS) or NO_KNOWN_TURN
            key = (question.id, slip)
            count = book.slips.get(key)
            if count is None:
                text = shorten(verdict.turn or slip, LONGEST_TURN, placeholder=" …")
                count = book.slips[key] = SlipCount(text)
            count.answers += 1
            count.learners += key not in seen
            count.danger = count.danger or bool(verdict.danger)
            seen.add(key)
    first = next((draw.first for draw in draws if draw.first), None)
    book.first_right[question.id] += bool(first and first[1].right)
