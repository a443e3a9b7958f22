// Of a visit: whether it is done, which only a person can say, and what its owner will read of it.

import {button, el, fresh} from './dom.js';
import {keyName, say} from './words.js';
import {desk, placeLabel, sidedLabel} from './desk.js';
import {isTable} from './values.js';

export const isUnfinished = doc => doc.at(['unfinished']) === true;

export function doneBar(doc) {
  const open = isUnfinished(doc);
  const turn = () => doc.change([open ? {op: 'remove', path: ['unfinished']} : {op: 'set', path: ['unfinished'], value: true}], {shape: true});
  return el('div', {className: `visit-state${open ? ' open' : ''}`, role: 'group', aria: {label: say('visit-state')}},
    el('p', {}, el('b', {}, say(open ? 'visit-open' : 'visit-done')), ' ', open && say('visit-open-what')),
    !desk.look && button(say(open ? 'visit-do' : 'visit-undo'), turn, {className: open ? 'main' : 'quiet'}));
}

const text = value => typeof value === 'string' ? value : isTable(value) ? Object.entries(value).filter(([name]) => name !== 'for').map(([, one]) => one).filter(one => typeof one === 'string')[0] ?? '' : '';
const forEveryone = value => isTable(value) && value.for === 'everyone';

/** [what, words, undecided finding's number] of all that an owner will read, and of all that is kept. */
function shares(doc) {
  const reads = [], kept = [];
  const told = text(doc.at(['told']));
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
