// What a person looks at, and where they type, stays where it was while the page is made anew.

import {pathKey} from './values.js';

const controls = 'input, select, textarea, button, summary, [tabindex]';
let pointer = null;
document.addEventListener('pointermove', event => { pointer = {x: event.clientX, y: event.clientY}; }, {passive: true});

/** Where an element stands in the form: its field, and which control of it. */
function nameOf(element) {
  const row = element.closest('[data-path]');
  const box = ['.part-lines', '.form'].find(one => element.closest(one)) ?? '';
  return row && {selector: `${box} [data-path="${CSS.escape(row.dataset.path)}"]`, index: [...row.querySelectorAll(controls)].indexOf(element)};
}
function found(name, main) {
  const row = name && main.querySelector(name.selector);
  return row ? (name.index < 0 ? row : row.querySelectorAll(controls)[name.index] ?? row) : null;
}
const seen = box => box.height > 0 && box.bottom > 0 && box.top < innerHeight;

/** What must not move: where one types, else what the mouse is at, else the first field in sight. */
function anchor(main) {
  const focused = document.activeElement;
  const under = pointer && document.elementFromPoint(pointer.x, pointer.y);
  for (const one of [focused, under]) {
    if (one && main.contains(one) && one !== main && seen(one.getBoundingClientRect())) return one;
  }
  return [...main.querySelectorAll('[data-path]')].find(one => one.getBoundingClientRect().top >= 0 && seen(one.getBoundingClientRect())) ?? null;
}

/** Does `work` and puts right what it moved. Focus and cursor go back to the field that had them. */
export function steady(work) {
  const main = document.querySelector('main');
  const held = anchor(main), name = held && nameOf(held), top = held?.getBoundingClientRect().top;
  const focused = document.activeElement, had = main.contains(focused) && focused !== main ? {element: focused, name: nameOf(focused), from: focused.selectionStart, to: focused.selectionEnd} : null;
  const given = work();
  if (had && !had.element.isConnected && (document.activeElement === document.body || document.activeElement === null)) {
    const again = found(had.name, main);
    again?.focus({preventScroll: true});
    try { if (typeof had.from === 'number') again?.setSelectionRange?.(had.from, had.to); } catch { /* a field of another kind has no cursor */ }
  }
  const now = held?.isConnected ? held : found(name, main);
  if (now && top !== undefined) {
    const by = now.getBoundingClientRect().top - top;
    if (Math.abs(by) >= 1) scrollBy({top: by, behavior: 'instant'});
  }
  return given;
}

/** One thing that stands at two places of the page, in the dog's panel and in the form, reads the
 *  same in both: where a person is not typing, it is made anew of what was changed. */
export function alike(doc, [part, form]) {
  const changed = (doc.steps.at(-1)?.edits ?? []).map(edit => pathKey(edit.path));
  const here = document.activeElement;
  if (!form || !changed.length) return;
  for (const row of form.element.querySelectorAll('.row[data-path]')) {
    if (!row.remake || row.contains(here) || !changed.includes(row.dataset.path)) continue;
    const said = [...row.querySelectorAll(':scope > .said > *')], made = row.remake();
    made.querySelector(':scope > .said').append(...said);
    row.replaceWith(made);
  }
  if (!part.element.contains(here) && !part.element.hidden) part.build();
}

export const rowOf = (within, path) => within.querySelector(`[data-path="${CSS.escape(pathKey(path))}"]`);
