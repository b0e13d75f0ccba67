"""Random walks over cards in a real JupyterLab: is what can be seen what the log says?

Two notebooks with a kernel each keep one log; the first is open in two tabs. After every step each
card, the progress and the predictions are read as a learner reads them (hidden text does not
count) and compared with the log, replayed in this process. Knows no test.
"""

import json
import random
import re
import time
from collections import Counter
from contextlib import contextmanager, suppress
from dataclasses import asdict, replace
from pathlib import Path
from types import SimpleNamespace

import lab
from learner import right_answer, wrong_answers
from questions import ONE_OF_EACH_KIND

from helpers.exercises.bank import bank
from helpers.exercises.kinds import NotRead, design
from helpers.exercises.session import Outcome, Session
from helpers.exercises.settings import Settings
from helpers.exercises.store import DiskStore
from helpers.exercises.wording import Line, feedback_lines, question_lines
from helpers.pages.pictures import draw_picture
from helpers.pages.progress import progress_lines
from helpers.pages.questions import predictions_page
from helpers.physics.circuits import CIRCUITS
from helpers.widgets.card import ANSWERED_ELSEWHERE
from helpers.widgets.live import KEPT, SETTINGS_CHANGED_ELSEWHERE

OF_EACH_KIND = ONE_OF_EACH_KIND | {"predict": "ohm-predict", "danger item": "start-2"}
NOT_BUILT = {f"{design.NOT_BUILT}: {why}": key for key, why in design.REASONS.items()}
TELLS = {said: key for key, said in design.TELLS.items()}
CELLS = [*OF_EACH_KIND.values(), "found", "progress"]
LESSON, SET_UP = "02", "from helpers import *\n\nopen_lesson({})"
FIRST = Settings("BENCH-02", "wick", "230 V 50 Hz")
PAGES = {"first": "first.ipynb", "second tab": "first.ipynb", "other kernel": "other.ipynb"}
SETTLED_SECONDS = 60.0  # a busy machine takes that long to restore a page
PICTURE_IN_WORDS = Line("folded", "The picture in words:")
GAVE_WAY = "the copy stands where controls should live"
SEEN = """() => {
  const text = node => node && node.offsetParent ? node.innerText : '';
  const lines = page => page ? [...page.children].filter(n => n.nodeName !== 'svg').map(text)
    .join(' ') : '';
  return Object.fromEntries(window.jupyterapp.shell.currentWidget.content.widgets
    .filter(cell => cell.model.type === 'code').map(cell => {
      const node = cell.node, outputs = node.querySelector('.jp-Cell-outputArea');
      const box = [...node.querySelectorAll('.cw-controls')].find(box => box.offsetParent);
      const of = name => box ? [...box.querySelectorAll(name)].filter(n => n.offsetParent) : [];
      const svg = of('.cw-page')[0] && of('.cw-page')[0].querySelector('svg');
      return [cell.model.id, {
        all: text(outputs), twin: lines(node.querySelector('.cw-twin')), live: !!box,
        asked: of('.cw-page').map(lines)[0] || '', told: of('.cw-told').map(text)[0] || '',
        picture: svg ? svg.getAttribute('aria-label') || svg.querySelector('title').textContent
          : '',
        typed: of('input[type=text]').map(n => n.value),
        marked: of('input[type=radio], input[type=checkbox]').map(n => n.checked),
        labels: of('.cw-form label, .cw-form li span').map(text),
        placed: of('.cw-form .cw-placed').map(n => n.value),
        lists: of('select').map(n => ({options: [...n.options].map(o => o.text),
          chosen: n.selectedIndex < 0 ? '' : n.options[n.selectedIndex].text})),
        inputs: [...outputs.querySelectorAll('input, select, button')]
          .filter(n => n.offsetParent).length,
        error: outputs.innerText.includes('Click to show javascript error')}];
    }));
}"""


def plain(text):
    """Return a text without marks of code and with single blanks."""
    return " ".join(text.replace("`", "").split())


def joined(lines):
    """Return the text of lines as it is seen: of what is folded, its head."""
    said, folded = [], False
    for line in lines:
        folded = line.role == "folded" or (folded and line.role in ("within", "code"))
        if line.role == "folded":
            said.append(f"{line.text.partition(':')[0]}:")
        elif not folded:
            said.append(line.text)
    return plain(" ".join(said))


def write_notebook(path):
    """Write a notebook with a card of each kind, progress, predictions and a cell for code."""
    sources = {"set-up": SET_UP.format(f'"{LESSON}"'), "code": ""}
    sources |= {"form": "settings_form()"}
    sources |= {question_id: f'card("{question_id}")' for question_id in OF_EACH_KIND.values()}
    sources |= {"found": f'predictions("{LESSON}")', "progress": f'progress("{LESSON}")'}
    cells = [
        {"cell_type": "code", "id": cell_id, "metadata": {}, "source": source,
         "execution_count": None, "outputs": []}
        for cell_id, source in sources.items()
    ]  # fmt: skip
    kernel = {"display_name": "Python 3", "language": "python", "name": "python3"}
    notebook = {"cells": cells, "metadata": {"kernelspec": kernel}}
    path.write_text(json.dumps(notebook | {"nbformat": 4, "nbformat_minor": 5}))


def without_windowing_or_autosave(folder):
    """Let JupyterLab draw all cells at once, and save only when told."""
    for name, kept in {
        "notebook-extension/tracker": {"windowingMode": "none"},
        "docmanager-extension/plugin": {"autosave": False},
    }.items():
        path = folder / "jupyterlab_settings_dir" / "@jupyterlab" / f"{name}.jupyterlab-settings"
        path.parent.mkdir(parents=True)
        path.write_text(json.dumps(kept))


class Walk:
    """One random walk.

    Parameters
    ----------
    seed : int
        The same steps each time.
    folder : Path
        Of the served lab.
    address : str
        Of the lab, as `lab.lab` yields it.
    context : BrowserContext
        Where its tabs are opened.
    """

    def __init__(self, seed, folder, address, context):
        self.random = random.Random(seed)
        self.answers, self.work = folder / "answers", folder / "work"
        self.address, self.context = address, context
        self.pages, self.drawn, self.saved = {}, {}, {}
        self.kernels = {
            file: SimpleNamespace(life=0, runs=0, opened=None, fresh={}, nudges={}, shown={})
            for file in PAGES.values()
        }
        self.since = time.strftime("%Y-%m-%d %H:%M")
        self.lost = []
        self.true_once, self.differences, self.steps, self.taken = {}, [], [], Counter()

    # --- what is known

    def settings(self):
        return Settings(**json.loads((self.answers / "settings.json").read_text()))

    def session(self):
        """Return the open learner's session, read from the disk just now."""
        settings = self.settings()
        return Session(settings, DiskStore(self.answers))

    def kernel(self, name):
        return self.kernels[PAGES[name]]

    def lives(self, name):
        """Whether what this page shows was drawn by the kernel that runs now."""
        kernel, drawn = self.kernel(name), self.drawn.get(name)
        return bool(drawn) and drawn[0] == kernel.life and drawn[1] > kernel.runs - KEPT

    def number(self, session, kernel, question_id):
        return max(session.newest_draw(question_id), kernel.fresh.get(question_id, 0))

    # --- what should be seen

    def expected(self, session, kernel, question_id):
        """Return the draw and all texts that its feedback may have."""
        question, number = bank()[question_id], self.number(session, kernel, question_id)
        draw = session.draw(question_id, number)
        nudges = question.nudges[: max(kernel.nudges.get((question_id, number), 0), draw.nudges)]
        outcomes = [Outcome(*draw.last) if draw.last else None]
        if (shown := kernel.shown.get((question_id, number))) is not None:
            outcomes.append(shown)
        told = {
            joined(feedback_lines(question, draw, number, outcome, nudges)): outcome
            for outcome in outcomes
        }
        return number, draw, told

    def asked(self, question, numbers, number):
        lines = [
            line
            for line in question_lines(question, numbers, number)
            if line.role not in ("hint", "option")
        ]
        if question.picture:
            lines.insert(3, PICTURE_IN_WORDS)
        return joined(lines)

    def faults_of_card(self, session, kernel, question_id, seen):
        question = bank()[question_id]
        number, draw, told = self.expected(session, kernel, question_id)
        faults = []
        if plain(seen["asked"]) != self.asked(question, draw.numbers, number):
            faults.append(f"asked {plain(seen['asked'])!r}")
        if question.picture:
            svg, _ = draw_picture(question.picture(draw.numbers))
            if f">{seen['picture']}<" not in svg and f'"{seen["picture"]}"' not in svg:
                faults.append(f"picture {seen['picture']!r}")
        if offered(question, seen) != wanted(question, draw.numbers):
            faults.append(f"offered {offered(question, seen)}")
        if plain(seen["told"]) not in told:
            faults.append(f"told {plain(seen['told'])!r} and not {list(told)}")
        elif (outcome := told[plain(seen["told"])]) and outcome.answer:
            with suppress(NotRead):
                if question.kind.read(held(question, seen), draw.numbers) == outcome.answer:
                    return faults
            faults.append(f"holds {held(question, seen)!r} under {plain(seen['told'])!r}")
        return faults

    def truths(self, session, kernel):
        """Return what each cell says by the log, as its saved copy words it."""
        said = {}
        for question_id in OF_EACH_KIND.values():
            question = bank()[question_id]
            number, draw, told = self.expected(session, kernel, question_id)
            lines = question_lines(question, draw.numbers, number)
            if question.picture:
                lines.insert(3, PICTURE_IN_WORDS)
            said[question_id] = {f"{joined(lines)} {text}" for text in told}
        said["found"] = {joined(predictions_page(session, LESSON).lines)}
        said["progress"] = {joined(progress_lines(session, LESSON))}
        return said

    def faults(self, name, session):
        """Return how what can be seen on a page differs from what is true."""
        seen, kernel = self.pages[name].evaluate(SEEN), self.kernel(name)
        knows = kernel.opened == session.settings
        truths = self.truths(session, kernel) if knows else dict.fromkeys(CELLS)
        faults = []
        for cell_id, said in truths.items():
            cell = seen[cell_id]
            if cell["error"]:
                found = ["a javascript error"]
            elif name not in self.drawn or self.drawn[name] is None:
                found = [f"shows {cell['all']!r}"] if cell["all"].strip() else []
            elif not self.lives(name):
                found = self.faults_of_copy(cell_id, cell)
            elif not knows:
                closed = plain(cell["all"]) == plain(SETTINGS_CHANGED_ELSEWHERE)
                found = [] if closed and not cell["inputs"] else [f"closed, {cell['all']!r}"]
            elif not cell["live"] and not self.faults_of_copy(cell_id, cell):
                found = [GAVE_WAY]
            elif not cell["live"] or cell["twin"].strip():
                found = [f"does not live alone: {cell['all']!r}"]
            elif cell_id in bank():
                found = self.faults_of_card(session, kernel, cell_id, cell)
            else:
                found = [] if plain(cell["asked"]) in said else [f"says {cell['asked']!r}"]
            faults += [f"{name}, {cell_id}: {fault}" for fault in found]
        return faults

    def faults_of_copy(self, cell_id, cell):
        """A saved copy stands alone, without controls, and says of which true moment it is."""
        said = plain(cell["twin"])
        read = re.match(r"Saved copy of (\S+), (\S+)\. Later .*? then this one\. (.*)", said)
        if not read or cell["inputs"] or cell["live"]:
            return [f"no saved copy: {cell['all']!r}, {cell['inputs']} inputs"]
        first = self.true_once.get((cell_id, read[3]))
        if not first or f"{read[1]} {read[2]}" < first:
            return [f"a copy that was not true then: {said!r}"]
        return []

    def compare(self, step):
        """Wait until all pages are right; keep what is still wrong after a while.

        A busy browser may give up on restoring the controls of a page. Then their copies stand
        there alone, which is no lie; that is counted, and the page is loaded once more, and again
        if that was in the same busy moment.
        """
        session = self.session()
        for kernel in self.kernels.values():
            if kernel.opened == session.settings:
                for cell_id, texts in self.truths(session, kernel).items():
                    for text in texts:
                        self.true_once.setdefault((cell_id, text), self.since)
        self.since = time.strftime("%Y-%m-%d %H:%M")
        faults = self.settled(session)
        if gone := {fault.split(",")[0] for fault in faults if fault.endswith(GAVE_WAY)}:
            self.lost.append(f"step {len(self.steps)}, {step}: {', '.join(sorted(gone))}")
        for _ in range(2):
            for name in {fault.split(",")[0] for fault in faults if fault.endswith(GAVE_WAY)}:
                self.load(name)
                faults = self.settled(session)
        self.differences += [f"step {len(self.steps)}, {step}: {fault}" for fault in faults]
        return faults

    def settled(self, session):
        """Return what is wrong on any page once all is still."""
        end, faults = time.monotonic() + SETTLED_SECONDS, ["not looked"]
        while faults and time.monotonic() < end:
            faults = [fault for name in self.pages for fault in self.faults(name, session)]
            if faults:
                time.sleep(0.1)
        return faults

    # --- steps

    def step(self):
        """Take one step that is possible, and compare; return the differences found."""
        taken, tried = None, 0
        while taken is None:
            action = self.random.choices(list(WEIGHTS), list(WEIGHTS.values()))[0]
            never = [name for name in WEIGHTS if not self.taken[name]]
            if never and len(self.steps) % 2 and tried < 20:  # so a short walk meets them all
                action = never[0]
            page = self.random.choice(list(self.pages))
            question_id = self.random.choice(list(OF_EACH_KIND.values()))
            taken, tried = getattr(self, f"do_{action}")(page, question_id), tried + 1
        self.taken[action] += 1
        self.steps.append(f"{action}, {page}, {taken}")
        return self.compare(self.steps[-1])

    def open(self, name):
        page = self.pages[name] = self.context.new_page()
        page.on("dialog", lambda dialog: dialog.accept())
        self.load(name)

    def load(self, name):
        self.pages[name].goto(self.address.format(name=PAGES[name]))
        self.pages[name].wait_for_function(lab.IDLE, timeout=60_000)
        self.drawn[name] = self.saved.get(PAGES[name])

    def answerable(self, name):
        return self.lives(name) and self.kernel(name).opened == self.settings()

    def do_check(self, name, question_id):
        """Answer in the card: right, wrong, what cannot be read, or nothing new."""
        if not self.answerable(name):
            return None
        question, session, kernel = bank()[question_id], self.session(), self.kernel(name)
        number = self.number(session, kernel, question_id)
        typed = self.some_answer(session, question_id, number)
        card = self.pages[name].locator(f".cw-c-{question_id}")
        fill(card, question, typed)
        card.get_by_role("button", name="Check", exact=True).click()
        self.note_answer(session, kernel, question_id, number, typed, shows_unread=True)
        return f"{question_id} draw {number}: {typed!r}"

    def some_answer(self, session, question_id, number):
        question = bank()[question_id]
        if question.role == "predict":
            return self.random.choice("abc")
        if question.kind.name == "quantity" and self.random.random() < 0.15:
            return "some"
        right = right_answer(session, question_id, number)
        wrong = wrong_answers(session, question_id, number)
        return self.random.choice([right, *(typed for typed in wrong if "\n" not in typed)])

    def note_answer(self, before, kernel, question_id, number, typed, shows_unread=False):
        """Remember what the newest answer showed, once the log has it; only a new one travels."""
        question = bank()[question_id]
        earlier = before.draw(question_id, number).tried
        end = time.monotonic() + SETTLED_SECONDS
        while time.monotonic() < end:
            draw = self.session().draw(question_id, number)
            try:
                answer = question.kind.read(typed, draw.numbers)
            except NotRead as error:
                if shows_unread:
                    kernel.shown[question_id, number] = Outcome(problem=str(error))
                return
            if answer.given in draw.tried:
                for each in self.kernels.values():
                    if answer.given not in earlier:
                        each.shown.pop((question_id, number), None)
                kernel.shown[question_id, number] = Outcome(*draw.tried[answer.given])
                return
            time.sleep(0.05)
        self.differences.append(f"{question_id}: {typed!r} did not reach the log")

    def do_nudge(self, name, question_id):
        question, kernel = bank()[question_id], self.kernel(name)
        button = (
            self.pages[name]
            .locator(f".cw-c-{question_id}")
            .get_by_role("button", name="Nudge", exact=True)
        )
        if question.role == "predict" or not self.answerable(name) or button.is_disabled():
            return None
        number = self.number(self.session(), kernel, question_id)
        draw = self.session().draw(question_id, number)
        button.click()
        seen = max(kernel.nudges.get((question_id, number), 0), draw.nudges)
        kernel.nudges[question_id, number] = seen + 1
        return question_id

    def do_fresh(self, name, question_id):
        kernel, session = self.kernel(name), self.session()
        card = self.pages[name].locator(f".cw-c-{question_id}")
        button = card.get_by_role("button", name=re.compile("Fresh numbers|Another case"))
        if not self.answerable(name) or not button.is_visible():
            return None
        kernel.fresh[question_id] = self.number(session, kernel, question_id) + 1
        button.click()
        return question_id

    def do_code(self, name, question_id):
        """Answer the draw on the card by code, in the same kernel."""
        if not self.answerable(name) or name == "second tab":
            return None
        session, kernel = self.session(), self.kernel(name)
        number = self.number(session, kernel, question_id)
        typed = self.some_answer(session, question_id, number)
        self.run_cell(name, "code", f'answer("{question_id}", "{typed}", draw={number})')
        self.note_answer(session, kernel, question_id, number, typed)
        return f"{question_id} draw {number}: {typed!r}"

    def run_cell(self, name, cell_id, source):
        self.pages[name].evaluate(
            """([id, source]) => {
            const content = window.jupyterapp.shell.currentWidget.content;
            content.activeCellIndex = content.widgets.findIndex(cell => cell.model.id === id);
            const model = content.activeCell.model.sharedModel, before = model.getSource();
            model.setSource(source);
            return window.jupyterapp.commands.execute('notebook:run-cell')
              .then(() => model.setSource(before)); }""",
            [cell_id, source],
        )

    def do_race(self, name, question_id):
        """Fill a card, let the other kernel answer, and press Check at once."""
        other = "first" if name == "other kernel" else "other kernel"
        if not self.answerable(name) or not self.answerable(other):
            return None
        question, session, kernel = bank()[question_id], self.session(), self.kernel(name)
        number = self.number(session, kernel, question_id)
        mine, theirs = (self.some_answer(session, question_id, number) for _ in range(2))
        try:
            value = question.kind.read(theirs, session.draw(question_id, number).numbers).value
        except NotRead:
            return None
        if value in session.draw(question_id, number).tried:
            return None
        card = self.pages[name].locator(f".cw-c-{question_id}")
        fill(card, question, mine)
        self.run_cell(other, "code", f'answer("{question_id}", "{theirs}", draw={number})')
        card.get_by_role("button", name="Check", exact=True).click()
        self.note_answer(session, self.kernel(other), question_id, number, theirs)
        overtaken = Outcome(*self.session().draw(question_id, number).last)
        kernel.shown[question_id, number] = replace(overtaken, problem=ANSWERED_ELSEWHERE)
        time.sleep(1)
        if len(self.session().draw(question_id, number).tried) != 1 + len(
            session.draw(question_id, number).tried
        ):
            self.differences.append(f"{question_id}: {mine!r} was marked unseen after {theirs!r}")
        return f"{question_id} draw {number}: {theirs!r} before {mine!r}"

    def do_form(self, name, _):
        """Change the supply in the form."""
        if not self.answerable(name):
            return None
        form, before = self.pages[name].locator(".cw-settings"), self.settings()
        supply = self.random.choice(("100 V 50 Hz", "127 V 60 Hz", "230 V 50 Hz"))
        form.locator("select").select_option(label=supply)
        form.get_by_role("button", name="Save").click()
        form.get_by_text(f"Saved: supply {supply}").wait_for()
        if before != self.settings():
            self.settings_changed(self.kernel(name))
        return supply

    def do_reload(self, name, _):
        self.load(name)
        return "done"

    def do_save(self, name, _):
        if name == "second tab":
            return None
        page = self.pages[name]
        lab.save(page)
        self.saved[PAGES[name]] = self.drawn[name]
        return "done"

    def do_reopen(self, name, _):
        if not self.do_save(name, _):
            return None
        self.pages[name].close()
        self.open(name)
        return "done"

    def do_run_again(self, name, _):
        if name == "second tab":  # it would save over the first tab's notebook
            return None
        kernel = self.kernel(name)
        lab.run_all(self.pages[name])
        kernel.runs += 1
        self.opened(kernel)
        self.drawn[name] = kernel.life, kernel.runs
        return "done"

    def opened(self, kernel):
        if kernel.opened != self.settings():
            kernel.nudges, kernel.shown, kernel.fresh = {}, {}, {}
        kernel.opened = self.settings()

    def settings_changed(self, by):
        """Remember that one kernel goes on with other settings, and all others stand still."""
        self.opened(by)
        for kernel in self.kernels.values():
            if kernel.opened != self.settings():
                kernel.fresh = {}

    def do_restart(self, name, _):
        if name == "second tab":
            return None
        lab.restart_kernel(self.pages[name])
        kernel = self.kernel(name)
        kernel.life, kernel.opened = kernel.life + 1, None
        kernel.fresh, kernel.nudges, kernel.shown = {}, {}, {}
        return "done"

    def do_settings(self, name, _):
        """Change one of the settings by code."""
        if name == "second tab" or not self.lives(name):
            return None
        changes = {
            "learner": ("BENCH-02", "BENCH-03"),
            "class_word": ("wick", "tallow"),
            "supply": ("120 V 60 Hz", "230 V 50 Hz", "240 V 50 Hz"),
        }
        setting = self.random.choice(list(changes))
        value = self.random.choice(changes[setting])
        self.run_cell(name, "code", f'open_lesson("{LESSON}", {setting}="{value}")')
        self.settings_changed(self.kernel(name))
        return f"{setting} {value}"


WEIGHTS = {
    "check": 40,
    "nudge": 8,
    "fresh": 25,
    "code": 8,
    "race": 5,
    "reload": 6,
    "save": 5,
    "reopen": 3,
    "run_again": 5,
    "restart": 2,
    "settings": 3,
    "form": 3,
}


def held(question, seen):
    """Return the answer that visible controls hold, as one would type it."""
    if question.kind.name == "quantity":
        return " ".join(seen["typed"])
    if question.kind.name in ("choice", "choose-all"):
        letters = [label[0] for label in seen["labels"]]
        marked = [at for at, on in zip(letters, seen["marked"], strict=True) if on]
        if question.kind.name == "choose-all" and seen["marked"][-1:] == [True]:
            return "none"
        return ", ".join(marked)
    if question.kind.name == "order":
        return ", ".join(seen["placed"])
    if question.kind.name == "design":
        first, last = (plain(each["chosen"]) for each in seen["lists"])
        if first in NOT_BUILT:
            return f"{design.NOT_BUILT}; {NOT_BUILT[first]}"
        return "; ".join([first, *seen["typed"], TELLS.get(last, "")])
    return question.kind.between.join(each["chosen"] for each in seen["lists"])


def offered(question, seen):
    """Return what visible controls offer to choose from."""
    if question.kind.name == "order":
        return sorted(map(plain, seen["labels"]))
    if question.kind.name in ("choice", "choose-all"):
        return [plain(label) for label in seen["labels"]]
    return [[plain(text) for text in each["options"]] for each in seen["lists"]]


def wanted(question, numbers):
    """Return what the controls should offer in a draw."""
    kind = question.kind
    if kind.name in ("parts", "bands"):
        return [["choose …", *(plain(f.text(v)) for v in f.bin)] for f in kind.fields]
    if kind.name == "quantity":
        return []
    if kind.name == "design":
        named = [name.replace("_", " ") for name in CIRCUITS]
        return [["choose …", *named, *NOT_BUILT], ["choose …", *TELLS]]
    texts = [plain(f"{letter}) {option.text}") for letter, option in kind.shown(numbers).items()]
    return [*texts, "none of them"] if kind.name == "choose-all" else texts


def fill(card, question, typed):
    """Enter an answer as with the mouse, whatever the controls held before."""
    kind = question.kind.name
    if kind == "quantity":
        card.get_by_role("textbox").fill(typed)
    elif kind == "choice":
        card.get_by_role("radio").nth("abcdefgh".index(typed)).check()
    elif kind == "choose-all":
        boxes = card.get_by_role("checkbox")
        count = boxes.count()
        for place in range(count):
            wanted_on = typed == "none" if place == count - 1 else "abcdefgh"[place] in typed
            boxes.nth(place).set_checked(wanted_on and not (typed == "none" and place < count - 1))
    elif kind == "order":
        put_in_order(card, typed.split(", "))
    elif kind == "design":
        first, *texts = typed.split("; ")
        if first == design.NOT_BUILT:
            first, texts = next(said for said, key in NOT_BUILT.items() if key == texts[0]), []
        else:
            texts[-1] = design.TELLS[texts[-1]]
        card.locator("select").first.select_option(label=first.replace("_", " "))
        if texts:
            card.locator("select").last.select_option(label=texts.pop())
        for box, text in zip(card.get_by_role("textbox").all(), texts, strict=False):
            box.fill(text)
    else:
        for box, value in enumerate(typed.split(question.kind.between)):
            card.locator("select").nth(box).select_option(label=value)


def put_in_order(card, letters):
    """Take all steps back, then press them in their order."""
    for _ in range(card.locator(".cw-placed").count()):
        card.locator(".cw-placed").first.click()
    for letter in letters:
        card.locator(f'.cw-form button[value="{letter}"]').click()


@contextmanager
def walk(seed, folder):
    """Serve a lab and yield a walk whose three pages are open and run."""
    folder = Path(folder)
    without_windowing_or_autosave(folder)
    with lab.lab(folder) as address, lab.chromium() as page:
        (folder / "answers").mkdir()
        (folder / "answers" / "settings.json").write_text(json.dumps(asdict(FIRST)))
        for file in set(PAGES.values()):
            write_notebook(folder / "work" / file)
        context = page.context.browser.new_context(viewport={"width": 1200, "height": 1000})
        started = Walk(seed, folder, address, context)
        for name in ("first", "other kernel"):
            started.open(name)
            started.do_run_again(name, None)
            started.do_save(name, None)
        started.open("second tab")
        yield started
