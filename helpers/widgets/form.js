const form = this.previousElementSibling, box = this.closest('.cw-controls');
const list = form.querySelector('ol'), inputs = [...form.querySelectorAll('input')];
const held = () => box.querySelector('.cw-held input');
const letters = () => held().value.split(', ').filter(letter => letter);
const buttons = () => [...list.querySelectorAll('button')];
const say = on => {
  held().value = on.join(', ');
  held().dispatchEvent(new Event('change', {bubbles: true}));
  form.cwLook();
};
form.cwLook = () => {
  if (!held()) return setTimeout(form.cwLook, 50);
  const on = letters();
  inputs.forEach(input => { input.checked = on.includes(input.value); });
  if (!list) return;
  const had = document.activeElement;
  const wanted = [...on, ...[...list.dataset.dealt].filter(letter => !on.includes(letter))];
  const rows = wanted.map(letter => buttons().find(each => each.value === letter));
  if (rows.some((row, at) => row !== buttons()[at]))
    rows.forEach(row => list.append(row.parentNode));
  rows.forEach((row, at) => {
    const placed = at < on.length;
    row.classList.toggle('cw-placed', placed);
    row.children[0].textContent = placed ? at + 1 : '';
    row.children[2].textContent = placed ? 'take back' : 'put next';
    if (placed) row.setAttribute('aria-keyshortcuts', 'Alt+ArrowUp Alt+ArrowDown');
    else row.removeAttribute('aria-keyshortcuts');
  });
  if (list.contains(had)) had.focus();
};
form.onsubmit = event => event.preventDefault();
form.onchange = event => {
  const none = inputs.find(input => input.value === 'none'), changed = event.target;
  if (none && changed.checked)
    inputs.forEach(input => { if ((input === none) !== (changed === none)) input.checked = false; });
  say(inputs.filter(input => input.checked).map(input => input.value));
};
const place = on => {
  say(on);
  form.querySelector('output').textContent = on.map((letter, at) => `${at + 1} ${letter}`).join(', ');
};
form.onclick = event => {
  const button = event.target.closest('button'), on = letters();
  if (!button) return;
  const at = buttons().indexOf(button), taken = at < on.length;
  place(taken ? on.filter(letter => letter !== button.value) : [...on, button.value]);
  const next = taken ? button : buttons()[at + 1] || buttons()[on.length + 1];
  (next || box.querySelector('.cw-check')).focus();
};
// A step is dragged to the place of another one: a press and a pull, where a press alone takes back.
if (list) list.onpointerdown = event => {
  const letter = event.target.closest('button')?.value;
  if (!letter || event.button) return;
  const leave = now => {
    ['pointerup', 'pointercancel'].forEach(name => document.removeEventListener(name, leave));
    const at = buttons().indexOf(document.elementFromPoint(now.clientX, now.clientY)
      ?.closest('button')), on = letters();
    if (now.type !== 'pointerup' || at < 0 || buttons()[at].value === letter) return;
    const others = on.filter(each => each !== letter);
    others.splice(at, 0, letter);
    place(others);
  };
  ['pointerup', 'pointercancel'].forEach(name => document.addEventListener(name, leave));
};
form.onkeydown = event => {
  const step = {ArrowUp: -1, ArrowDown: 1}[event.key], on = letters();
  const at = on.indexOf(event.target.value);
  if (!list && event.key === 'Enter' && !event.shiftKey && !event.ctrlKey) {
    event.preventDefault();  // a browser submits a form without a button on no choice or tick
    box.querySelector('.cw-check').click();
  }
  if (!list || !event.altKey || !step || at < 0) return;
  event.preventDefault();
  const [moved] = on.splice(at, 1);
  on.splice(Math.max(at + step, 0), 0, moved);
  place(on);
};
form.cwLook();
