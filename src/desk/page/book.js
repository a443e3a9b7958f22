// A pet is booked in: for which day is asked here, all else on that day's page.

import {refused} from './refused.js';
import {button, el, fresh} from './dom.js';
import {say} from './words.js';
import {desk, remember} from './desk.js';
import {ask} from './server.js';

/** `view`: go and status, as of doc_view.js. */
export function bookMenu(doc, view) {
  const id = fresh(), past = el('p', {role: 'status', className: 'past'});
  const look = () => { past.textContent = day.value && day.value < desk.salon.today ? say('book-past') : ''; };
  const day = el('input', {type: 'date', id, value: desk.salon.today, oninput: look, onkeydown: event => { if (event.key === 'Enter') go(); }});
  const go = async () => {
    const date = day.value;
    if (!/^[12]\d{3}-/.test(date)) { day.focus(); return; }
    try {
      const opened = await ask('open', {kind: 'day', id: date}).catch(problem => {
        if (problem.status !== 404) throw problem;
        return ask('create', {kind: 'day', name: date, edits: []});
      });
      remember({id: doc.pet, name: view.title()});
      view.go('doc', {kind: 'day', id: date, opened, book: doc.pet});
    } catch (problem) { view.status(refused(problem), true); }
  };
  const menu = el('details', {className: 'menu', onkeydown: event => { if (event.key === 'Escape' && menu.open) { menu.open = false; menu.firstChild.focus(); } },
    ontoggle: () => { if (menu.open) day.focus(); }},
  el('summary', {}, say('book')), el('div', {className: 'booking-day'}, el('label', {htmlFor: id}, say('book-day')), day, past, button(say('book-do'), go, {className: 'main'})));
  return menu;
}
