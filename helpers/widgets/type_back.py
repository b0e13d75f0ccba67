"""Typing paper back: one line a question, by the keyboard alone, read back before it is kept."""

from helpers.classroom import paper_log
from helpers.classroom.roster import read_roster
from helpers.exercises.bank import bank
from helpers.exercises.refusals import Unusable
from helpers.exercises.settings import Settings, changed
from helpers.exercises.wording import Line
from helpers.sheets.paper import chosen
from helpers.widgets import desk
from helpers.widgets.timing import on_enter, soon


class TypeBack(desk.Form):
    """Enter reads a line and says what was understood; Enter again keeps it and goes on."""

    def __init__(self):
        self.read, self.kept, self.passed, self.pack = None, [], set(), None
        fields = {
            "class": desk.which_class(),
            "learner": desk.text_box("Bench code:", placeholder="such as BENCH-07"),
            "lessons": desk.text_box(
                "Lessons or questions of the pack:", placeholder="empty: those of the class"
            ),
            "draw": desk.text_box("Draw of the pack:", "0"),
            "row": desk.long_box("Answer:", placeholder="as it stands on paper"),
        }
        on_enter(fields["row"], lambda: soon(self.enter))
        super().__init__(
            "type-back", fields, {"Enter": TypeBack._enter, "Undo the last line": TypeBack._undo}
        )

    def enter(self):
        self.do(TypeBack._enter)

    def _enter(self):
        made = self.made = desk.opened(self["class"])
        roster, _ = read_roster(made.where("roster"))
        learner = paper_log.learner_in(self["learner"], roster)
        draw = desk.whole("Draw", self["draw"], 0)
        log = paper_log.PaperLog(made.paper_log)
        if self.pack != (pack := (made.path, learner, draw)):
            self.pack, self.passed, self.read = pack, set(), None
        lines, _ = log.lines()
        row, expected = self["row"], self._next(lines)
        if self.read and self.read[0] == row:
            return self._keep(log)
        self.read = None
        if not row:
            self.passed |= {expected}
            return self._say(lines, *[f"{expected} is left out."] * bool(expected))
        own = roster.supply_of(learner) or made.supply
        supply = changed(Settings("ROOM"), learner, made.word, own).supply
        typed = paper_log.understand(row, learner, made.word, supply, bank(), expected, draw)
        paper_log.refuse_twice(lines, typed)
        self.read = row, typed
        said = typed.said.rstrip(".")
        return [Line("verdict", f"Read. {said}. Enter keeps it; or change it and press Enter.")]

    def _keep(self, log):
        typed, self.read = self.read[1], None
        log.keep(typed.line)
        self.kept.append((log, typed.line))
        self.fields["row"].value = ""
        return self._say(log.lines()[0], f"Kept: {typed.said.rstrip('.')}.", typed.judged)

    def _undo(self):
        if not self.kept:
            raise Unusable("Nothing was kept since this cell was run.")
        log, line = self.kept.pop()
        if line.line not in {one.line for one in log.lines()[0]}:
            raise Unusable("That line does not stand in the log any more. Nothing was done.")
        log.take_back(line)
        self.read, self.passed = None, set()
        said = f"Taken back: {line.learner}, {paper_log.named(line)}. Type it anew, or go on."
        return [Line("text", said)]

    def _say(self, lines, *said):
        _, learner, _ = self.pack
        after = f"That was all of {learner}. Type the next bench code above."
        if name := self._next(lines):
            after = f"Next for {learner}: {name} ({bank()[name].outcome})."
        return desk.as_lines([*said, after])

    def _next(self, lines):
        """Return the question of the pack that is next; '' where all are typed or left out."""
        _, learner, draw = self.pack
        wanted = desk.numbers_in(self["lessons"]) or self.made.lessons
        pack = chosen(wanted, draw) if wanted else ()
        there = {line.question for line in lines if (line.learner, line.draw) == (learner, draw)}
        asked = [question.id for _, questions in pack for question in questions]
        return next((name for name in asked if name not in there | self.passed), "")
