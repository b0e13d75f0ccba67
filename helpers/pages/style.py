"""The style sheets of all pages, on the screen and on paper, and of the controls among them."""

from pathlib import Path

from helpers.figures.style import underlined

_SHEETS = map(Path(__file__).with_name, ("style.css", "print.css"))
_TEXTS = (underlined(), *(sheet.read_text(encoding="utf-8") for sheet in _SHEETS))
STYLE = "".join(f"<style>\n{text}</style>" for text in _TEXTS)
