"""The style sheets of all pages, on the screen and on paper, and of the controls among them."""

from pathlib import Path

SHEETS = [Path(__file__).with_name(f"{name}.css") for name in ("style", "print")]
STYLE = f"<style>\n{''.join(sheet.read_text(encoding='utf-8') for sheet in SHEETS)}</style>"
