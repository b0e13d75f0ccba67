"""A lesson is opened and its cells are run: server, kernel and browser stay on this machine."""

from urllib.parse import urlsplit

import lab
import lookups

LESSON = "02-ohms-law"
NOTICE = ".Toastify__toast"
ASKS_LATE = 3000  # ms: the question about news comes a while after the page
FAULTS = """() => window.jupyterapp.shell.currentWidget.content.model.sharedModel.cells
  .flatMap(cell => cell.outputs || []).filter(one => one.output_type === 'error').length"""


def test_a_lesson_is_opened_and_run_and_nothing_is_looked_up(browser_found, open_lessons, tmp_path):
    own = tmp_path / "home/.jupyter/jupyter_lab_config.py"
    own.parent.mkdir(parents=True)
    own.write_text("c.LabApp.expose_app_in_browser = True\n")  # for the harness
    asked = []
    with open_lessons(LESSON) as opened:
        with lab.chromium() as page:
            page.on("request", lambda request: asked.append(request.url))
            page.on("websocket", lambda socket: asked.append(socket.url))
            page.goto(opened.address)
            page.wait_for_function(lab.IDLE, timeout=60_000)
            lab.run_all(page)
            page.wait_for_timeout(ASKS_LATE)
            title, faults = page.title(), page.evaluate(FAULTS)
            notices = page.locator(NOTICE).all_inner_texts()
        opened.close()
    assert LESSON in title
    assert (faults, notices) == (0, [])
    hosts = [url.netloc for url in map(urlsplit, asked) if url.scheme not in ("data", "blob")]
    assert len(hosts) > 20 and set(hosts) == {urlsplit(opened.address).netloc}
    events = lookups.seen(tmp_path)
    watched = [words for what, _, words in events if what == "watched"]
    assert any("helpers open" in words for words in watched)
    assert any("ipykernel" in words for words in watched)
    assert lookups.unwanted(events) == []
    assert opened.said().endswith("Your answers are kept.\n")
