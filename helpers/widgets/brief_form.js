const form = this.previousElementSibling, box = this.closest('.cw-controls');
const fields = [...form.querySelectorAll('input, select')];
const part = name => box.querySelector(`.${name} input`);
form.cwLook = () => {
  if (!part('cw-typed') || !part('cw-wrong') || !part('cw-such')) return setTimeout(form.cwLook, 50);
  const typed = JSON.parse(part('cw-typed').value), wrong = JSON.parse(part('cw-wrong').value);
  const such = JSON.parse(part('cw-such').value);
  for (const field of fields) {
    const text = typed[field.name] || '', said = wrong[field.name] || '';
    if (field !== document.activeElement && field.value !== text) field.value = text;
    if (such[field.name]) field.placeholder = 'such as ' + such[field.name];
    const place = form.querySelector('#' + field.getAttribute('aria-describedby'));
    if (place.textContent !== said) place.textContent = said;
    field.setAttribute('aria-invalid', said ? 'true' : 'false');
    if (said && field.closest('details')) field.closest('details').open = true;
  }
};
form.onsubmit = event => event.preventDefault();
form.oninput = () => {
  const typed = Object.fromEntries(fields.map(field => [field.name, field.value]));
  part('cw-typed').value = JSON.stringify(typed);
  part('cw-typed').dispatchEvent(new Event('change', {bubbles: true}));
};
const opened = new Set(), name = fold => fold.querySelector('summary').textContent.split(',')[0];
box.addEventListener('click', event => {
  const fold = event.target.closest('.cw-plan details > summary')?.parentNode;
  if (fold) opened[fold.open ? 'delete' : 'add'](name(fold));
});
new MutationObserver(() => {
  for (const fold of box.querySelectorAll('.cw-plan details'))
    if (opened.has(name(fold))) fold.open = true;
}).observe(box, {childList: true, subtree: true});
form.cwLook();
