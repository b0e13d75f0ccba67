"""The command line: `python -m helpers SUBCOMMAND`. One function a subcommand, nothing else.

Each imports what it needs when it runs, so that no command waits for another's libraries.
"""

import argparse
import os
import sys
from pathlib import Path

from helpers.classroom.problems import Unusable, plain, refused

MANY = 200
ROOT = Path(__file__).resolve().parents[1]


def open_(arguments):
    """Open a lesson in JupyterLab, on this machine only.

    Nothing is looked up in the network. Without a browser, its address is printed. Ctrl-C closes
    it. Two examples: open; open 03
    """
    from helpers.opening import find_lesson, open_lesson

    open_lesson(find_lesson(ROOT / "lessons", arguments.lesson))


def mark(arguments):
    """Mark a folder of hand-ins.

    OUT will hold mark-book.csv, one row a learner, and mark-book.html, one page to read and print;
    a mark book that lies there is kept under its own date. Where no answer counts, nothing is
    written. A class file (see `class`) may say all of this; what is given here wins. Two examples:
    mark --class wick.toml; mark hand-ins --roster roster.csv --class-word wick --out marked
    """
    from helpers.classroom.class_file import for_marking, read_class
    from helpers.classroom.marking import mark_folder

    wanted = for_marking(
        arguments.class_file,
        folder=arguments.folder,
        roster=arguments.roster,
        class_word=arguments.class_word,
        out=arguments.out,
        only=arguments.lessons,
        accept=arguments.accept,
        paper=arguments.paper_log,
        feedback=arguments.feedback,
        decimal_comma=arguments.decimal_comma,
    )
    print("\n".join(mark_folder(progress=with_bar, **wanted).summary()))
    if arguments.class_file:
        print(read_class(arguments.class_file).over(), end="")


def class_(arguments):
    """Write the file of a class.

    It holds the class word, the supply, the lessons that count and the roster's name; `mark --class
    FILE` reads it. A file that is there already is never written over. An example: class wick.toml
    --word wick --supply "230 V 50 Hz" --lessons 01 02 --benches 24
    """
    from helpers.classroom.class_file import write_class

    a = arguments
    made = write_class(a.file, a.word, a.supply, a.lessons, a.roster, a.benches)
    print(f"Class {made.word} is in {made.path}. Collect its hand-ins in {made.where('hand_ins')}.")
    if not made.where("roster").exists():
        print(f"Its roster is still to be written: {made.where('roster')}, a column `learner`.")
    print(f"Then: python -m helpers mark --class {made.path}")


def demo_room(arguments):
    """Write an invented class to try the marking on.

    Its README says what was put in on purpose, and by which command it is marked.
    """
    from helpers.classroom.demo_room import write_demo_room

    command = write_demo_room(arguments.folder)
    print(f"An invented class is in {arguments.folder}. To mark it:\n{command}")


def forget(arguments):
    """Erase what one learner leaves in this folder.

    That is the answers, the hand-ins, the settings and the editor's safety copies of notebooks.
    What will go is listed first; nothing goes before you say yes. Close the lessons before. An
    example: forget BENCH-07
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


def forget_class(arguments):
    """Erase what a class has left: hand-ins, mark books, feedback, packs and paper log.

    Only what says that it is of this class; its file and its roster stay. All is listed first, and
    nothing goes before you say yes. An example: forget-class wick.toml
    """
    from helpers.classroom.class_file import read_class
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
    for path in erase(own):
        print(f"Erased: {path}")
    print("Copies elsewhere, such as on learners' machines, are not touched.")


def said_yes():
    """Ask; anything but yes is a no, and so is nobody there to answer."""
    try:
        return input("Erase? Type yes: ").strip().lower() == "yes"
    except EOFError:
        print()
        return False


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


def paper(arguments):
    """Print questions for a class, each learner with their own numbers and room to answer.

    Who stands on the roster gets a pack, all in one page to print; a column supply of the roster
    wins over --supply. Each question says its draw and edition, by which an answer is typed in
    later. With --again, fresh cases of the danger items alone. Two examples: paper --class
    wick.toml; paper --lessons 02 03 --roster roster.csv --class-word wick --out paper.html
    """
    from helpers.printing import from_command
    from helpers.sheets.paper import pieces

    from_command(arguments, pieces, "paper")


def key(arguments):
    """Print the key to questions on paper, with each learner's own numbers.

    Give it what `paper` was given. It holds right answers, working and usual slips: it is for who
    marks, never for the benches. An example: key --lessons 02 03 --roster roster.csv --class-word
    wick --out key.html
    """
    from helpers.printing import from_command
    from helpers.sheets.key import pieces

    from_command(arguments, pieces, "key")


def start_sheet(arguments):
    """Print a start sheet for each bench, the prove-dead card, or the leader's guide.

    A start sheet says where to go, how to answer, and what is not done in this room; the guide how
    a room is led for two hours or two days. Two examples: start-sheet --class wick.toml --lessons
    00 01; start-sheet --guide --out guide.html
    """
    from helpers.printing import from_command, write_new_page
    from helpers.sheets import start_sheet as sheet

    if not (arguments.guide or arguments.card):
        from_command(arguments, sheet.pieces, "start-sheet")
    else:
        write_new_page(arguments.out, sheet.guide() if arguments.guide else sheet.card())


def size(arguments):
    """Size a pilot light from a brief.

    The brief is a TOML file; --example prints the workshop's, with comments. What forbids it comes
    first, then the best of all candidates, each rule with its figure and limit, and what remains
    for a competent person. --sheet writes one page to print. Two examples: size brief.toml --sheet
    sheet.html; size brief.toml --mine series_diode 47k 3 0.6W 300V
    """
    import json

    from helpers.exercises.wording import CAUTION, STAMP
    from helpers.physics import mains
    from helpers.sizing import report
    from helpers.sizing.brief import Brief, to_toml

    if arguments.example:
        if arguments.supply not in mains.SUPPLIES:
            raise Unusable(
                f"The supply was read as {plain(arguments.supply)}. There are: "
                f"{', '.join(mains.SUPPLIES)}."
            )
        supply = mains.SUPPLIES[arguments.supply]
        brief = Brief(supply_volts=supply.volts_rms, supply_hertz=supply.hertz)
        print(f"# {STAMP}\n{to_toml(brief, comments=True)}", end="")
        return
    plan = planned(arguments)
    if arguments.sheet:
        said = write_sheet(arguments.sheet, plan, arguments.learner)
    if arguments.json:
        from helpers.sheets.plan_facts import facts

        held = {"stamp": STAMP, "caution": CAUTION} | report.data(plan) | {"sheet": facts(plan)}
        print(json.dumps(held, indent=1))
    elif arguments.sheet:
        print(STAMP, said, sep="\n")
    else:
        framed(report.lines(plan))


def bench(arguments):
    """Hold the readings of a bench log against a plan.

    The brief is the one that was sized; without --mine its best candidate is meant. --blank prints
    the log to fill in: what anyone reads unpowered, and the rehearsal on a bench supply of a few
    volts. An example: bench brief.toml --readings log.csv
    """
    from helpers.exercises.wording import STAMP
    from helpers.physics import circuits
    from helpers.sizing import bench_log, bench_report, diagnosis, predictions

    try:
        build = predictions.of_plan(planned(arguments))
        rows = predictions.table(build)
        if arguments.blank:
            print(bench_log.blank(rows, (STAMP, bench_report.BEFORE)), end="")
            return
        if not arguments.readings:
            raise Unusable("No log was given: --readings LOG.csv, or --blank to print one.")
        with refused(f"{plain(arguments.readings)} could not be read", "Check its name."):
            text = Path(arguments.readings).read_bytes()
        found = diagnosis.diagnose(build, bench_log.from_csv(text, rows))
    except ValueError as error:
        raise Unusable(plain(str(error), 500)) from None
    said = f"{build.count:g} × {bench_report.shown(build.ohms_each, 'resistance')}"
    framed([
        f"{said}; {circuits.named(build.circuit)}.", bench_report.BEFORE, "",
        *bench_report.lines(found),
    ])  # fmt: skip


def framed(lines):
    """Print lines between the stamp, after the caution, none too long."""
    import textwrap

    from helpers.exercises.wording import CAUTION, STAMP

    print(STAMP)
    for line in (f"Caution. Mains voltage can kill. {CAUTION}", "", *lines, ""):
        hung = " " * (4 if line.startswith(" ") else 0)
        folded = textwrap.wrap(line, 100, subsequent_indent=hung, break_on_hyphens=False)
        print("\n".join(folded) if len(line) > 100 else line)
    print(STAMP)


def planned(arguments):
    """Return the plan that a brief comes to, or that of the build that `--mine` names."""
    from helpers import quantities
    from helpers.sizing import verdicts
    from helpers.sizing.brief import from_toml

    if not arguments.brief:
        raise Unusable("No brief was given. Name a TOML file, or print one with: size --example")
    with refused(f"{plain(arguments.brief)} could not be read", "Check its name."):
        text = Path(arguments.brief).read_bytes()
    try:
        brief = from_toml(text)
        if not arguments.mine:
            return verdicts.plan(brief)
        circuit, *typed = arguments.mine
        kinds = ("resistance", "ratio", "power", "voltage")
        parts = [quantities.read(*each).value for each in zip(typed, kinds, strict=True)]
        return verdicts.mine(brief, circuit, *parts)
    except ValueError as error:
        raise Unusable(plain(str(error), 500)) from None


def write_sheet(out, plan, learner):
    """Write a sizing sheet; return what was done."""
    from helpers.sheets import danger_items, sizing_sheet

    try:
        learner, items = danger_items.of_learner(learner)
    except ValueError as error:
        raise Unusable(plain(str(error), 300)) from None
    made = sizing_sheet.pieces(plan, items, learner)
    with refused(f"{plain(out, 300)} could not be written", "Give another name after --sheet."):
        done = "replaced" if sizing_sheet.write_sheet(Path(out), made) else "written"
    left = sum(not passed for _, passed in items)
    return f"Sizing sheet {done}: {plain(out, 300)}. Danger items open: {left} of {len(items)}."


def with_bar(learners):
    """Show a bar where the run is long and somebody watches."""
    if len(learners) < MANY or not sys.stderr.isatty():
        return learners
    from tqdm import tqdm

    return tqdm(learners, unit=" learners", delay=1, leave=False)


def command_line():
    """Return the parser of the command line, and the names of its subcommands."""
    from helpers.exercises.wording import CAUTION, STAMP

    caution = f"Caution. Mains voltage can kill. {CAUTION} {STAMP}"
    parser = argparse.ArgumentParser(
        prog="python -m helpers", description="Opens the lessons and marks a room.", epilog=caution
    )
    commands = parser.add_subparsers(required=True, metavar="SUBCOMMAND")

    def with_mine(one):
        one.add_argument(
            "--mine", nargs=5, metavar=("CIRCUIT", "OHMS", "COUNT", "WATTS", "VOLTS"),
            help="a build as it is: circuit, each resistor, how many, rating, volts of its type",
        )  # fmt: skip

    def subcommand(name, run):
        said = run.__doc__
        short = said.split(".")[0] + "."
        one = commands.add_parser(name, help=short, description=said, epilog=caution)
        one.set_defaults(run=run)
        return one

    one = subcommand("open", open_)
    one.add_argument(
        "lesson", nargs="?", default="00", metavar="LESSON", help="its number; 00 if none is given"
    )

    one = subcommand("mark", mark)
    one.add_argument(
        "folder", nargs="?", help="folder with the hand-ins; folders inside it are read too"
    )
    one.add_argument("--class", dest="class_file", metavar="FILE", help="the file of the class")
    one.add_argument("--roster", help="CSV file with a column named learner")
    one.add_argument("--class-word", help="the word that was given to the class")
    one.add_argument("--out", help="folder to write the mark book into")
    one.add_argument(
        "--lessons", nargs="+", default=(), metavar="NN", help="only these, such as 00 01"
    )
    one.add_argument(
        "--accept", nargs="+", default=(), metavar="WHAT",
        help="hand-ins that count where several of one id have parted; the page names them. And "
        "BENCH-07:ohm-3 where paper counts instead of the screen",
    )  # fmt: skip
    one.add_argument("--paper-log", metavar="FILE", help="what was typed back from paper")
    one.add_argument("--feedback", metavar="FOLDER", help="write a page for each learner into it")
    one.add_argument(
        "--decimal-comma", action="store_true",
        help="write the table for a spreadsheet that is set to a decimal comma",
    )  # fmt: skip

    one = subcommand("class", class_)
    one.add_argument("file", metavar="FILE", help="a new file, such as wick.toml")
    one.add_argument("--word", required=True, help="the class word")
    one.add_argument("--supply", default="230 V 50 Hz", metavar="NAME", help="its supply")
    one.add_argument("--lessons", nargs="+", default=(), metavar="NN", help="those that count")
    one.add_argument("--roster", default="roster.csv", metavar="NAME", help="name of its roster")
    one.add_argument(
        "--benches", type=int, default=0, metavar="N", help="write a roster of so many bench codes"
    )

    one = subcommand("demo-room", demo_room)
    one.add_argument("folder", help="a new or empty folder")

    one = subcommand("forget", forget)
    one.add_argument("learner", help="the learner id, such as BENCH-07")
    one.add_argument("--yes", action="store_true", help="do not ask")
    one.add_argument(
        "--outputs", action="store_true", help="also clear the results stored in all lessons"
    )

    one = subcommand("forget-class", forget_class)
    one.add_argument("file", metavar="FILE", help="the file of the class, such as wick.toml")
    one.add_argument("--yes", action="store_true", help="do not ask")

    one = subcommand("build", build)
    one.add_argument("lessons", nargs="*", help="file names in lessons/; all if none")

    for name, run in (("paper", paper), ("key", key), ("start-sheet", start_sheet)):
        one = subcommand(name, run)
        one.add_argument("--class", dest="class_file", metavar="FILE", help="the file of the class")
        one.add_argument("--roster", help="CSV with a column learner, perhaps a column supply")
        one.add_argument("--learner", metavar="ID", help="only this learner")
        one.add_argument("--class-word", help="the word that was given to the class")
        one.add_argument("--supply", metavar="NAME", help="such as '120 V 60 Hz'")
        one.add_argument("--lessons", nargs="+", default=(), metavar="NN", help="such as 02 03")
        one.add_argument("--out", metavar="FILE", help="a new file, such as paper.html")
        if run is start_sheet:
            one.add_argument("--card", action="store_true", help="the prove-dead card alone")
            one.add_argument("--guide", action="store_true", help="the leader's guide alone")
            one.set_defaults(again=0)
        else:
            one.add_argument(
                "--again", nargs="?", type=int, const=1, default=0, metavar="DRAW",
                help="danger items alone, with the case of this fresh draw; 1 if none is given",
            )  # fmt: skip

    one = subcommand("size", size)
    one.add_argument("brief", nargs="?", metavar="BRIEF", help="a TOML file")
    one.add_argument("--example", action="store_true", help="print the workshop's brief and stop")
    one.add_argument(
        "--supply", default="230 V 50 Hz", metavar="NAME",
        help="the supply of that example, such as '120 V 60 Hz'",
    )  # fmt: skip
    one.add_argument("--json", action="store_true", help="as JSON")
    one.add_argument("--sheet", metavar="OUT", help="an HTML file to write, to be printed")
    one.add_argument("--learner", metavar="ID", help="whose danger items stand on that sheet")
    with_mine(one)

    one = subcommand("bench", bench)
    one.add_argument("brief", nargs="?", metavar="BRIEF", help="a TOML file")
    one.add_argument("--readings", metavar="LOG", help="a CSV file, as --blank prints it")
    one.add_argument("--blank", action="store_true", help="print a log to fill in and stop")
    with_mine(one)

    one = subcommand("clash", clash)
    one.add_argument("question", metavar="ID", help="the id of a question, such as safe-12")
    return parser, tuple(commands.choices)


def main(words=None):
    """Run one subcommand; return the exit code. Who stops reading, as `head` does, ends it."""
    try:
        try:
            return run(words)
        finally:
            sys.stdout.flush()
    except BrokenPipeError:
        # Python flushes once more as it ends, and would complain there.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 141  # as a shell counts it, like the 130 of Ctrl-C


def run(words):
    words = sys.argv[1:] if words is None else words
    parser, names = command_line()
    if not words or (not words[0].startswith("-") and words[0] not in names):
        read = f'"{plain(words[0])}" is no SUBCOMMAND' if words else "no SUBCOMMAND was given"
        parser.error(f"{read}. There are: {', '.join(names)}. Add --help to see what each does.")
    arguments = parser.parse_args(words)
    try:
        arguments.run(arguments)
    except Unusable as error:
        print(error, file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        print("Stopped.", file=sys.stderr)
        return 130
    return 0


if __name__ == "__main__":
    sys.exit(main())
