// What the program says of a file, each at its field: faults to mend, and cautions of the safety
// rules, which a person may go against with a reason.

import {button, el, fresh} from './dom.js';
import {firstOf, say} from './words.js';
import {desk} from './desk.js';
import {digest, pathKey} from './values.js';

/** Puts all of an answer where it belongs; `rest` takes what has no field of its own. */
export function tell(form, rest, doc, answer) {
  for (const said of form.querySelectorAll('.said')) said.replaceChildren();
  for (const wrong of form.querySelectorAll('[aria-invalid]')) wrong.removeAttribute('aria-invalid');
  const loose = [];
  for (const fault of answer.faults) {
    const place = placeFor(form, fault.path);
    (place ? place.said : loose).push(faultBox(doc, fault));
    if (fault.level === 'error') place?.row.querySelector('.value :is(input, select, textarea)')?.setAttribute('aria-invalid', 'true');
    if (fault.level === 'error') unfold(place?.row);
  }
  for (const caution of answer.cautions) {
    if (caution.accepted) continue;
    const place = placeFor(form, caution.path);
    (place ? place.said : loose).push(cautionBox(doc, caution));
  }
  for (const comment of answer.lost ?? []) loose.push(el('p', {className: 'fault notice'}, say('comment-lost', comment)));
  rest.replaceChildren(...loose);
  rest.hidden = loose.length === 0;
}

/** The field of a path, or of the nearest table round it. A closed section shows its own. */
function placeFor(form, path) {
  for (let end = path?.length ?? 0; end > 0; --end) {
    const row = form.querySelector(`[data-path="${CSS.escape(pathKey(path.slice(0, end)))}"]`);
    const said = row?.querySelector('.said');
    if (!said) continue;
    const shut = row.parentElement.closest('details:not([open])') ?? (row.matches('details:not([open])') ? row : null);
    const box = shut ? shutBox(shut) : row.matches('button') ? afterButton(row) : said;
    return {row, said: {push: one => box.append(one)}};
  }
  return null;
}
/** Nothing to press may stand inside a button: what is said of a place stands after it. */
function afterButton(row) {
  if (!row.nextElementSibling?.matches('.said.below')) row.after(el('div', {className: 'said below'}));
  return row.nextElementSibling;
}
function shutBox(details) {
  if (!details.nextElementSibling?.matches('.said.below')) details.after(el('div', {className: 'said below'}));
  return details.nextElementSibling;
}
function unfold(row) {
  for (let up = row?.closest('details'); up; up = up.parentElement.closest('details')) up.open = true;
}

function faultBox(doc, fault) {
  const box = el('div', {className: `fault ${fault.level}`, lang: 'en'},
    el('p', {}, el('b', {lang: document.documentElement.lang}, say(`level-${fault.level}`)), ' ', fault.message, fault.hint && el('span', {className: 'hint'}, ` ${fault.hint}`)),
    (fault.notes ?? []).map(note => el('p', {className: 'note'}, note.message ?? note)));
  // One fix, or one for each word that may be meant.
  const fixes = desk.look ? [] : fault.choices ?? (fault.fix?.length ? [fault.fix] : []);
  for (const fix of fixes) {
    const text = digest(fix[0].value);
    box.append(button(text ? say('write-it-so-as', text) : say('write-it-so'), () => doc.change(fix, {shape: true}), {className: 'fix', lang: document.documentElement.lang}));
  }
  return box;
}

export const signalName = signal => firstOf([`word-level-${signal}`, `word-${signal}`], signal);

export function signalMark(signal) {
  return signal ? el('span', {className: `signal ${signal}`}, signalName(signal)) : null;
}

function cautionBox(doc, caution) {
  const box = el('div', {className: `caution ${caution.signal}`}, el('p', {}, signalMark(caution.signal), ' ', el('b', {}, caution.text), ' ', caution.do));
  if (!caution.can_accept || desk.look || doc.kind !== 'pet') return box;
  const open = button(say('accept'), () => open.replaceWith(acceptForm(doc, caution)), {className: 'quiet'});
  box.append(open);
  return box;
}

/** Going against a rule needs a reason and the day the owner agreed; both print. */
function acceptForm(doc, caution) {
  const why = fresh(), when = fresh();
  const reason = el('input', {id: why, type: 'text', required: true, autocomplete: 'off'});
  const day = el('input', {id: when, type: 'date', value: desk.salon.today});
  const done = () => {
    if (!reason.value.trim()) { reason.setAttribute('aria-invalid', 'true'); reason.focus(); return; }
    doc.append(['accept'], {rule: caution.rule, reason: reason.value.trim(), signed: {date: day.value || desk.salon.today}});
  };
  reason.addEventListener('keydown', event => { if (event.key === 'Enter') { event.preventDefault(); done(); } });
  const made = el('div', {className: 'accept', role: 'group', aria: {label: say('accept')}},
    el('label', {htmlFor: why}, say('accept-why')), reason, el('label', {htmlFor: when}, say('accept-day')), day, button(say('accept-do'), done));
  queueMicrotask(() => reason.focus());
  return made;
}
