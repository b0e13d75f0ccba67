"""Commands for a build on paper: size it, and hold a bench log against it."""

from pathlib import Path

from helpers.exercises.refusals import Unusable, plain, refused


def add_to(subcommand):
    """Say the words of each command of this module."""
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
    plan = planned(arguments, ranked=not arguments.sheet)
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

    The brief is the one that was sized. The build is the one that --mine names, else the parts
    that were chosen in the brief, else the first of the ranking. --blank prints
    the log to fill in: what anyone reads unpowered, and the rehearsal on an isolated supply of
    24 V at most. An example: bench brief.toml --readings log.csv
    """
    from helpers.bench import diagnosis, log, predictions, report
    from helpers.exercises.wording import STAMP
    from helpers.sizing import own

    try:
        plan = planned(arguments)
        build = predictions.of_plan(plan)
        rows = predictions.table(build)
        if arguments.blank:
            print(log.blank(rows, (STAMP, report.BEFORE), build), end="")
            return
        if not arguments.readings:
            raise Unusable("No log was given: --readings LOG.csv, or --blank to print one.")
        readings = log.from_csv(content_of(arguments.readings), rows, build)
        found = diagnosis.diagnose(build, readings)
    except ValueError as error:
        raise Unusable(plain(str(error), 500)) from None
    whose = own.CHOSEN if plan.only else own.FIRST
    framed([
        f"Held against: {report.named(build)}; {whose}.", report.BEFORE, "",
        *report.lines(found),
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


def planned(arguments, ranked=False):
    """Return the plan of the build that `--mine` or the brief names, or of all candidates."""
    from helpers.sizing import own

    if not arguments.brief:
        raise Unusable("No brief was given. Name a TOML file, or print one with: size --example")
    try:
        brief = content_of(arguments.brief)
        return own.planned(brief, words=arguments.mine or (), ranked=ranked)
    except ValueError as error:
        raise Unusable(plain(str(error), 500)) from None


def content_of(name):
    """Return what the file of that name holds."""
    from helpers.exercises.whole_files import as_utf_8

    with refused(f"{plain(name)} could not be read", "Check its name."):
        return as_utf_8(Path(name).read_bytes())


def write_sheet(out, plan, learner):
    """Write a sizing sheet; return what was done."""
    from helpers.sheets import danger_items, sizing_sheet
    from helpers.sizing import own

    try:
        learner, items = danger_items.of_learner(learner)
    except ValueError as error:
        raise Unusable(plain(str(error), 300)) from None
    made = sizing_sheet.pieces(plan, items, learner)
    with refused(f"{plain(out, 300)} could not be written", "Give another name after --sheet."):
        done = "replaced" if sizing_sheet.write_sheet(Path(out), made) else "written"
    left = sum(not passed for _, passed in items)
    return (
        f"Sizing sheet {done}: {plain(out, 300)}. It has {own.CHOSEN if plan.only else own.FIRST}. "
        f"Danger items open: {left} of {len(items)}."
    )


def with_mine(one):
    one.add_argument(
        "--mine", nargs=5, metavar=("CIRCUIT", "OHMS", "COUNT", "WATTS", "VOLTS"),
        help="a build as it is: circuit, each resistor, how many, rating, volts of its type",
    )  # fmt: skip
