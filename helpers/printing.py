"""What is printed for a class: from the roster to one new file, a part for each learner.

Knows who is on the roster; never what is on the paper.
"""

from pathlib import Path

from helpers.classroom.problems import Unusable, counted, plain, write_whole
from helpers.classroom.roster import Roster, read_roster
from helpers.exercises.settings import Settings, changed


def print_for(pieces, out, class_word, roster=None, learner=None, supply="230 V 50 Hz"):
    """Write what is printed for each learner of a class, or for one, into a new file.

    Parameters
    ----------
    pieces : callable
        From a list of `Settings` to the pieces of a page.
    out : str or Path
        The file to write.
    class_word : str
        The word that the instructor gave out.
    roster : str, Path or None
        CSV file with the learners; its column `supply` wins over `supply`.
    learner : str or None
        Only this one; needs no roster.
    supply : str
        Name of the mains of all others.

    Returns
    -------
    said : list of str
        What was written, then what in the roster could not be used.

    Raises
    ------
    Unusable
        If nobody is named, the learner is not on the roster, a file of that name is there, or
        something given cannot be used; nothing is written then.
    """
    out, problems = Path(out), []
    if roster:
        members, problems = read_roster(Path(roster))
    elif learner:
        members = Roster([learner.strip().upper()])
    else:
        raise Unusable("Whose? Give --roster with a class, or --learner with one id.")
    learners = [one for one in members.learners if not learner or one == learner.strip().upper()]
    if not learners:
        raise Unusable(f"{plain(learner, 40)} is not on the roster. Take the id from there.")
    if out.exists():
        raise Unusable(f"{plain(str(out), 300)} is there already. Give a new name after --out.")
    try:
        people = [
            changed(Settings("ROOM"), one, class_word, members.supplies.get(one, supply))
            for one in learners
        ]
        made = pieces(people)
    except ValueError as error:
        raise Unusable(plain(str(error), 300)) from None
    write_whole(out, made)
    supplies = ", ".join(dict.fromkeys(one.supply for one in people))
    said = [f"{counted(len(people), 'learner')}, on {supplies}: {plain(str(out), 300)}"]
    return said + [f"{p.place}: {p.found}. {p.advice}" for p in problems]
