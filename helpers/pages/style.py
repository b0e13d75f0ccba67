"""The style sheets of all pages, on the screen and on paper, and of the controls among them."""

from pathlib import Path

_SHEETS = map(Path(__file__).with_name, ("style.css", "print.css"))
STYLE = "".join(f"<style>\n{sheet.read_text(encoding='utf-8')}</style>" for sheet in _SHEETS)
