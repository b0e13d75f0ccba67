"""Lines of text as a page, in plain text and in HTML, that outlives every control.

Escapes all that it is given. Knows no question.
"""

import re
from html import escape
from itertools import groupby

VERDICTS = ("right", "partly", "not-yet", "verdict", "danger", "caution", "nudge")
ANSWER_MEDIA_TYPE = "application/vnd.candle-workshop.answer+json"


class Page:
    """Lines as an output.

    Parameters
    ----------
    lines : sequence of Line
        What it says.
    picture : str
        Inline SVG from `helpers.figures`, already safe; goes before the first option or folded
        line, or last.
    extra_html : str
        Trusted markup to put in front, such as the style block.
    name : str
        Added to the class of the outer element, so that a card can find its own text.
    data : dict or None
        Kept with the output under our own media type; nothing dated or random.
    """

    def __init__(self, lines, picture="", extra_html="", name="", data=None):
        self.lines, self.picture = list(lines), picture
        self.extra_html, self.name, self.data = extra_html, name, data

    def plain(self):
        return "\n".join(line.text for line in self.lines)

    def html(self):
        parts, drawn, folded = [], not self.picture, False
        for role, group in groupby(self.lines, key=lambda line: line.role):
            if folded and role not in ("within", "code"):
                parts.append("</details>")
                folded = False
            if not drawn and role in ("folded", "option", "hint"):
                parts.append(self.picture)
                drawn = True
            texts = [_inline(line.text) for line in group]
            if role == "option":
                items = "".join(f"<li>{text}</li>" for text in texts)
                parts.append(f'<ul class="cw-options">{items}</ul>')
            elif role in ("folded", "working"):
                parts.append("\n</details>\n".join(_folded(role, text) for text in texts))
                folded = True
            elif role == "code":
                parts += [f'<pre class="cw-code"><code>{text}</code></pre>' for text in texts]
            else:
                parts += [_set(role, text) for text in texts]
        parts += ["</details>"] * folded
        if not drawn:
            parts.append(self.picture)
        inside = "\n".join(parts)
        return f'{self.extra_html}<div class="cw-page {self.name}">\n{inside}\n</div>'

    def _repr_mimebundle_(self, include=None, exclude=None):
        bundle = {"text/plain": self.plain(), "text/html": self.html()}
        if self.data is not None:
            bundle[ANSWER_MEDIA_TYPE] = self.data
        return bundle


def _folded(role, text):
    """Fold what follows the first colon; the focus keeps its keys, as in `frame`."""
    head, colon, rest = text.partition(":")
    summary = f'<summary data-lm-suppress-shortcuts="true">{head}{colon}</summary>'
    opened = ' open="open"' if role == "working" else ""
    return f'<details class="cw-{role}"{opened}>{summary}{rest}'


def _set(role, text):
    """Set a line; the first sentence of a verdict stands out, marks become pips."""
    if role in VERDICTS:
        text = re.sub(r"^[^<]*?[.:] ", r"<strong>\g<0></strong>", text)
    elif role == "about":
        text = re.sub(r"(\d) marks?$", r'<b data-pips="\1"><span>\g<0></span></b>', text)
    tag = "h3" if role == "title" else "p"
    return f'<{tag} class="cw-{role}">{text}</{tag}>'


def _inline(text):
    """Escape a line; what stands between backticks becomes code."""
    pieces = escape(text).split("`")
    if len(pieces) % 2 == 0:
        return escape(text)
    return "".join(f"<code>{p}</code>" if i % 2 else p for i, p in enumerate(pieces))
