// Of a visit: whether it is done, which only a person can say, and what its owner will read of it.

import {button, el, fresh} from './dom.js';
import {keyName, say} from './words.js';
import {desk, placeLabel, sidedLabel} from './desk.js';
import {asksForVet} from './told_words.js';
import {isTable} from './values.js';

/** What a file says of the work by its contents alone, as the reader takes it. */
function workSaid(doc) {
  const has = key => { const value = doc.at([key]); return Array.isArray(value) ? value.length > 0 : value !== undefined; };
  return ['done', 'went_out', 'product', 'minutes'].some(has) || (doc.at(['photo']) ?? []).some?.(one => one?.when === 'after') ? 'done' : 'unwritten';
}
/** 'done', 'unwritten', 'open', or 'not' where it was not done. */
export function workOf(doc) {
  if (text(doc.at(['not_done']))) return 'not';
  const begun = doc.at(['unfinished']);
  return begun === true ? 'open' : begun === false ? 'done' : workSaid(doc);
}

/** The choice between done, not done yet, and not done at all. `form` has the field of the reason. */
export function doneBar(doc, form) {
  const now = workOf(doc), waits = now === 'open' && form.asks('not_done');
  const there = (...keys) => keys.filter(key => doc.at([key]) !== undefined).map(key => ({op: 'remove', path: [key]}));
  const turn = edits => () => { form.unask('not_done', 'did'); doc.change(edits, {shape: true}); };
  const done = () => turn([...there('not_done', 'did'), ...(workSaid(doc) === 'done' ? there('unfinished') : [{op: 'set', path: ['unfinished'], value: false}])])();
  const open = turn([...there('not_done', 'did'), {op: 'set', path: ['unfinished'], value: true}]);
  const not = () => {
    if (doc.at(['unfinished']) !== true) doc.change([{op: 'set', path: ['unfinished'], value: true}]);
    form.ask('not_done', 'did');
  };
  const vet = now === 'not' && Object.values(texts(doc.at(['not_done']))).some(asksForVet);
  const [title, what] = {done: ['visit-done'], unwritten: ['visit-unwritten', 'visit-open-what'], open: ['visit-open', waits ? 'visit-not-why' : 'visit-open-what'], not: ['visit-not-done', 'visit-not-done-what']}[now];
  return el('div', {className: `visit-state${now === 'done' ? '' : ' open'}`, role: 'group', aria: {label: say('visit-state')}},
    el('p', {}, el('b', {}, say(title)), ' ', what && say(what), vet && [' ', say('visit-vet')]),
    !desk.look && [now !== 'done' && button(say('visit-do'), done, {className: now === 'not' || waits ? 'quiet' : 'main'}), ' ',
      now !== 'not' && !waits && button(say('visit-not'), not, {className: 'quiet'}), ' ',
      (now === 'done' || now === 'not' || waits) && button(say('visit-undo'), open, {className: 'quiet'})]);
}

const texts = value => isTable(value) ? value : {text: value ?? ''};
const text = value => typeof value === 'string' ? value : isTable(value) ? Object.entries(value).filter(([name]) => name !== 'for').map(([, one]) => one).filter(one => typeof one === 'string')[0] ?? '' : '';
const forEveryone = value => isTable(value) && value.for === 'everyone';

/** [what, words, undecided finding's number] of all that an owner will read, and of all that is kept. */
function shares(doc) {
  const reads = [], kept = [];
  const told = text(doc.at(['told'])), why = text(doc.at(['not_done']));
  if (why) reads.push([keyName('', 'not_done'), why]);
  if (told) reads.push([keyName('', 'told'), told]);
  const list = doc.at(['finding']);
  (Array.isArray(list) ? list : []).forEach((one, i) => {
    if (!isTable(one) || !one.region) return;
    const words = [text(one.what), text(one.advised)].filter(Boolean).join('; ');
    const place = sidedLabel(one.region, one.side);
    (one.for === 'everyone' ? reads : kept).push([place, words, one.for === undefined ? i : null]);
  });
  for (const key of ['behaviour', 'helped']) {
    const words = text(doc.at(['came_in', key]));
    if (words) kept.push([keyName('', key), words]);
  }
  const done = doc.at(['done']);
  for (const [name, work] of Object.entries(isTable(done) ? done : {})) {
    if (isTable(work) && text(work.why)) (forEveryone(work.why) ? reads : kept).push([`${placeLabel(name)}, ${keyName('', 'why')}`, text(work.why)]);
  }
  for (const part of ['came_in', 'went_out']) {
    const table = doc.at([part]);
    for (const [name, state] of Object.entries(isTable(table) ? table : {})) {
      if (isTable(state) && text(state.note)) (forEveryone(state.note) ? reads : kept).push([`${placeLabel(name)}, ${keyName('', 'note')}`, text(state.note)]);
    }
  }
  return {reads, kept};
}

export function ownerReads(doc) {
  const {reads, kept} = shares(doc), id = fresh();
  if (!reads.length && !kept.length) return null;
  const ask = i => !desk.look && [' ', el('em', {}, say('owner-ask')), ' ',
    button(say('owner-reads'), () => doc.change([{op: 'set', path: ['finding', i, 'for'], value: 'everyone'}], {shape: true})), ' ',
    button(say('owner-reads-not'), () => doc.change([{op: 'set', path: ['finding', i, 'for'], value: 'staff'}], {shape: true}))];
  const group = (title, rows, none) => el('div', {}, el('h3', {}, title), rows.length ? el('ul', {}, rows.map(([what, words, open]) =>
    el('li', {}, el('b', {}, what), words && ': ', words, open !== null && open !== undefined && ask(open)))) : el('p', {}, none));
  return el('section', {className: 'owner-reads', aria: {labelledby: id}}, el('h2', {id}, say('owner-page')),
    group(say('owner-will'), reads, say('owner-nothing')), kept.length > 0 && group(say('owner-wont'), kept, ''));
}
