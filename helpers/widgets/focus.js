const box = this.closest('.cw-controls');
box.addEventListener('focusin', event => {
  box.cwFocus = event.target;
  event.target.setAttribute('data-lm-suppress-shortcuts', 'true');
});
box.addEventListener('focusout', event => {
  if (event.relatedTarget && !box.contains(event.relatedTarget)) box.cwFocus = null;
});
box.addEventListener('keydown', event => {
  if (event.key === 'Escape') box.closest('.jp-Cell')?.focus();
});
const refocus = () => {
  const was = box.cwFocus;
  if (was && (!was.isConnected || was.disabled || !was.offsetParent)
      && !box.contains(document.activeElement))
    [...box.querySelectorAll('input, select, button:enabled')]
      .find(control => control.offsetParent)?.focus();
};
new MutationObserver(() => {
  clearTimeout(box.cwWait);
  box.cwWait = setTimeout(refocus, 100);
}).observe(box, {childList: true, subtree: true, attributeFilter: ['disabled', 'style']});
