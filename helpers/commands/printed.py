"""Commands that print: questions on paper, their key, and what lies on a bench."""


def add_to(subcommand):
    """Say the words of each command of this module."""
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
            one.set_defaults(again=0, questions=())
        else:
            one.add_argument(
                "--again", nargs="?", type=int, const=1, default=0, metavar="DRAW",
                help="danger items alone, with the case of this fresh draw; 1 if none is given",
            )  # fmt: skip
            one.add_argument(
                "--questions", nargs="+", default=(), metavar="ID",
                help="these questions, such as heat-3; with --again their fresh draw",
            )  # fmt: skip


def paper(arguments):
    """Print questions for a class, each learner with their own numbers and room to answer.

    Who stands on the roster gets a pack, all in one page to print; a column supply of the roster
    wins over --supply. Each question says its draw and edition, by which an answer is typed in
    later. With --again, fresh cases of the danger items alone; with --questions heat-3 --again,
    fresh numbers of that one. Two examples: paper --class lessons/classes/wick/wick.toml; paper
    --lessons 02 03 --roster roster.csv --class-word wick --out paper.html
    """
    print_for_class(arguments, "paper")


def key(arguments):
    """Print the key to questions on paper, with each learner's own numbers.

    Give it what `paper` was given. It holds right answers, working and usual slips: it is for who
    marks, never for the benches. An example: key --lessons 02 03 --roster roster.csv --class-word
    wick --out key.html
    """
    print_for_class(arguments, "key")


def start_sheet(arguments):
    """Print a start sheet for each bench, the prove-dead card, or the leader's guide.

    A start sheet says where to go, how to answer, and what is not done in this room; the guide how
    a room is led for two hours or two days. Two examples: start-sheet --class
    lessons/classes/wick/wick.toml --lessons 00 01; start-sheet --guide --out guide.html
    """
    from helpers.printing import write_new_page
    from helpers.sheets import start_sheet as sheet

    if not (arguments.guide or arguments.card):
        print_for_class(arguments, "start-sheet")
    else:
        write_new_page(arguments.out, sheet.guide() if arguments.guide else sheet.card())


def print_for_class(given, name):
    """Print for a class as the words of a command line say."""
    from helpers.printing import print_for

    whose = given.class_file, given.class_word, given.roster, given.learner, given.supply
    asked = [*given.lessons, *given.questions]
    print("\n".join(print_for(name, given.out, *whose, asked, given.again)))
