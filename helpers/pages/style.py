"""The style sheet of all pages, and of the controls that stand among them, from `style.css`."""

from pathlib import Path

STYLE = f"<style>\n{Path(__file__).with_suffix('.css').read_text(encoding='utf-8')}</style>"
