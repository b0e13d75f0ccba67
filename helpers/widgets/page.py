"""Lines of text as a cell's output, in plain text and in HTML, that outlives every control.

Escapes all that it is given. Knows no question.
"""

from html import escape
from itertools import groupby

import ipywidgets as widgets
from IPython.display import display

from helpers.exercises.wording import Line

ANSWER_MEDIA_TYPE = "application/vnd.candle-workshop.answer+json"

STYLE = """<style>
.cw-page {max-width: 46rem; line-height: 1.45; padding: .2rem 0 .2rem 6px;}
.cw-controls {margin-left: 4px;}
.cw-page p {margin: .3rem 0;}
.cw-heading {font-weight: 600; opacity: .8;}
.cw-page ul.cw-options {list-style: none; margin: .2rem 0; padding-left: 1rem;}
.cw-hint {opacity: .8;}
.cw-folded {margin: .3rem 0;}
.cw-folded summary {cursor: pointer;}
.cw-danger {border: 2px solid currentColor; border-left-width: 10px; padding: .3rem .6rem;
  font-weight: 600;}
.cw-verdict {border-left: 6px solid currentColor; padding-left: .6rem;}
.cw-working, .cw-code {border-left: 2px dotted currentColor; padding-left: .6rem;}
.cw-controls .widget-radio-box label, .cw-controls .widget-checkbox label {white-space: normal;
  height: auto; line-height: 1.4; padding: .15rem 0;}
.cw-controls .widget-radio-box label {display: flex; flex-direction: row-reverse;
  justify-content: flex-end; align-items: flex-start; gap: .5rem;}
.cw-controls .widget-radio-box label input {flex: none; float: none; margin: 0;}
.cw-controls .widget-radio-box, .cw-controls .widget-radio, .cw-controls .widget-checkbox {
  width: auto; max-width: 46rem; height: auto;}
.cw-controls .widget-checkbox .widget-label-basic {width: auto; height: auto; align-items: start;}
.cw-controls :focus-visible {outline: 3px solid currentColor; outline-offset: 2px;}
.cw-controls .widget-html-content {line-height: 1.45; font-size: var(--jp-content-font-size1);}
.cw-controls code {background: var(--jp-layout-color2); padding: 1px 5px;}
.cw-told {margin-top: .3rem;}
.cw-controls .cw-options {display: none;}
@media (max-width: 60rem) {.cw-order .cw-options {display: block;}}
.jp-OutputArea:has(.cw-page) .jp-OutputArea-output.jupyter-widgets:not(:has(*)) {
  display: none;}
.cw-controls .widget-dropdown select {max-width: 24rem;}
.cw-controls .widget-select {height: auto;}
.cw-controls .widget-select select {width: 100%; max-width: none; height: auto; flex: none;}
</style>"""


# The box remembers what had the focus in it, for `SPOKEN`.
_FOCUS = (
    "const box = this.closest('.cw-controls');"
    " box.addEventListener('focusin', event => { box.cwFocus = event.target;"
    " event.target.setAttribute('data-lm-suppress-shortcuts', 'true'); });"
    " box.addEventListener('focusout', event => {"
    " if (event.relatedTarget && !box.contains(event.relatedTarget)) box.cwFocus = null; })"
)
# ipywidgets can set no attributes of a node, and replaces what is inside; so what is inside, on
# arriving, makes the node around it a live region, which is read out when it changes. If what had
# the focus has gone meanwhile, the first control of the box gets it.
SPOKEN = (
    "<style onload=\"this.parentNode.setAttribute('aria-live', 'assertive');"
    " this.parentNode.setAttribute('aria-atomic', 'true');"
    " const box = this.closest('.cw-controls'); setTimeout(() => { const was = box.cwFocus;"
    " if (was && (!was.isConnected || was.disabled || !was.offsetParent)"
    " && !box.contains(document.activeElement))"
    " box.querySelector('input, select, button:enabled').focus(); }, 150)\"></style>"
)


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
        parts, drawn = [], not self.picture
        for role, group in groupby(self.lines, key=lambda line: line.role):
            if not drawn and role in ("folded", "option", "hint"):
                parts.append(self.picture)
                drawn = True
            texts = [_inline(line.text) for line in group]
            if role == "option":
                items = "".join(f"<li>{text}</li>" for text in texts)
                parts.append(f'<ul class="cw-options">{items}</ul>')
            elif role == "folded":
                parts += [_folded(text) for text in texts]
            elif role == "code":
                parts += [f'<pre class="cw-code"><code>{text}</code></pre>' for text in texts]
            else:
                parts += [f'<p class="cw-{role}">{text}</p>' for text in texts]
        if not drawn:
            parts.append(self.picture)
        inside = "\n".join(parts)
        return f'{self.extra_html}<div class="cw-page {self.name}">\n{inside}\n</div>'

    def _repr_mimebundle_(self, include=None, exclude=None):
        bundle = {"text/plain": self.plain(), "text/html": self.html()}
        if self.data is not None:
            bundle[ANSWER_MEDIA_TYPE] = self.data
        return bundle


def _folded(text):
    """Fold what follows the first colon; the focus keeps its keys, as in `frame`."""
    head, colon, rest = text.partition(":")
    summary = f'<summary data-lm-suppress-shortcuts="true">{head}{colon}</summary>'
    return f'<details class="cw-folded">{summary}{rest}</details>'


def _inline(text):
    """Escape a line; what stands between backticks becomes code."""
    pieces = escape(text).split("`")
    if len(pieces) % 2 == 0:
        return escape(text)
    return "".join(f"<code>{p}</code>" if i % 2 else p for i, p in enumerate(pieces))


def show(page):
    """Display a page and return the handle that can update it in place, also from a button."""
    return display(page, display_id=True)


def frame(children, *names, twin=""):
    """Return controls in a box of ours.

    Parameters
    ----------
    children : sequence of Widget
        The controls, in the order of the Tab key.
    *names : str
        Classes of the box.
    twin : str
        Class of the saved copy beside it, hidden while the box lives. A box that has lost its
        kernel, or a part on the way to the page, is hidden in its turn.

    Notes
    -----
    Inside the box the notebook's own one-letter shortcuts rest, so that an arrow key or a letter
    pressed in a list does not move, add or delete a cell.
    """
    box = widgets.VBox(children)
    for name in ("cw-controls", *names):
        box.add_class(name)
    dead, broken = ":is(.jupyter-widgets-disconnected, .cw-lost)", ".jupyter-widgets-error-widget"
    rules = f".cw-controls{dead}, .cw-controls:has({broken}) {{display: none}}"
    if twin:
        own = f".{names[0]}"
        alive = f":has({own}:not({dead}) > :nth-child(3)):not(:has({own} {broken}))"
        rules += f" .jp-OutputArea{alive} .{twin} {{display: none}}"
    box.children = [*children, widgets.HTML(f'<style onload="{_FOCUS}">{rules}</style>')]
    return box


def show_controls(box, note="The controls appear when this cell is run."):
    """Display a frame; where it cannot live, a plain sentence stands in its place."""
    bundle = box._repr_mimebundle_()
    bundle = bundle[0] if isinstance(bundle, tuple) else bundle
    bundle["text/plain"] = note
    display(bundle, raw=True)


def picture(drawing, alternative):
    """Show a picture, with the words that say what it shows under it.

    Parameters
    ----------
    drawing : str or matplotlib.figure.Figure
        Inline SVG, or a figure; from `helpers.figures`, like the words.
    alternative : str
        What it shows, with its numbers; also for who cannot see it.

    Notes
    -----
    A figure becomes an image of its own beside the words: kept within HTML it would be compared
    byte for byte wherever stored outputs are.
    """
    if isinstance(drawing, str):
        show(Page([Line("hint", alternative)], drawing))
        return
    from helpers.figures import style

    pixels = {"width": round(style.WIDTH * style.DOTS_PER_INCH)}
    bundle = {"image/png": style.png(drawing), "text/plain": alternative}
    display(bundle, metadata={"image/png": pixels}, raw=True)
    show(Page([Line("hint", alternative)]))
