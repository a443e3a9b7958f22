// Both this window and another changed one value: both stand side by side, and a person says which.

import {button, el, fresh} from './dom.js';
import {keyName, say} from './words.js';
import {meant, placeLabel} from './desk.js';
import {digest, pathKey} from './values.js';
import {ask} from './server.js';

const nameOf = path => path.map((step, i) => typeof step === 'number' ? step + 1 : i + 1 < path.length ? placeLabel(step) === step ? keyName('', step) : placeLabel(step) : keyName('', step)).join(' · ');
const shown = (value, key) => value === undefined || value === null ? say('nothing') : value === true ? say('yes') : digest(value, meant, key);

export function showConflicts(where, doc, conflicts, save) {
  const choices = new Map(conflicts.map(one => [pathKey(one.path), 'yours']));
  const rows = conflicts.map(({path, base, theirs, yours}) => {
    const name = fresh('c');
    const side = (which, text, value) => {
      const id = fresh('c');
      return el('td', {}, el('input', {type: 'radio', name, id, value: which, checked: which === 'yours', onchange: () => choices.set(pathKey(path), which)}), el('label', {htmlFor: id}, el('span', {className: 'tag'}, text), el('b', {}, shown(value, path.findLast(step => typeof step === 'string')))));
    };
    return el('tr', {}, el('th', {scope: 'row'}, nameOf(path), el('small', {}, say('was', shown(base)))), side('yours', say('mine'), yours), side('theirs', say('theirs'), theirs));
  });
  const settle = async () => {
    const theirs = conflicts.filter(one => choices.get(pathKey(one.path)) === 'theirs').map(one => pathKey(one.path));
    // Of a text that was typed there is one conflict: the whole.
    if (theirs.length && doc.typed !== null) doc.typed = null;
    // On top of the file as it is now, so that what the other window did is seen, and kept.
    doc.rebase(await ask('open', {kind: doc.kind, id: doc.id}), edit => !theirs.some(path => pathKey(edit.path).startsWith(path.slice(0, -1))));
    where.replaceChildren();
    if (doc.dirty) save();
  };
  const head = el('h2', {tabIndex: -1}, say('conflict'));
  where.replaceChildren(el('section', {className: 'conflict', aria: {label: say('conflict')}}, head, el('p', {}, say('conflict-what')), el('table', {}, el('tbody', {}, rows)),
    button(say('conflict-do'), settle, {className: 'main'})));
  head.focus();
}
