"""What is printed for a class: from its file or roster to one new page, a part for each learner.

Knows who is in the class; never what is on the paper.
"""

from importlib import import_module
from pathlib import Path

from helpers.classroom.roster import Roster, read_roster
from helpers.exercises.refusals import Unusable, counted, make_folder, plain, write_text
from helpers.exercises.settings import Settings, changed
from helpers.sheets.paper import always_the_same

START_SHEET = "start-sheet"
NO_FILE = "Where to? Give a new file after --out"


def print_for(
    name,
    out=None,
    class_file=None,
    class_word=None,
    roster=None,
    learner=None,
    supply=None,
    lessons=(),
    draw=0,
):
    """Write what is printed for each learner of a class, or for one, into a new file.

    Parameters
    ----------
    name : str
        What is printed: "paper", "key" or "start-sheet", a module of `helpers.sheets`.
    out : str, Path or None
        The file to write; None is one in the class's folder for paper, named for what is in it.
    class_file : str, Path or None
        Says all that is not given here.
    class_word : str or None
        The word that the instructor gave out.
    roster : str, Path or None
        CSV file with the learners; its column `supply` wins over `supply`.
    learner : str or None
        Only this one; needs no roster.
    supply : str or None
        Name of the mains of all others.
    lessons : sequence of str
        Their numbers, and the ids of single questions.
    draw : int
        0, or the number of a fresh draw.

    Returns
    -------
    said : list of str
        What was written, then what in the roster could not be used.

    Raises
    ------
    Unusable
        If something is missing, the learner is not on the roster, a file of that name is there, or
        something given cannot be used; nothing is written then.
    """
    wanted, more = (learner or "").strip().upper(), {"draw": draw} if draw else {}
    if class_file:
        from helpers.classroom.class_file import read_class

        held = read_class(class_file)
        class_word, supply = class_word or held.word, supply or held.supply
        roster, lessons = roster or held.where("roster"), lessons or held.lessons
        parts = name, *lessons, f"set-{draw}" if draw else "", wanted
        if name == START_SHEET:
            more["keep_until"] = held.keep_until or ""
        out = out or held.where("paper") / f"{'-'.join(filter(None, parts))}.html"
    for given, advice in (
        (class_word, "Which class? Give --class-word WORD"),
        (roster or learner, "Whose? Give --roster with the learners, or --learner with one id"),
        (out, NO_FILE),
    ):
        if not given:
            raise Unusable(f"{advice}; a class file, after --class, says all of that.")
    members, problems = read_roster(Path(roster)) if roster else (Roster([wanted]), [])
    learners = [one for one in members.learners if wanted in ("", one)]
    if not learners:
        raise Unusable(f"{plain(wanted, 40)} is not on the roster. Take the id from there.")
    try:
        people = [
            changed(Settings("ROOM"), one, class_word, members.supplies.get(one) or supply)
            for one in learners
        ]
        sheet = import_module(f"helpers.sheets.{name.replace('-', '_')}")
        made = sheet.pieces(people, lessons, **more)
    except ValueError as error:
        raise Unusable(plain(str(error), 300)) from None
    write_new_page(out, made)
    supplies = ", ".join(dict.fromkeys(one.supply for one in people))
    said = [f"{counted(len(people), 'learner')}, on {supplies}: {plain(str(out), 300)}"]
    if name == START_SHEET:
        said.append("One page each: print on one side.")
    if draw and (stale := always_the_same(lessons)):
        said.append(
            f"Left out: {', '.join(stale)}, which is always the same. To talk about it, print it "
            "as a question of a pack; it is not typed back twice."
        )
    return said + [f"{p.place}: {p.found}. {p.advice}" for p in problems]


def write_new_page(out, pieces):
    """Write a page whole, and never over another file.

    Parameters
    ----------
    out : str, Path or None
        The file; its folder is made.
    pieces : iterable of str

    Raises
    ------
    Unusable
        If none is named, a file of that name is there, or it cannot be written.
    """
    if not out:
        raise Unusable(f"{NO_FILE}.")
    out = Path(out)
    if out.exists():
        raise Unusable(
            f"{plain(str(out), 300)} is there already, and was left as it is. Delete or rename it, "
            "then say it once more."
        )
    make_folder(out.parent)
    write_text(out, pieces)
