// The styles that trims follow: the salon's own, which can be changed, and those that come along.

import {refused} from './refused.js';
import {button, el, fresh} from './dom.js';
import {say} from './words.js';
import {desk} from './desk.js';
import {ask} from './server.js';

/** `open(id)` goes to one of the salon's own. */
export function styleList(open) {
  const row = style => el('li', {}, style.own ? button(style.name, () => open(style.id)) : el('b', {}, style.name), style.looks && el('span', {className: 'looks'}, style.looks));
  const group = (title, list) => list.length > 0 && [el('h3', {}, title), el('ul', {}, list.map(row))];
  return el('section', {className: 'styles', aria: {label: say('styles')}}, el('h2', {}, say('styles')),
    group(say('styles-own'), desk.styles.filter(one => one.own)), !desk.look && newStyle(open), group(say('styles-given'), desk.styles.filter(one => !one.own)));
}

function newStyle(open) {
  const id = fresh(), name = el('input', {id, type: 'text', autocomplete: 'off', required: true});
  const state = el('p', {className: 'fault error', role: 'alert', hidden: true});
  return el('form', {className: 'new-pet new-style', onsubmit: async event => {
    event.preventDefault();
    const called = name.value.trim();
    if (!called) { name.focus(); return; }
    try {
      const made = await ask('create', {kind: 'style', name: called, edits: []});
      desk.styles.push({id: made.id, name: called, looks: '', own: true});
      open(made.id);
    } catch (problem) {
      state.textContent = refused(problem);
      state.hidden = false;
    }
  }}, el('label', {htmlFor: id}, say('new-style')), name, el('button', {type: 'submit'}, say('new-style-do')), state);
}
