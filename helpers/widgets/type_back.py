"""Typing paper back: one line a question, by the keyboard alone, read back before it is kept."""

import ipywidgets as widgets

from helpers.classroom import paper_log
from helpers.classroom.roster import read_roster
from helpers.exercises.bank import bank
from helpers.exercises.refusals import Unusable
from helpers.exercises.settings import Settings, changed
from helpers.exercises.wording import Line, title
from helpers.pages.page import Page
from helpers.sheets.paper import chosen
from helpers.widgets import desk
from helpers.widgets.screen import SPOKEN_NEXT
from helpers.widgets.timing import on_enter, soon

OF_THE_PACK = ("class", "learner", "lessons", "draw")


class TypeBack(desk.Form):
    """Enter reads a line and says what was understood; Enter again keeps it and goes on.

    Whose question is next stands above the line from the moment that the bench code is there.
    """

    def __init__(self):
        self.read, self.kept, self.passed, self.pack, self.again = None, [], set(), None, ""
        fields = {
            "class": desk.which_class(),
            "learner": desk.text_box("Bench code:", placeholder="such as BENCH-07, or 7"),
            "lessons": desk.text_box(
                "Lessons or questions of the pack:", placeholder="empty: those of the class"
            ),
            "draw": desk.text_box("Set, from its small print:", "0"),
            "next": widgets.HTML(SPOKEN_NEXT),
            "row": desk.long_box("Answer:", placeholder="as it stands on paper"),
        }
        on_enter(fields["row"], lambda: soon(self.enter))
        super().__init__(
            "type-back", fields, {"Enter": TypeBack._enter, "Undo the last line": TypeBack._undo}
        )
        for name in OF_THE_PACK:
            fields[name].observe(lambda _: self._turn(), "value")

    def enter(self):
        self.do(TypeBack._enter)

    def _turn(self):
        """Forget what was said of another pack, and say what is next in this one."""
        self.fields["next"].value = SPOKEN_NEXT
        self.do(lambda form: form["learner"] and form._open() and "")

    def _open(self):
        """Return roster, log and lines of the pack that the boxes name, and say what is next."""
        made = self.made = desk.opened(self["class"])
        roster, _ = read_roster(made.where("roster"))
        learner = paper_log.learner_in(self["learner"], roster)
        draw = desk.whole("Set", self["draw"], 0)
        wanted = desk.numbers_in(self["lessons"]) or made.lessons
        self.asked = [q.id for _, asked in (chosen(wanted, draw) if wanted else ()) for q in asked]
        if self.pack != (pack := (made.path, learner, draw)):
            self.pack, self.passed, self.read, self.again = pack, set(), None, ""
        log = paper_log.PaperLog(made.paper_log)
        lines, _ = log.lines()
        self._say_next(lines)
        return roster, log, lines

    def _enter(self):
        roster, log, lines = self._open()
        made, (_, learner, draw) = self.made, self.pack
        row, expected = self["row"], self._next(lines)
        if self.read and self.read[0] == row:
            return self._keep(log)
        self.read = None
        if not row:
            self.passed |= {expected}
            self._say_next(lines)
            return desk.as_lines([f"{expected} is left out."] * bool(expected))
        own = roster.supply_of(learner) or made.supply
        supply = changed(Settings("ROOM"), learner, made.word, own).supply
        typed = paper_log.understand(
            row, learner, made.word, supply, bank(), expected, draw, self.asked
        )
        paper_log.refuse_twice(lines, typed)
        self.read = row, typed
        said = typed.said.rstrip(".")
        return [Line("verdict", f"Read. {said}. Enter keeps it; or change it and press Enter.")]

    def _keep(self, log):
        typed, self.read, self.again = self.read[1], None, ""
        log.keep(typed.line)
        self.kept.append((log, typed.line))
        self.fields["row"].value = ""
        self._say_next(log.lines()[0])
        return desk.as_lines([f"Kept: {typed.said.rstrip('.')}.", typed.judged])

    def _undo(self):
        if not self.kept:
            raise Unusable("Nothing was kept since this cell was run.")
        log, line = self.kept.pop()
        if line.line not in {one.line for one in log.lines()[0]}:
            raise Unusable("That line does not stand in the log any more. Nothing was done.")
        log.take_back(line)
        self.read = None
        if (log.path, line.learner, line.draw) == (self.made.paper_log, *self.pack[1:]):
            self.again, self.passed = line.question, self.passed - {line.question}
            self._say_next(log.lines()[0])
        said = f"Taken back: {line.learner}, {paper_log.named(line)}. Type it anew, or go on."
        return [Line("text", said)]

    def _say_next(self, lines):
        _, learner, draw = self.pack
        said = f"That was all of {learner}. Type the next bench code above."
        if name := self._next(lines):
            said = f"Now: {learner}, {title(bank()[name], draw)} ({name})"
        elif not self.asked:
            said = f"Now: {learner}. Put its question before each answer, such as ohm-3: 4.7 mA"
        self.fields["next"].value = Page([Line("text", said)]).html() + SPOKEN_NEXT

    def _next(self, lines):
        """Return the question of the pack that is next; '' where all are typed or left out."""
        _, learner, draw = self.pack
        there = {line.question for line in lines if (line.learner, line.draw) == (learner, draw)}
        asked = [self.again, *self.asked]
        return next((name for name in asked if name and name not in there | self.passed), "")
