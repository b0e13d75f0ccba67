"""The command line: `python -m helpers SUBCOMMAND`. One function a subcommand, nothing else.

Each imports what it needs when it runs, so that no command waits for another's libraries.
"""

import argparse
import sys

from helpers.classroom.files import Unusable

MANY = 200


def mark(arguments):
    """Mark a folder of hand-ins.

    OUT will hold mark-book.csv, one row a learner, and mark-book.html, one page to read and print;
    a mark book that lies there is kept under its own date. Where no answer counts, nothing is
    written. An example: mark hand-ins --roster roster.csv --class-word wick --out marked
    """
    from helpers.classroom.marking import mark_folder

    marked = mark_folder(
        arguments.folder,
        arguments.roster,
        arguments.class_word,
        arguments.out,
        progress=with_bar,
        only=arguments.lessons,
    )
    print("\n".join(marked.summary()))


def demo_room(arguments):
    """Write an invented class to try the marking on.

    Its README says what was put in on purpose, and by which command it is marked.
    """
    from helpers.classroom.demo_room import write_demo_room

    command = write_demo_room(arguments.folder)
    print(f"An invented class is in {arguments.folder}. To mark it:\n{command}")


def build(arguments):
    """Tidy the lessons and build solutions/ from them.

    Each lesson that is named is saved without outputs, and its solution is made anew: with the
    model answers of the workshop copy, run and recorded. An example: build 02-ohms-law.ipynb
    """
    from pathlib import Path

    from helpers.authoring.solutions import build as build_solutions
    from helpers.authoring.solutions import tidy_lessons

    root = Path(__file__).resolve().parents[1]
    for name in arguments.lessons:
        if not (root / "lessons" / name).is_file():
            held = ", ".join(sorted(path.name for path in (root / "lessons").glob("*.ipynb")))
            raise Unusable(f"There is no lesson {name} in lessons/. It holds {held}.")
    for path in [*tidy_lessons(root, arguments.lessons), *build_solutions(root, arguments.lessons)]:
        print(path.relative_to(root))


def with_bar(learners):
    """Show a bar where the run is long and somebody watches."""
    if len(learners) < MANY or not sys.stderr.isatty():
        return learners
    from tqdm import tqdm

    return tqdm(learners, unit=" learners", delay=1, leave=False)


def command_line():
    """Return the parser of the command line."""
    from helpers.exercises.wording import CAUTION

    caution = f"Caution. {CAUTION}"
    parser = argparse.ArgumentParser(
        prog="python -m helpers", description=__doc__.split(".")[0], epilog=caution
    )
    commands = parser.add_subparsers(required=True, metavar="SUBCOMMAND")

    def subcommand(name, run):
        said = run.__doc__
        one = commands.add_parser(
            name, help=said.split(".")[0] + ".", description=said, epilog=caution
        )
        one.set_defaults(run=run)
        return one

    one = subcommand("mark", mark)
    one.add_argument("folder", help="folder with the hand-ins; folders inside it are read too")
    one.add_argument("--roster", required=True, help="CSV file with a column named learner")
    one.add_argument("--class-word", required=True, help="the word that was given to the class")
    one.add_argument("--out", required=True, help="folder to write the mark book into")
    one.add_argument(
        "--lessons", nargs="+", default=(), metavar="NN", help="only these, such as 00 01"
    )

    one = subcommand("demo-room", demo_room)
    one.add_argument("folder", help="a new or empty folder")

    one = subcommand("build", build)
    one.add_argument("lessons", nargs="*", help="file names in lessons/; all if none")
    return parser


def main(words=None):
    """Run one subcommand; return the exit code."""
    arguments = command_line().parse_args(words)
    try:
        arguments.run(arguments)
    except Unusable as error:
        print(error, file=sys.stderr)
        return 2
    return 0


if __name__ == "__main__":
    sys.exit(main())
