// A picture can be taken hold of: what moves on it is a slider of its panel, which stays the one
// that a keyboard moves and a screen reader tells.
const box = this.closest('.cw-controls');
const pick = key => {
  const list = box.querySelector(`.cw-of-${key} select`);
  list.selectedIndex = (list.selectedIndex + 1) % list.options.length;
  list.dispatchEvent(new Event('change', {bubbles: true}));
  list.focus({preventScroll: true});
};
const held = event => {
  const band = event.target.closest('[data-picks]');
  if (band && !event.button) {
    event.preventDefault();
    return pick(band.dataset.picks);
  }
  const face = event.target.closest('[data-moves]');
  const row = face && box.querySelector(`.cw-of-${face.dataset.moves}`);
  if (!row || event.button) return;
  const slider = row.querySelector('.noUi-target').noUiSlider;
  const {left, top, width, height} = face.getBoundingClientRect();
  const [low, high, period] = face.dataset.ends.split(' ').map(Number);
  const place = ({clientX, clientY}) => low + (high - low) * (face.dataset.way === 'up'
    ? (top + height - clientY) / height : (clientX - left) / width);
  // A grip that counts anew after each period stays in the one where it was taken.
  const from = period && low + period * Math.floor(
    (Math.min(Math.max(place(event), low), high - 1e-6) - low) / period);
  const follow = now => slider.set(place(now) - from);
  const leave = () => {
    document.removeEventListener('pointermove', follow);
    document.removeEventListener('pointerup', leave);
    document.removeEventListener('pointercancel', leave);
  };
  event.preventDefault();
  row.querySelector('.noUi-handle').focus({preventScroll: true});
  follow(event);
  document.addEventListener('pointermove', follow);
  document.addEventListener('pointerup', leave);
  document.addEventListener('pointercancel', leave);
};
if (!box.cwGrab) box.addEventListener('pointerdown', box.cwGrab = held);
// A handle gets the label of its box, and tells its number as people read it: "110 degrees".
for (const row of box.querySelectorAll('.cw-slider')) {
  const handle = row.querySelector('.noUi-handle');
  const label = row.querySelector('label').textContent;
  const unit = (label.match(/ in ([^ ]+):$/) || ['', ''])[1];
  handle.setAttribute('aria-label', label);
  const tell = () => {
    const said = +(+handle.getAttribute('aria-valuenow')).toFixed(3) + ' ' + unit;
    if (handle.getAttribute('aria-valuetext') !== said) handle.setAttribute('aria-valuetext', said);
  };
  new MutationObserver(tell).observe(handle, {attributes: true});
  tell();
}
