"""Commands for one who learns: open a lesson, erase what was left."""

from helpers.commands import ROOT, said_yes
from helpers.exercises.refusals import Unusable, refused


def add_to(subcommand):
    """Say the words of each command of this module."""
    one = subcommand("open", open_)
    one.add_argument(
        "lesson", nargs="?", default="00", metavar="LESSON", help="its number; 00 if none is given"
    )

    one = subcommand("forget", forget)
    one.add_argument("learner", help="the learner id, such as BENCH-07")
    one.add_argument("--yes", action="store_true", help="do not ask")
    one.add_argument(
        "--outputs", action="store_true", help="also clear the results stored in all lessons"
    )


def open_(arguments):
    """Open a lesson in JupyterLab, on this machine only.

    Nothing is looked up in the network. Without a browser, its address is printed. Ctrl-C closes
    it. Two examples: open; open 03
    """
    from helpers.opening import find_lesson, open_lesson

    open_lesson(find_lesson(ROOT / "lessons", arguments.lesson))


def forget(arguments):
    """Erase what one learner leaves in this folder.

    That is the answers, the brief and sheet of a build, the hand-ins, the settings and the editor's
    safety copies of notebooks. What will go is listed first; nothing goes before you say yes. Close
    the lessons before. An example: forget BENCH-07
    """
    from helpers.authoring.solutions import tidy_lessons
    from helpers.exercises.settings import SettingsError
    from helpers.exercises.store import here
    from helpers.exercises.traces import erase, find_traces, with_outputs

    store, lessons = here(), ROOT / "lessons"
    if store.folder is None:
        raise Unusable("Answers are kept in memory only here: there is nothing to erase.")
    try:
        traces = find_traces(store, lessons, arguments.learner)
    except SettingsError as error:
        raise Unusable(str(error)) from None
    kept = with_outputs(lessons)
    print("To be erased for good:", *traces, sep="\n  ")
    if arguments.outputs and kept:
        print("To be cleared of results, whoever ran them:", *kept, sep="\n  ")
    if not (arguments.yes or said_yes()):
        raise Unusable("Nothing was erased.")
    for path in traces:
        with refused(f"{path} could not be erased", "Close the lessons, then say it once more."):
            erase(path)
        print(f"Erased: {path}")
    if arguments.outputs:
        for path in tidy_lessons(ROOT, [path.name for path in kept]) if kept else []:
            print(f"Cleared: {path}")
        print("What was typed into cells is still there. Delete it in JupyterLab.")
    elif kept:
        print("Results of run cells are still stored in these:", *kept, sep="\n  ")
        print("To clear them, use Edit, Clear Outputs of All Cells in JupyterLab, then save.")
    print(
        "IPython may keep lines that were run in your home folder, in .ipython; that is not here."
    )
