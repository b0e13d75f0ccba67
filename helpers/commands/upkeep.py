"""Commands for maintainers: build the solutions, find where wrong turns meet."""

from helpers.commands import ROOT
from helpers.exercises.refusals import Unusable


def add_to(subcommand):
    """Say the words of each command of this module."""
    one = subcommand("build", build)
    one.add_argument("lessons", nargs="*", help="file names in lessons/; all if none")

    one = subcommand("clash", clash)
    one.add_argument("question", metavar="ID", help="the id of a question, such as safe-12")


def build(arguments):
    """Tidy the lessons and build solutions/ from them, and the index's page from its text.

    Each lesson that is named is saved without outputs, and its solution is made anew: with the
    model answers of the workshop copy, run and recorded. An example: build 02-ohms-law.ipynb
    """
    from helpers.authoring.index_page import write_index
    from helpers.authoring.solutions import build as build_solutions
    from helpers.authoring.solutions import tidy_lessons

    for name in arguments.lessons:
        if not (ROOT / "lessons" / name).is_file():
            held = ", ".join(sorted(path.name for path in (ROOT / "lessons").glob("*.ipynb")))
            raise Unusable(f"There is no lesson {name} in lessons/. It holds {held}.")
    page = write_index(ROOT / "lessons")
    tidied = tidy_lessons(ROOT, arguments.lessons)
    for path in [page, *tidied, *build_solutions(ROOT, arguments.lessons)]:
        print(path.relative_to(ROOT))


def clash(arguments):
    """List the wrong turns of a question that end on its right answer or on each other.

    All numbers that it can draw are tried, on all supplies; those without a clash are proposed. An
    example: clash safe-12
    """
    from helpers.authoring.clash import find, report
    from helpers.exercises.bank import bank

    print("\n".join(report(find(arguments.question, bank()))))
