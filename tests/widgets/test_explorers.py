"""Each explorer's plain function at both ends and the middle of every control, and its controls."""

import re
from xml.etree import ElementTree

import ipywidgets
import pytest
from shown import screen, words

from helpers import explore
from helpers.widgets import explorers, lesson

VOLTS = (5.0, 14.5, 24.0)
OHMS = (220.0, 1500.0, 8200.0)


def amount(text, unit):
    """Read amounts such as "12.5 mA" out of a sentence [unit]."""
    found = re.findall(rf"([0-9.]+)\xa0(µ|m|k|)({unit})\b", text)
    return [float(number) * {"µ": 1e-6, "m": 1e-3, "k": 1e3, "": 1}[p] for number, p, _ in found]


@pytest.mark.parametrize("ohms", OHMS, ids=lambda ohms: f"second way: {ohms:g} ohm")
@pytest.mark.parametrize("volts", VOLTS, ids=lambda volts: f"{volts:g} V")
def test_dropper_says_what_flows(volts, ohms):
    """(V - 2 V) / R, V / R and the square of the first times R, worked out here by hand."""
    svg, said = explorers.dropper(volts, ohms)
    amps = (volts - 2.0) / ohms
    assert amount(said, "A")[:2] == pytest.approx([amps, volts / ohms], rel=5.1e-3)
    assert amount(said, "W") == pytest.approx([amps**2 * ohms], rel=5.1e-3)
    assert ("Too much" in said) == (amps > 0.020)
    ElementTree.fromstring(svg)
    assert svg == explorers.dropper(volts, ohms)[0]


@pytest.mark.parametrize(
    ("volts", "too_much"), [(11.4, False), (11.5, True)], ids=["limit: 20 mA", "limit: 20.2 mA"]
)
def test_dropper_warns_from_the_limit_of_a_small_led_on(volts, too_much):
    """20 mA for a small LED: common practice, no source. (11.4 V - 2 V) / 470 ohm = 20 mA."""
    assert ("Too much" in explorers.dropper(volts, 470.0)[1]) == too_much


@pytest.mark.parametrize("name", explorers.EXPLORERS)
class TestControls:
    def test_every_control_is_a_parameter_and_every_parameter_a_control(self, name):
        function, make_controls = explorers.EXPLORERS[name]
        _, inputs = make_controls()
        code = function.__code__
        assert set(inputs) == set(code.co_varnames[: code.co_argcount])

    def test_the_function_holds_at_both_ends_and_in_the_middle_of_every_control(self, name):
        function, make_controls = explorers.EXPLORERS[name]
        _, inputs = make_controls()
        start = {key: control.value for key, control in inputs.items()}
        for key, control in inputs.items():
            for value in ends_and_middle(control):
                svg, said = function(**{**start, key: value})
                assert ElementTree.fromstring(svg) is not None and said.endswith(".")

    def test_each_control_has_a_name_or_a_named_box_beside_it(self, name):
        laid_out, inputs = explorers.EXPLORERS[name][1]()
        assert all(control.description for control in inputs.values())
        sliders = [c for c in laid_out if isinstance(c, ipywidgets.FloatSlider)]
        for slider in sliders:
            beside = laid_out[laid_out.index(slider) + 1]
            slider.value = slider.min
            assert beside.value == slider.min and beside.description
            assert (beside.min, beside.max, beside.step) == (slider.min, slider.max, slider.step)


def ends_and_middle(control):
    if isinstance(control, ipywidgets.Dropdown):
        values = [value for _, value in control.options]
        return values[0], values[len(values) // 2], values[-1]
    return control.min, (control.min + control.max) / 2, control.max


@pytest.fixture
def moved(session, monkeypatch):
    """The dropper's controls as shown on a page, and the page."""
    made, boxes = [], []
    function, make_controls = explorers.EXPLORERS["dropper"]

    def remember():
        laid_out, inputs = make_controls()
        made.append(inputs)
        return laid_out, inputs

    show_controls = explorers.show_controls
    monkeypatch.setattr(explorers, "show_controls", lambda b: (boxes.append(b), show_controls(b)))
    monkeypatch.setitem(explorers.EXPLORERS, "dropper", (function, remember))
    with screen() as shown:
        explore("dropper")
        yield made[0], boxes[0], shown


def test_the_page_says_in_words_what_the_picture_shows(moved):
    *_, shown = moved
    assert shown.has_controls
    said = explorers.dropper(12.0, 1000.0)[1]
    assert said in shown.plain and words(said) in words(shown.html)
    assert "not a measurement" in shown.plain


def test_moving_a_control_redraws(moved):
    inputs, box, _ = moved
    picture = next(child for child in box.children if "aria-live" in str(child.get_state("value")))
    assert "Too much" not in picture.value
    inputs["ohms"].value = 220.0
    assert "Too much" in picture.value
    inputs["volts"].value = 5.0
    assert "Too much" not in picture.value and "5\u00a0V" in picture.value


def test_the_workshop_copy_shows_the_start_without_controls(session):
    lesson.begin("02", workshop_copy=True)
    with screen() as shown:
        explore("dropper")
    assert not shown.has_controls
    assert explorers.dropper(12.0, 1000.0)[1] in shown.plain


def test_an_unknown_explorer_is_named_with_those_there_are(session):
    with screen() as shown:
        explore("droper")
    assert "There is no explorer 'droper'" in shown.plain and "dropper" in shown.plain
