"""The one way in which a page is made of a template: always escaped, nothing undefined, streamed.

Knows no content: what a page says is handed over as values. Jinja2 comes with JupyterLab, and is
imported when the first page is made, so that nothing else waits for it.
"""

from base64 import b64encode
from functools import cache
from hashlib import sha256
from pathlib import Path

from helpers.exercises.refusals import plain

FOLDER = Path(__file__).with_name("templates")
LONGEST = 600  # characters of one value; what is longer was not written for a page
PIECES = 500  # of a template, put together before they are handed on


def page(name, *more_styles, **values):
    """Yield a self-contained page piece by piece.

    Parameters
    ----------
    name : str
        Of the template `name.html` and its style `name.css`.
    *more_styles : str
        Names of further styles.
    **values
        What the template asks for. Text in it is data, wherever it came from: it is shown by
        `plain` and escaped.

    Returns
    -------
    pieces : iterator of str

    Raises
    ------
    jinja2.UndefinedError
        While the pieces are taken, where the template asks for what was not handed over.

    Notes
    -----
    The template gets `style`, and `policy`, which lets that style in and nothing else: no script,
    no picture, nothing from outside.

    References
    ----------
    Content Security Policy Level 2, hashes in style-src (from memory).
    """
    from markupsafe import Markup

    environment = _environment()
    source = environment.loader.get_source
    style = "".join(source(environment, f"{one}.css")[0] for one in (name, *more_styles))
    fingerprint = b64encode(sha256(style.encode()).digest()).decode()
    policy = f"default-src 'none'; style-src 'sha256-{fingerprint}'"
    policy += "; base-uri 'none'; form-action 'none'"
    template = environment.get_template(f"{name}.html")
    stream = template.stream(values, style=Markup(style), policy=policy)
    stream.enable_buffering(PIECES)
    return stream


def part(name, **values):
    """Return a part of a page, made of the template of that name, to be put into others."""
    from markupsafe import Markup

    return Markup(_environment().get_template(f"{name}.html").render(values))


def text(name, **values):
    """Return the plain text of the file of that name, with the values in its braces."""
    return (FOLDER / name).read_text("utf-8").format(**values)


def piece(markup, *values):
    """Return markup of ours with values put in for its braces, escaped: for what is made often.

    Examples
    --------
    >>> piece("<b>{}</b>", "<")
    Markup('<b>&lt;</b>')
    """
    from markupsafe import Markup

    return Markup(markup).format(*values)


@cache
def _environment():
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    return Environment(
        loader=FileSystemLoader(FOLDER),
        autoescape=True,
        undefined=StrictUndefined,
        finalize=_shown,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
    )


def _shown(value):
    """Show text whole; what a template has already made, and numbers, stand as they are.

    Between a number and its unit stands a blank that does not break.
    """
    return plain(value, LONGEST, "\u00a0") if type(value) is str else value
