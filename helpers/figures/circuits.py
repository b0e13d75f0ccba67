"""Circuit drawings in the symbols of IEC 60617, as SVG that is the same at every run."""

from html import escape

from helpers.quantities import write


def bench_dropper(volts, ohms, led_volts):
    """Draw an LED and its dropper on a bench supply, with values.

    Parameters
    ----------
    volts : float
        Setting of the supply [V].
    ohms : float
        The dropper [ohm].
    led_volts : float
        The LED's own drop [V].

    Returns
    -------
    svg : str
        Drawing with a title for screen readers.
    alternative : str
        What the drawing shows, in words.

    References
    ----------
    Symbols: IEC 60617.

    Examples
    --------
    >>> bench_dropper(12.0, 1000.0, 2.0)[1].replace("\\xa0", " ")
    'Circuit: a 12 V DC bench supply, a dropper of 1 kΩ and an LED (2 V) in one loop.'
    """
    supply, dropper, led = (
        write(volts, "voltage"), write(ohms, "resistance"), write(led_volts, "voltage")
    )  # fmt: skip
    alternative = (
        f"Circuit: a {supply} DC bench supply, a dropper of {dropper} and an LED ({led}) "
        "in one loop."
    )
    elements, drawing = _blank()
    with drawing:
        drawing.add(elements.SourceV().up().label(f"bench supply\n{supply} DC"))
        drawing.add(elements.ResistorIEC().right().label(f"dropper R\n{dropper}"))
        drawing.add(elements.LED().down().label(f"LED\n{led}", loc="bottom"))
        drawing.add(elements.Line().left())
    return _titled(drawing, alternative), alternative


def _blank():
    import schemdraw
    import schemdraw.elements as elements

    schemdraw.use("svg")
    drawing = schemdraw.Drawing(show=False)
    drawing.config(unit=3.5, fontsize=13, lw=1.6, bgcolor="white", margin=0.3)
    return elements, drawing


def _titled(drawing, alternative):
    svg = drawing.get_imagedata("svg").decode("utf-8")
    start = svg.index(">")
    return f'{svg[:start]} role="img"><title>{escape(alternative)}</title>{svg[start + 1 :]}'
