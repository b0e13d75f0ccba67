"""How what is shown looks: sizes of letters, lengths of lines, names; and the rules of axe-core.

The rules come from axe-core, a reference library for the success criteria of WCAG 2.2 (W3C
Recommendation, 2023). JupyterLab's own page is not judged. Nothing of ours is excepted: the handle
of a slider has a name too.
"""

from importlib.resources import files

import lab

TALL = 30_000
"""Height at which every cell of a lesson can be seen: what is scrolled away is not judged [px]."""
LETTERS, LINE = 13, 95
"""Least size of letters in a picture [px], and most letters in a line."""
THEMES = {"JupyterLab Light": "true", "JupyterLab Dark": "false"}
LEVELS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
COLOURS = ["color-contrast"]
"""The rules that another theme can break."""
JUDGE = """async asked => {
  const found = await axe.run({include: [['.jp-OutputArea-output']]}, {runOnly: asked});
  return {faults: found.violations.flatMap(rule => rule.nodes.map(
            node => `${rule.id}: ${node.target.join(' ')}: ${node.failureSummary}`)),
          contrasts: found.passes.filter(rule => rule.id === 'color-contrast').flatMap(
            rule => rule.nodes).filter(node => !node.html.startsWith('<input')).length};
}"""
LOOKS = """([least, most]) => {
  const faults = [], shown = node => node.getClientRects().length;
  const all = (what, inside) => [...document.querySelectorAll(inside)].flatMap(
    node => [...node.querySelectorAll(what)]).filter(shown);
  const outputs = '.jp-OutputArea-output';
  for (const node of all('img, [role=img]', outputs)) {
    const said = node.getAttribute('alt') || node.getAttribute('aria-label')
      || (node.querySelector('title') || {}).textContent || '';
    if (said.split(' ').length < 3) faults.push('no words for a picture: ' + said);
  }
  for (const node of all('[role=img] *', outputs)) {
    const text = [...node.childNodes].filter(n => n.nodeType === 3).map(n => n.data).join('');
    if (!text.trim() || node.closest('title, desc')) continue;
    const scale = node.getScreenCTM ? node.getScreenCTM().a : 1;
    const size = parseFloat(getComputedStyle(node).fontSize) * scale;
    if (size < least - 0.01) faults.push(`${size} px: ${text}`);
  }
  for (const block of all('p, li', outputs + ', .jp-RenderedMarkdown')) {
    const lines = {}, walker = document.createTreeWalker(block, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      if (walker.currentNode.parentElement.closest('.cw-heard')) continue;  // never seen
      const range = document.createRange(), text = walker.currentNode.data;
      for (const word of text.matchAll(/\\S{1,20}\\s*/g)) {
        range.setStart(walker.currentNode, word.index);
        range.setEnd(walker.currentNode, word.index + 1);
        const top = Math.round(range.getBoundingClientRect().bottom / 8);
        lines[top] = (lines[top] || 0) + word[0].length;
      }
    }
    const longest = Math.max(0, ...Object.values(lines));
    if (longest > most + 1) faults.push(`${longest} letters: ${block.textContent.slice(0, 40)}`);
  }
  for (const handle of all('.noUi-handle', outputs)) {
    const [name, said] = ['aria-label', 'aria-valuetext'].map(what => handle.getAttribute(what));
    if (!name || !/^-?\\d+(\\.\\d{1,3})? ?\\S*$/.test(said)) faults.push(`slider: ${name} ${said}`);
  }
  for (const node of all('pre', outputs + ', .jp-InputArea-editor'))
    if (matchMedia('print').matches && node.scrollWidth > node.clientWidth + 1)
      faults.push('cut: ' + node.textContent.slice(0, 40));
  if (matchMedia('print').matches)
    for (const node of all('pre', outputs))
      if (node.textContent.includes('controls appear')) faults.push('controls on paper');
  return faults;
}"""


def change_theme(page, theme):
    page.evaluate(
        "theme => window.jupyterapp.commands.execute('apputils:change-theme', {theme})", theme
    )
    page.wait_for_function(
        "light => document.body.dataset.jpThemeLight === light", arg=THEMES[theme]
    )
    page.locator("#jupyterlab-splash").wait_for(state="detached")


def load_axe(page):
    """Make axe-core ready on a page of JupyterLab."""
    page.evaluate((files("axe_playwright_python") / "axe.min.js").read_text("utf-8"))
    # The body of JupyterLab is 0 px high with its overflow hidden, so axe-core takes every text
    # for hidden and judges no contrast at all; a height that changes nothing else cures that.
    page.evaluate("document.body.style.height = '100vh'")


def judged(page, width=1280, asked=LEVELS):
    """Return what axe-core finds in all that cells show, and how many contrasts it judged."""
    page.set_viewport_size({"width": width, "height": TALL})
    page.evaluate("window.jupyterapp.shell.currentWidget.content.scrollToItem(0, 'start')")
    page.wait_for_timeout(500)
    found = page.evaluate(JUDGE, asked)
    return found["faults"], found["contrasts"]


def looked_at(page, address, name):
    """Return faults of an open and run lesson: in windows of three widths, at a zoom of 200 %,
    in both themes, in forced colours, and on paper."""
    faults = []

    def look(where):
        page.wait_for_timeout(300)
        faults.extend(f"{where}: {fault}" for fault in page.evaluate(LOOKS, [LETTERS, LINE]))

    for width, theme in ((1280, "JupyterLab Dark"), (1280, "JupyterLab Light"), (640, ""),
                         (700, ""), (480, "")):  # fmt: skip
        if theme:
            change_theme(page, theme)
        page.set_viewport_size({"width": width, "height": TALL})
        look(f"{width} px {theme}")
    page.emulate_media(forced_colors="active")
    look("forced colours")
    page.emulate_media(forced_colors="none")
    page.set_viewport_size({"width": 1280, "height": 1000})
    lab.save(page)
    page.route("**/*", lambda route: route.continue_() if "127.0.0.1" in route.request.url
               else route.abort())  # fmt: skip
    page.goto(address.format(name=name).replace("/lab/tree/", "/nbconvert/html/"))
    page.emulate_media(media="print")
    page.set_viewport_size({"width": 700, "height": 1000})
    look("print")
    page.emulate_media(media="screen")
    page.unroute_all()
    return faults
