// What the program says of a file, each at its field: faults to mend, and cautions of the safety
// rules, which a person may go against with a reason.

import {button, el, fresh} from './dom.js';
import {dayText, firstOf, say} from './words.js';
import {desk, languageName, meant} from './desk.js';
import {ofFiles, plainly, remarks} from './plain_words.js';
import {digest, isTable, pathKey} from './values.js';

/** Puts all of an answer where it belongs. `forms`: the nearest to a person's eyes first; `rest`
 *  takes what has no field of its own. */
export function tell(forms, rest, doc, answer) {
  for (const form of forms) {
    for (const said of form.querySelectorAll('.said')) said.replaceChildren();
    for (const wrong of form.querySelectorAll('[aria-invalid]:not([role=combobox])')) wrong.removeAttribute('aria-invalid');
  }
  const loose = [], told = new Set();
  for (const given of answer.faults) {
    const fault = {...given, ...plainly(doc, given)};
    if (fault.level === 'error' && waits(doc, fault)) continue;
    const place = placeFor(forms, fault.path), where = place ? pathKey(fault.path) : '';
    // One sentence once at a place, however often the program says it.
    const key = `${where} ${fault.file ?? ''} ${fault.text ?? fault.message}`;
    if (told.has(key)) continue;
    told.add(key);
    (place ? place.said : loose).push(faultBox(doc, fault));
    if (fault.level !== 'error') continue;
    place?.row.querySelector('.value :is(input, select, textarea)')?.setAttribute('aria-invalid', 'true');
    unfold(place?.row);
  }
  for (const caution of doc.safe?.cautions ?? answer.cautions) {
    if (caution.accepted) continue;
    const place = placeFor(forms, caution.path);
    (place ? place.said : loose).push(cautionBox(doc, caution));
  }
  for (const comment of remarks(answer.lost)) loose.push(el('p', {className: 'fault notice'}, say('comment-lost', comment)));
  rest.replaceChildren(...loose);
  rest.hidden = loose.length === 0;
}

/** Is nothing wrong but that something new is not filled in yet? */
export const onlyBegun = (doc, answer) => answer.faults.filter(fault => fault.level === 'error').every(fault => waits(doc, {...fault, ...plainly(doc, fault)}));

/** Something that was only just begun, and has no word yet, is no fault. */
export function waits(doc, {path}) {
  const value = path && doc.at(path);
  return Boolean(path) && doc.isFresh(path) && (value === undefined || value === '' || isTable(value));
}

/** The field of a path, or of the nearest table round it. A closed section shows its own. */
function placeFor(forms, path) {
  for (let end = path?.length ?? 0; end > 0; --end) {
    for (const form of forms) {
      const row = form.querySelector(`[data-path="${CSS.escape(pathKey(path.slice(0, end)))}"]`);
      const said = row?.querySelector('.said');
      if (!said || form.hidden) continue;
      const shut = row.parentElement.closest('details:not([open])') ?? (row.matches('details:not([open])') ? row : null);
      const box = shut ? after(shut) : row.matches('button') ? after(row) : said;
      return {row, said: {push: one => box.append(one)}};
    }
  }
  return null;
}
/** Nothing to press may stand inside a button or a closed section: what is said stands after it. */
function after(row) {
  if (!row.nextElementSibling?.matches('.said.below')) row.after(el('div', {className: 'said below'}));
  return row.nextElementSibling;
}
function unfold(row) {
  for (let up = row?.closest('details'); up; up = up.parentElement.closest('details')) up.open = true;
}

/** The day whose bookings a fault is in, where another page than theirs tells of it. */
const dayOf = file => /(?:^|[/\\])days[/\\](\d{4}-\d\d-\d\d)\.toml$/.exec(file ?? '')?.[1];

function faultBox(doc, fault) {
  const own = fault.text !== undefined, day = dayOf(fault.file);
  const box = el('div', {className: `fault ${fault.level}`},
    el('p', {}, el('b', {}, say(`level-${fault.level}`)), ' ', day && [el('b', {}, dayText(day, true)), ': '], own ? fault.text : el('span', {lang: 'en'}, fault.message, fault.hint && el('span', {className: 'hint'}, ` ${fault.hint}`))),
    !own && (fault.notes ?? []).filter(note => !ofFiles(note.message ?? note)).map(note => el('p', {className: 'note', lang: 'en'}, note.message ?? note)));
  if (fault.add && !desk.look) box.append(el('p', {}, button(say('add-language', languageName(fault.add.language)), () => doc.dispatchEvent(new CustomEvent('language', {detail: fault.add})), {className: 'quiet'}), ' ', say('add-language-how')));
  // One fix, or one for each word that may be meant.
  const fixes = desk.look ? [] : fault.choices ?? (fault.fix?.length ? [fault.fix] : []);
  for (const fix of fixes) {
    const text = digest(fix[0].value, meant, fix[0].path.findLast(step => typeof step === 'string'));
    box.append(button(text ? say('write-it-so-as', text) : say('write-it-so'), () => doc.change(fix, {shape: true}), {className: 'fix'}));
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
