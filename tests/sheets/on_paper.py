"""What stands on a printed pack, read from its markup by somebody who knows nothing of the code."""

from html.parser import HTMLParser

VOID = {"meta", "link", "br", "img"}


class Reader(HTMLParser):
    """Collects each question of a pack: its text by the class of the element that holds it."""

    def __init__(self):
        super().__init__()
        self.questions, self._open = [], []

    def handle_starttag(self, tag, attrs):
        if tag in VOID:
            return
        name = dict(attrs).get("class") or ""
        if tag == "article":
            self.questions.append({"places": [], "option": [], "ask": [], "hint": [], "line": [],
                                   "title": [], "about": [], "ticked": False})  # fmt: skip
        held = self._open[-1][1] if self._open else ""
        for word in name.split():
            if word == "cw-ticked":
                self.questions[-1]["ticked"] = True
            held = {"cw-options": "option", "places": "places"}.get(
                word, word.removeprefix("cw-") if word in CLASSES else held
            )
        if tag == "li" and held in ("option", "places") and self.questions:
            self.questions[-1][held].append("")
        if tag == "p" and held in ("ask", "hint", "line", "title", "about"):
            self.questions[-1][held].append("")
        if tag == "h3":
            self.questions[-1]["title"].append("")
        self._open.append((tag, held))

    def handle_endtag(self, tag):
        while self._open and self._open.pop()[0] != tag:
            pass

    def handle_data(self, data):
        if self._open and (held := self._open[-1][1]) and self.questions:
            place = self.questions[-1][held]
            if place:
                place[-1] += data


CLASSES = {"cw-ask", "cw-hint", "cw-title", "cw-about", "line"}


def read(pieces):
    """Return the questions of a document, in order, each a dict of lists of text."""
    reader = Reader()
    reader.feed("".join(pieces))
    return [
        {
            name: [" ".join(text.split()) for text in held] if isinstance(held, list) else held
            for name, held in question.items()
        }
        for question in reader.questions
    ]
