"""What an instructor does without a terminal: each action a button with its result beside it.

The same functions as the commands. Knows no learner's session, so that opening it leaves no trace.
"""

import shlex
from dataclasses import replace
from html import escape

from helpers.classroom import class_file, forget_class
from helpers.classroom.marking import mark_folder
from helpers.exercises.refusals import Unusable, counted, plain
from helpers.exercises.settings import Settings
from helpers.exercises.wording import Line
from helpers.physics.mains import SUPPLIES
from helpers.widgets import desk
from helpers.widgets.type_back import TypeBack

PAPERS = {
    "Packs of questions": ("paper", False),
    "Questions again": ("paper", True),
    "Key to the packs": ("key", False),
    "Key to questions again": ("key", True),
    "Start sheets": ("start-sheet", False),
}
TO_PRINT = (
    "To print it, open that file in a browser: from the disk, or by a right-click in the list of "
    "files at the left, Open in New Browser Tab."
)
FRAME = (
    '<iframe title="{title}" srcdoc="{page}" sandbox="" style="width: 100%; height: 36rem; '
    'border: 1px solid"></iframe>'
)
STAYS = (
    "Its class file and roster stay, so the class stays in the lists here until you delete its "
    "folder, {}."
)
# A link inside a frame leads to the page around it, unless the frame says that it is a page itself;
# it says so before the page's policy, which lets in no base.
OWN_BASE = '<head>\n<base href="about:srcdoc">'


def make_class():
    """Show the form that writes the file of a class, and its roster of bench codes."""
    return desk.Form(
        "make-class",
        {
            "word": desk.text_box("Class word:", placeholder="such as wick"),
            "supply": desk.list_box("Supply:", list(SUPPLIES), value=Settings.supply),
            "lessons": desk.text_box(
                "Lessons that count (empty: all begun):", placeholder="such as 00 01"
            ),
            "benches": desk.text_box("Bench codes on its roster:", "12"),
        },
        {"Make this class": _make},
    )


def _make(form):
    if not form["word"]:
        raise Unusable("The class word is empty. Type one word, such as wick.")
    word, benches = form["word"].lower(), desk.whole("Bench codes", form["benches"], 12)
    path = desk.CLASSES / word / f"{word}.toml"
    wanted = desk.numbers_in(form["lessons"])
    made = class_file.write_class(path, word, form["supply"], wanted, benches=benches)
    desk.look_again()
    return desk.as_lines(
        [
            f"Class {made.word} is made: {made.path}. To change it, open that file here, in the "
            "list of files at the left.",
            f"Its roster: {made.where('roster')}. To delete bench codes that you do not use, or to "
            "add a column supply for those on another mains, right-click it there: Open With, "
            "Editor. A double click only shows it.",
            f"Put the files that learners hand in into {made.where('hand_ins')}: drag them into "
            "that folder, at the left, or copy them there.",
            f"It is to be kept until {made.keep_until}.",
        ]
    )


def print_paper():
    """Show the form that makes what is printed for a class."""
    form = desk.Form(
        "print-paper",
        {
            "class": desk.which_class(),
            "what": desk.list_box("What:", list(PAPERS)),
            "lessons": desk.text_box(
                "Lessons or questions (empty: those of the class):",
                placeholder="such as 02 03, or heat-3",
            ),
            "learner": desk.text_box(
                "For one bench (empty: for all):", placeholder="such as BENCH-07"
            ),
            "draw": desk.text_box("Set of other numbers:", "1", placeholder="1, and then 2"),
        },
        {
            "Make it": _print,
            "Prove-dead card": lambda form: _print_one(form, "card"),
            "Leader's guide": lambda form: _print_one(form, "guide"),
        },
    )

    def follow(what):
        form.fields["draw"].layout.display = "" if PAPERS[what][1] else "none"

    form.fields["what"].observe(lambda change: follow(change["new"]), "value")
    follow(form["what"])
    return form


def _print(form):
    from helpers.printing import print_for

    name, again = PAPERS[form["what"]]
    draw = desk.whole("Set of other numbers", form["draw"], 1) if again else 0
    if again and not draw:
        raise Unusable("Set 0 is that of the first pack. Set 1 has other numbers, then set 2.")
    said = print_for(
        name,
        class_file=desk.opened(form["class"]).path,
        learner=form["learner"],
        lessons=desk.numbers_in(form["lessons"]),
        draw=draw,
    )
    return desk.as_lines([*said, TO_PRINT])


def _print_one(form, name):
    from helpers.printing import write_new_page
    from helpers.sheets import start_sheet

    out = desk.opened(form["class"]).where("paper") / f"{name}.html"
    write_new_page(out, getattr(start_sheet, name)())
    return desk.as_lines([f"Written: {out}", TO_PRINT])


def mark():
    """Show the form that marks what was handed in and typed back, and shows the mark book."""
    return desk.Form(
        "mark",
        {
            "class": desk.which_class(),
            "feedback": desk.tick_box("A page for each learner, and all in one to print"),
            "comma": desk.tick_box("Table with decimal commas"),
            "decided": desk.long_box("Decided (paste from the book):"),
        },
        {"Mark": _mark, "Look at the book": _look},
    )


def _mark(form):
    made = desk.opened(form["class"])
    feedback = made.where("marked") / "feedback" if form["feedback"] else None
    decided = _decided(form["decided"])
    done = mark_folder(
        replace(made.for_marking(), decided=decided), feedback=feedback, decimal_comma=form["comma"]
    )
    told = [*done.summary(), made.over()]
    if decided:
        class_file.keep_decided(made, decided)
        form.fields["decided"].value = ""
        told.append(
            f"Decided, and kept in {made.path}: {', '.join(decided)}. To take it back, delete it "
            "there."
        )
    return desk.as_lines(told)


def _decided(typed):
    """Return the names that were copied from the book, which puts in quotes what has a space."""
    try:
        return [name for name in shlex.split(typed) if name != "--accept"]
    except ValueError:
        raise Unusable(
            f"Decided: {plain(typed)} was read. One of its quotation marks has no fellow: copy the "
            "whole line from the book."
        ) from None


def _look(form):
    path = desk.opened(form["class"]).where("marked") / "mark-book.html"
    if not path.exists():
        raise Unusable("There is no mark book yet. Press Mark first.")
    text = path.read_text(encoding="utf-8").replace("<head>", OWN_BASE, 1)
    return FRAME.format(title=escape(f"Mark book, class {form['class']}"), page=escape(text))


def type_back():
    """Show the form by which paper is typed back, one line a question."""
    return TypeBack()


def forget():
    """Show the form that erases what a class has left: it lists first, and asks."""
    return desk.Form(
        "forget-class",
        {"class": desk.which_class(), "yes": desk.text_box("Erase all that is listed? Type yes:")},
        {"List what would go": _list_traces, "Erase": _erase},
    )


def _list_traces(form):
    made = desk.opened(form["class"])
    own, left = forget_class.find_traces(made)
    form.listed = made.path, own
    lines = [Line("text", f"{counted(len(own), 'file')} of class {made.word} would go:")]
    lines += [Line("option", str(path)) for path in own]
    lines.append(Line("text", STAYS.format(made.path.parent)))
    lines += [Line("text", f"To be left: {path}: {plain(why)}") for path, why in left]
    return lines


def _erase(form):
    made = desk.opened(form["class"])
    own, _ = forget_class.find_traces(made)
    if not own or form.listed != (made.path, own):
        raise Unusable("List first what would go, and read it.")
    if form["yes"].lower() != "yes":
        raise Unusable("Nothing was erased: yes was not typed.")
    class_file.forget_decided(made)
    gone, form.listed, form.fields["yes"].value = list(forget_class.erase(own)), None, ""
    said = f"Erased for good: {counted(len(gone), 'file')} of class {made.word}."
    return desk.as_lines([said, STAYS.format(made.path.parent)])
