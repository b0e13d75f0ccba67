"""Commands for a room: its file, its marks, an invented one, and what erases it."""

import sys

from helpers.commands import said_yes
from helpers.exercises.refusals import Unusable, plain

MANY = 200


def add_to(subcommand):
    """Say the words of each command of this module."""
    one = subcommand("mark", mark)
    one.add_argument(
        "folder", nargs="?", help="folder with the hand-ins; folders inside it are read too"
    )
    one.add_argument("--class", dest="class_file", metavar="FILE", help="the file of the class")
    one.add_argument("--roster", help="CSV file with a column named learner")
    one.add_argument("--class-word", help="the word that was given to the class")
    one.add_argument("--out", help="folder to write the mark book into")
    one.add_argument(
        "--lessons", dest="only", nargs="+", metavar="NN", help="only these, such as 00 01"
    )
    one.add_argument(
        "--accept", dest="decided", nargs="+", metavar="WHAT",
        help="besides those of the class file: hand-ins that count where several of one id have "
        "parted; the page names them. And where screen and paper differ, BENCH-07:ohm-3 for paper "
        "or BENCH-07:ohm-3:screen for the screen",
    )  # fmt: skip
    one.add_argument(
        "--paper-log", dest="paper", metavar="FILE", help="what was typed back from paper"
    )
    one.add_argument("--feedback", metavar="FOLDER", help="write a page for each learner into it")
    one.add_argument(
        "--decimal-comma", action="store_true",
        help="write the table for a spreadsheet that is set to a decimal comma",
    )  # fmt: skip

    one = subcommand("class", class_)
    one.add_argument(
        "file", metavar="FILE", help="a new file, such as lessons/classes/wick/wick.toml"
    )
    one.add_argument("--word", required=True, help="the class word")
    one.add_argument("--supply", default="230 V 50 Hz", metavar="NAME", help="its supply")
    one.add_argument("--lessons", nargs="+", default=(), metavar="NN", help="those that count")
    one.add_argument("--roster", default="roster.csv", metavar="NAME", help="name of its roster")
    one.add_argument(
        "--benches", type=int, default=0, metavar="N", help="write a roster of so many bench codes"
    )

    one = subcommand("demo-room", demo_room)
    one.add_argument("folder", help="a new or empty folder")

    one = subcommand("forget-class", forget_class)
    one.add_argument("file", metavar="FILE", help="the file of the class")
    one.add_argument("--yes", action="store_true", help="do not ask")


def mark(arguments):
    """Mark a folder of hand-ins.

    OUT will hold mark-book.csv, one row a learner, and mark-book.html, one page to read and print;
    one that lies there is kept under its own date, if its table says something else. Where no
    answer counts, nothing is written. A class file (see `class`) may say all of this; what is given
    here wins. Two examples: mark --class lessons/classes/wick/wick.toml; mark hand-ins --roster
    roster.csv --class-word wick --out marked
    """
    from helpers.classroom.class_file import for_marking, read_class
    from helpers.classroom.marking import mark_folder

    a = vars(arguments).copy()
    del a["run"]
    how = {name: a.pop(name) for name in ("feedback", "decimal_comma")}
    print("\n".join(mark_folder(for_marking(**a), progress=with_bar, **how).summary()))
    if arguments.class_file and (over := read_class(arguments.class_file).over()):
        print(over)


def class_(arguments):
    """Write the file of a class.

    It holds the class word, the supply, the lessons that count and the roster's name; `mark --class
    FILE` reads it. A file that is there already is never written over, and a folder holds one class
    alone. An example, where the notebook for instructors finds it, too: class
    lessons/classes/wick/wick.toml --word wick --supply "230 V 50 Hz" --lessons 01 02 --benches 24
    """
    from helpers.classroom.class_file import write_class
    from helpers.exercises.wording import COMMAND

    a = arguments
    made = write_class(a.file, a.word, a.supply, a.lessons, a.roster, a.benches)
    print(f"Class {made.word} is in {made.path}. Collect its hand-ins in {made.where('hand_ins')}.")
    if not made.where("roster").exists():
        print(f"Its roster is still to be written: {made.where('roster')}, a column `learner`.")
    print(f"Then: {COMMAND} mark --class {made.path}")


def demo_room(arguments):
    """Write an invented class to try the marking on.

    Its README says what was put in on purpose, and by which command it is marked.
    """
    from helpers.classroom.demo_room import write_demo_room

    command = write_demo_room(arguments.folder)
    print(f"An invented class is in {arguments.folder}. To mark it:\n{command}")


def forget_class(arguments):
    """Erase what a class has left: hand-ins, mark books, feedback, packs and paper log.

    Only what says that it is of this class, and what its file holds behind `accept`; that file and
    its roster stay. All is listed first, and
    nothing goes before you say yes. An example: forget-class
    lessons/classes/wick/wick.toml
    """
    from helpers.classroom.class_file import forget_decided, read_class
    from helpers.classroom.forget_class import erase, find_traces

    made = read_class(arguments.file)
    own, left = find_traces(made)
    if left:
        print("To be left:", *(f"{path}: {plain(why)}" for path, why in left), sep="\n  ")
    if not own:
        raise Unusable(f"Nothing of class {made.word} lies in the folders that {made.path} names.")
    print(f"To be erased for good, class {made.word}:", *own, sep="\n  ")
    if not (arguments.yes or said_yes()):
        raise Unusable("Nothing was erased.")
    forget_decided(made)
    for path in erase(own):
        print(f"Erased: {path}")
    print("Copies elsewhere, such as on learners' machines, are not touched.")


def with_bar(learners):
    """Show a bar where the run is long and somebody watches."""
    if len(learners) < MANY or not sys.stderr.isatty():
        return learners
    from tqdm import tqdm

    return tqdm(learners, unit=" learners", delay=1, leave=False)
