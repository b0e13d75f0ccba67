"""Explorers in a real Chromium: how they look at every end, and how they move in JupyterLab."""

import json

import explorer_notebook
import lab
import pytest


@pytest.fixture(scope="module")
def served(browser_found, tmp_path_factory):
    folder = tmp_path_factory.mktemp("lab")
    with lab.lab(folder) as address, lab.chromium(1440, 1000) as page:
        yield address, page, folder


@pytest.fixture
def dimmer(served):
    """A notebook with the dimmer explorer, run; the page, and the folder it is served from."""
    address, page, folder = served
    explorer_notebook.write_explorers(folder, ["dimmer"])
    lab.open_notebook(page, address, explorer_notebook.NAME)
    lab.run_all(page)
    explorer_notebook.scroll_to(page, 1)
    page.locator(".cw-e-dimmer [role=img]").wait_for()
    return page, folder


def title_says(page, words):
    page.locator(".cw-e-dimmer [role=img]", has_text=words).wait_for()


def test_the_keyboard_moves_it_and_the_notebook_stays(dimmer):
    page, _ = dimmer
    handle = page.locator(".cw-e-dimmer .noUi-handle")
    assert handle.get_attribute("aria-label") == "Angle of the edge in degrees:"
    handle.focus()
    cells = "window.jupyterapp.shell.currentWidget.content.widgets.length"
    before = page.evaluate(cells), page.evaluate("document.activeElement.className")
    for key, degrees in (("ArrowRight", 131), ("ArrowLeft", 130), ("Home", 0), ("End", 180)):
        page.keyboard.press(key)
        title_says(page, f"edge at {degrees}°")
        assert handle.get_attribute("aria-valuetext") == f"{degrees} degrees"
    page.keyboard.press("b")
    page.keyboard.press("x")
    assert (page.evaluate(cells), page.evaluate("document.activeElement.className")) == before
    box = page.locator(".cw-e-dimmer").get_by_label("Angle of the edge in degrees:").first
    page.keyboard.press("Shift+Tab")
    assert page.evaluate("document.activeElement.value") == box.input_value()
    page.keyboard.press("Control+a")
    page.keyboard.type("64")
    page.keyboard.press("Enter")
    title_says(page, "edge at 64°")
    page.keyboard.press("Tab")
    page.keyboard.press("Tab")
    page.keyboard.press("ArrowDown")
    title_says(page, "Trailing edge at 64°")


def test_the_edge_of_the_wave_is_dragged_and_then_moved_by_arrow_keys(dimmer):
    """Places on the chart are shares of 360°; the second half-cycle counts anew from 180°."""
    page, _ = dimmer
    face = page.locator(".cw-e-dimmer rect[data-moves]")
    face.scroll_into_view_if_needed()
    face = face.bounding_box()
    middle = face["y"] + face["height"] / 2

    def at(degrees):
        page.mouse.move(face["x"] + face["width"] * degrees / 360, middle)

    at(130)
    page.mouse.down()
    for degrees, shown in ((100, 100), (45, 45), (200, 180)):
        at(degrees)
        title_says(page, f"edge at {shown}°")
    page.mouse.up()
    at(20)
    page.wait_for_timeout(300)
    title_says(page, "edge at 180°")
    at(270)
    page.mouse.down()
    title_says(page, "edge at 90°")
    page.mouse.up()
    page.keyboard.press("ArrowRight")
    title_says(page, "edge at 91°")


def test_a_press_on_a_band_takes_its_next_colour(served):
    address, page, folder = served
    explorer_notebook.write_explorers(folder, ["bands"])
    lab.open_notebook(page, address, explorer_notebook.NAME)
    lab.run_all(page)
    face = page.locator(".cw-e-bands [data-picks=first]")
    face.scroll_into_view_if_needed()
    page.wait_for_timeout(300)
    face.click()
    page.locator(".cw-e-bands [role=status]", has_text="Green 5, violet 7").wait_for()
    page.keyboard.press("ArrowUp")
    page.locator(".cw-e-bands [role=status]", has_text="Yellow 4, violet 7").wait_for()


def test_a_number_box_shows_what_was_typed_or_moved_to_without_noise(served):
    address, page, folder = served
    explorer_notebook.write_explorers(folder, ["heat"])
    lab.open_notebook(page, address, explorer_notebook.NAME)
    lab.run_all(page)
    box = page.locator(".cw-e-heat input[type=number]").first
    drawn = page.locator(".cw-e-heat [role=img]")
    drawn.wait_for()
    page.wait_for_timeout(500)
    assert box.input_value() == "0.668"  # 253 V on 47 kΩ behind a diode; not on a step
    for key, watts in (("ArrowRight", "0.68"), ("ArrowRight", "0.69")):
        page.locator(".cw-e-heat .noUi-handle").first.press(key)
        page.locator(".cw-e-heat [role=status]", has_text=f"here it is {watts} W").wait_for()
        assert box.input_value() == watts
    box.fill("0.33")
    box.press("Enter")
    page.locator(".cw-e-heat [role=status]", has_text="here it is 0.33 W").wait_for()
    page.wait_for_timeout(500)
    assert box.input_value() == "0.33"


def test_the_sentence_is_a_polite_live_region_that_outlives_its_changes(dimmer):
    page, _ = dimmer
    page.evaluate("window.kept = document.querySelector('.cw-e-dimmer [role=status]')")
    first = page.evaluate("window.kept.textContent")
    page.locator(".cw-e-dimmer .noUi-handle").press("End")
    page.wait_for_function("first => window.kept.textContent !== first", arg=first)
    assert "edge at 180°" in page.evaluate("window.kept.textContent")
    assert page.evaluate("window.kept === document.querySelector('.cw-e-dimmer [role=status]')")
    tree = page.context.new_cdp_session(page).send("Accessibility.getFullAXTree")["nodes"]
    polite = [
        node["properties"]
        for node in tree
        if node.get("role", {}).get("value") == "status"
        and {"name": "live", "value": {"type": "token", "value": "polite"}} in node["properties"]
    ]
    assert polite, "Chromium offers no polite live region to a screen reader"


def test_the_first_state_is_hidden_while_the_controls_live_and_saved_with_the_notebook(dimmer):
    page, folder = dimmer
    assert not page.locator(".cw-x-dimmer").is_visible()
    lab.save(page)
    saved = json.loads((folder / "work" / explorer_notebook.NAME).read_text(encoding="utf-8"))
    last = saved["cells"][1]["outputs"][-1]["data"]
    assert "Leading edge at 130°" in "".join(last["text/html"])
    assert "Things to try" in "".join(last["text/plain"])
