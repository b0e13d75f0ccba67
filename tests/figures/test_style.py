"""The look that all pictures share: contrast, and a second signal."""

import re
import subprocess
import sys

import pytest

from helpers.figures import style


def contrast(colour, other="#ffffff"):
    """Contrast ratio as WCAG 2.2 defines it."""

    def luminance(text):
        parts = [int(text[i : i + 2], 16) / 255.0 for i in (1, 3, 5)]
        red, green, blue = (
            part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
        )
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue

    light, dark = sorted((luminance(colour), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("meaning", [m for m in style.LOOKS if style.LOOKS[m][0] != style.INK])
@pytest.mark.parametrize("face", ["#ffffff", "#111111"], ids=["light", "JupyterLab's dark"])
def test_every_line_stands_out_from_a_light_face_and_a_dark_one(meaning, face):
    # WCAG 2.2, success criterion 1.4.11: 3 to 1 for what a picture needs to be understood. Ink
    # is the page's own.
    assert contrast(style.LOOKS[meaning].colour, face) >= 3.0


def test_what_shares_a_picture_differs_in_dash():
    together = [
        ("mains", "volts", "held", "peak", "rms", "mean"),
        ("mains", "rms", "heat"),
        ("heat", "light", "eye"),
        ("led", "led peak", "led mean", "limit"),
        ("mains", "eye", "eye from afar", "eye by day"),
    ]
    for meanings in together:
        dashes = {str(style.LOOKS[meaning].dash) for meaning in meanings}
        assert len(dashes) == len(meanings)


def test_a_colour_has_one_meaning():
    looks = style.LOOKS
    same = {meaning: {name for name, look in looks.items() if look.colour == looks[meaning].colour}
            for meaning in ("volts", "led", "heat", "eye")}  # fmt: skip
    assert same == {
        "volts": {"volts", "peak", "rms", "mean"},
        "led": {"led", "light", "led peak", "led mean"},
        "heat": {"heat"},
        "eye": {"eye", "eye from afar", "eye by day"},
    }


@pytest.mark.parametrize("statistic", ["peak", "mean"])
def test_peak_and_mean_have_one_dash_in_volts_and_in_current(statistic):
    assert style.LOOKS[statistic].dash == style.LOOKS[f"led {statistic}"].dash


def test_a_word_is_underlined_with_the_dash_of_its_line():
    rules = dict(re.findall(r"\.cw-([\w-]+) \{(.*?)\}\n", style.underlined()))
    assert rules.keys() == {meaning.replace(" ", "-") for meaning in style.LOOKS}
    for meaning, look in style.LOOKS.items():
        rule = rules[meaning.replace(" ", "-")]
        ends = [float(end) for end in re.findall(r" ([\d.]+)px[,)]", rule)]
        drawn = look.dash or (1.0,)
        assert look.colour in rule and len(ends) == len(drawn)
        assert ends[-1] == pytest.approx(style.LINE_WEIGHT * sum(drawn), abs=0.051)


def test_a_learners_own_lessons_load_without_matplotlib():
    code = (
        "import sys, helpers, helpers.widgets.lesson, helpers.figures.waves; "
        "print([name for name in ('matplotlib', 'schemdraw') if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
