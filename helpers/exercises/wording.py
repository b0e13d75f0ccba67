"""What a question and its feedback say, as lines of plain text; screens and paper set them.

Knows no screen. Every line is text for people, never markup.
"""

import os
from dataclasses import dataclass

#: What stands wherever marks are shown, handed in or made: the same words for all.
CAUTION = (
    "Marks license nobody. They show who has understood the sums and the safe order of work on "
    "paper. Local codes and licensed practice come first: before anything is built, opened or "
    "connected, a competent person has to check it under those rules. That is an electrically "
    "skilled or instructed person, licensed where the law asks for it."
)

#: What stands on every plan, whatever its owner's marks.
STAMP = (
    "Plan only. Not permission to build or connect: a competent person checks it first, under "
    "local rules."
)

#: How each command begins that people are told to type, as in README.
COMMAND = (r".venv\Scripts\python" if os.name == "nt" else ".venv/bin/python") + " -m helpers"


@dataclass(frozen=True)
class Line:
    """One line: its text and its role, which says how it is shown.

    title, about and ask of a question; heading, text, option, hint, nudge, caution, danger, note,
    saved; heard, which is read out and not seen;
    right, partly, not-yet or verdict, whose first sentence carries it. A line that is folded, or
    stands open as working, shows what follows its colon; lines within, and code, go with it.
    """

    role: str
    text: str


def question_lines(question, numbers, number=0):
    """Return what a question says.

    Parameters
    ----------
    question : Question
    numbers : SimpleNamespace
        The personal numbers of the draw.
    number : int
        Which draw it is.

    Returns
    -------
    lines : list of Line
    """
    lines = [Line("title", title(question, number)), Line("about", about(question))]
    lines += [Line("ask", paragraph) for paragraph in question.asked(numbers).split("\n\n")]
    lines.append(Line("hint", question.kind.hint(numbers)))
    return lines + [Line("option", choice) for choice in question.kind.choices(numbers)]


def title(question, number=0):
    """Return what a question is called, and which fresh draw it is."""
    if question.role == "predict":
        return "Predict first"
    name = {"recall": "Look back", "exercise": "Exercise"}[question.role]
    called = f"{'Danger item' if question.danger else name} {question.id.rpartition('-')[2]}"
    if number and question.has_fresh_numbers:
        called += f", {again_words(question).lower()} {number}"
    return called


def about(question):
    """Return id, level and marks of a question, in this order."""
    if question.role == "predict":
        return f"{question.id} · kept, not marked"
    level = {1: "guided", 2: "on your own", 3: "stretch"}[question.level]
    parts = [question.id] if question.role == "recall" else [question.id, level]
    if question.danger:
        parts.append("the first answer counts")
    return " · ".join([*parts, marks_text(question.marks)])


def again_words(question):
    """Name what the next draw brings: a danger item changes more than its numbers."""
    return "Another case" if question.danger else "Fresh numbers"


def marks_text(marks):
    return "1 mark" if marks == 1 else f"{marks} marks"


def code_form(question, numbers, number=0):
    """Return one line of Python that answers a question."""
    draw = f", draw={number}" if number else ""
    typed = question.kind.example_in_code(numbers)
    return f'answer("{question.id}", "{typed}"{draw})'


EARLIER_EDITION = (
    "You answered this in an earlier edition. The question has changed since, so that answer earns "
    "no marks: please answer it again."
)


def feedback_lines(question, draw, number, outcome, nudges=()):
    """Return what to say after an answer, or before the first one.

    Parameters
    ----------
    question : Question
    draw : DrawStanding
        What was tried with these numbers.
    number : int
        Which draw it is.
    outcome : Outcome or None
        What the newest answer led to; None before the first.
    nudges : sequence of str
        Those that are open.

    Returns
    -------
    lines : list of Line
    """
    lines = []
    if outcome is not None and outcome.problem:
        lines.append(Line("danger" if not outcome.kept else "note", outcome.problem))
    if outcome is not None and outcome.verdict:
        lines += _verdict_lines(question, draw, outcome.answer, outcome.verdict)
    elif outcome is None:
        lines += [Line("note", EARLIER_EDITION)] if draw.opens_edition else []
        lines.append(Line("note", "Not answered yet."))
    for place, nudge in enumerate(nudges, start=1):
        lines.append(Line("nudge", f"Nudge {place} of {len(question.nudges)}: {nudge}"))
    if question.role != "predict" and draw.finished(question):
        if question.has_fresh_numbers:
            lines.append(Line("note", _what_next(question, draw)))
        opened = not (outcome and outcome.verdict and outcome.verdict.right)
        lines += working_lines(question, draw.numbers, opened)
    return lines


def _verdict_lines(question, draw, answer, verdict):
    read = f"Read as {answer.understood}."
    if question.role == "predict":
        kept = "Kept. The lesson comes back to your prediction at its end."
        if answer != draw.first[0]:
            kept = "Your first prediction stays: the lesson comes back to that one at its end."
        return [Line("verdict", f"{kept} {read}")]
    worth = "This answer is for practice: it does not change your marks."
    if answer.given in draw.earned:
        earned = f"{draw.earned[answer.given] * question.marks:.3g}"
        worth = f"This answer earns {earned} of {marks_text(question.marks)}."
    lines = [Line("danger", f"⚠ Danger first: {verdict.danger}")] if verdict.danger else []
    role, word, more = "not-yet", "✗ Not yet", verdict.reply
    if verdict.right:
        role, (word, _, more) = "right", f"✓ {more}".partition(". ")
    elif verdict.share:
        role, word = "partly", "◐ Partly"
    said = f"{word.rstrip('.')}. {read} {more}".strip()
    return [*lines, Line("text" if verdict.danger else role, said), Line("note", worth)]


def predict_first(question, lesson):
    """Say what stands where a prediction comes back, until there is one."""
    return (
        f"Make your prediction first: {question.id}, near the top of lesson {lesson}. Then it "
        "stands here, beside what we found."
    )


def made_for_another_supply(supply):
    """Say what cards cannot: sums and pictures stand as they were made."""
    return (
        f"The cards follow the settings. Sums and pictures on this page were made for {supply}: "
        "run all cells again to have them for your supply."
    )


def working_lines(question, numbers, opened=True):
    """Return the model answer: in words, as it would be typed, and in code."""
    role = "working" if opened else "folded"
    lines = [Line(role, f"Worked answer: {question.worked(numbers)}")]
    typed = question.kind.model(numbers)
    lines.append(Line("within", f"As you would answer it: {typed}"))
    if question.kind.other_answers:
        lines.append(Line("within", question.kind.other_answers))
    if line := question.line_of_code(numbers):
        lines += [
            Line("within", "The same sum in Python, for those who like it:"),
            Line("code", question.kind.code_that_writes(line)),
        ]
    return lines


def _what_next(question, draw):
    again = f"press {again_words(question)}"
    if question.danger and not draw.earned:
        return f"This case was explained just before, so it did not count. Take another: {again}."
    if question.danger and not draw.right:
        return f"This case is closed: only its first answer counts. Take another: {again}."
    if not draw.right:
        return (
            f"The worked answer is shown. To see whether you can do it now, {again}; the marks "
            "stay as they are."
        )
    if not draw.last[1].right:
        return f"You had this one right before. Go on with other numbers: {again}."
    if not draw.first[1].right:
        return f"Repaired. Make it stick with other numbers: {again}."
    return f"To practise on: {again}."
