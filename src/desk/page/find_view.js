// One field that finds a pet by any part of its or its owner's name. Before a word is typed: whom the
// day has, then who is due.

import {refused} from './refused.js';
import {button, el, fresh, later} from './dom.js';
import {say, dayText} from './words.js';
import {desk, nameOfPet, remember} from './desk.js';
import {visitName} from './visits.js';
import {ask, print} from './server.js';
import {signalMark} from './faults.js';

export class FindView {
  constructor({go, status, open}) {
    Object.assign(this, {go, status, open, thrown: new Set()});
    const id = fresh();
    this.field = el('input', {type: 'search', id, dir: 'auto', className: 'find', autocomplete: 'off', spellcheck: false, oninput: () => this.look(), onkeydown: event => this.#key(event)});
    this.look = later(() => this.#look(), 30);
    // Of a large salon that was just opened only some are known. Nobody's place among them is taken away.
    this.again = later(() => this.list.contains(document.activeElement) ? this.again() : this.#look(), 500);
    this.reading = el('p', {className: 'none'});
    this.list = el('div', {className: 'found', aria: {busy: true}});
    this.count = el('p', {className: 'unseen', role: 'status'});
    this.chosen = new Set();
    this.several = button('', () => this.#print(), {hidden: true, className: 'main'});
    this.element = el('div', {className: 'find-view'}, el('h1', {className: 'unseen', tabIndex: -1}, say('find')),
      el('form', {role: 'search', onsubmit: event => event.preventDefault()}, el('label', {htmlFor: id}, say('find-label')), this.field),
      this.#drafts(), this.several, this.list, this.reading, this.count, desk.look ? null : this.#newPet());
    this.look.now();
  }
  close() {
    this.look.stop();
    this.again.stop();
    for (const forget of this.thrown) forget();
  }
  focus() { this.field.focus(); }

  async #look() {
    const words = this.field.value, mine = this.asked = (this.asked ?? 0) + 1;
    try {
      const {pets, reading} = await ask('find', {words});
      if (mine !== this.asked) return;
      pets.forEach(remember);
      this.#show(pets, words, reading);
      this.reading.textContent = reading ? say('still-reading', reading) : '';
      if (reading) this.again();
    } catch (problem) { this.status(refused(problem), true); }
  }

  #show(pets, words, reading) {
    const booked = words ? [] : pets.filter(pet => pet.booked), due = words ? pets : pets.filter(pet => !pet.booked);
    const group = (title, list) => list.length > 0 && el('section', {}, el('h2', {}, title), el('ul', {}, list.map(pet => this.#row(pet))));
    this.list.replaceChildren(...[group(say('booked-on', dayText(desk.salon.today, true)), booked), group(words ? say('found-heading') : say('then-due'), due),
      pets.length === 0 && !reading && el('div', {className: 'none'}, el('p', {}, words ? say('found-none', words) : say('no-pets')),
        words.trim() && !desk.look && button(say('new-pet-as', words.trim()), () => this.#create(words.trim()), {className: 'add-found'}))].filter(Boolean));
    if (this.name && !this.named) this.name.value = pets.length === 0 && !reading ? words.trim() : '';
    this.list.setAttribute('aria-busy', false);
    this.count.textContent = words ? say('found-count', pets.length) : '';
  }

  #row(pet) {
    const over = pet.due?.over_days > 0;
    const pick = el('input', {type: 'checkbox', checked: this.chosen.has(pet.id), aria: {label: say('choose', pet.name)}, onchange: event => this.#choose(pet.id, event.target.checked)});
    return el('li', {}, pick, el('button', {type: 'button', className: 'one-pet', data: {id: pet.id}, onclick: () => this.go('doc', {kind: 'pet', id: pet.id})},
      el('span', {className: 'when'}, pet.booked ?? ''), el('span', {className: 'who'}, el('b', {}, pet.name), el('span', {}, pet.looks)),
      el('span', {className: 'owner'}, pet.owner), el('span', {className: 'mark'}, signalMark(pet.gravest), pet.readable === false && el('b', {}, ' ', say('to-see-to'))),
      el('span', {className: over ? 'due over' : 'due'}, pet.booked ? pet.groomer ?? '' : dueText(pet.due))));
  }

  #choose(id, on) {
    if (on) this.chosen.add(id); else this.chosen.delete(id);
    this.several.hidden = this.chosen.size === 0;
    this.several.textContent = say('print-cards', this.chosen.size);
  }
  async #print() {
    try { await print([...this.chosen].map(id => ({kind: 'pet', id, sheet: 'card'}))); }
    catch (problem) { this.status(refused(problem), true); }
  }

  /** Enter opens the first; the arrows go along the rows. */
  #key(event) {
    const rows = [...this.list.querySelectorAll('.one-pet')];
    if (event.key === 'Enter' && rows.length) { event.preventDefault(); this.look.now().then(() => this.list.querySelector('.one-pet')?.click()); }
    if (event.key === 'ArrowDown' && rows.length) { event.preventDefault(); rows[0].focus(); }
  }

  #newPet() {
    const id = fresh(), name = this.name = el('input', {id, type: 'text', autocomplete: 'off', required: true, oninput: () => { this.named = name.value !== ''; }});
    const state = this.refused = el('p', {className: 'fault error', role: 'alert', hidden: true});
    return el('form', {className: 'new-pet', onsubmit: async event => {
      event.preventDefault();
      if (!name.value.trim()) { name.focus(); return; }
      await this.#create(name.value.trim());
    }}, el('label', {htmlFor: id}, say('new-pet')), name, el('button', {type: 'submit'}, say('new-pet-do')), state);
  }

  async #create(name) {
    try {
      const made = await ask('create', {kind: 'pet', name, edits: []});
      remember({id: made.id, name});
      this.go('doc', {kind: 'pet', id: made.id, opened: made});
    } catch (problem) {
      this.refused.textContent = refused(problem);
      this.refused.hidden = false;
    }
  }

  /** What was not saved when the page last closed. Thrown away, it can be had back until one leaves. */
  #drafts() {
    const list = this.open();
    if (!list.length) return null;
    return el('section', {className: 'drafts'}, el('h2', {}, say('unsaved-before')), el('ul', {}, list.map(({kind, id, forget}) => {
      const kept = [button(kind === 'visit' ? say('visit-of', nameOfPet(id.split('/')[0]), visitName(id)) : kind === 'pet' ? nameOfPet(id) : kind === 'day' ? dayText(id, true) : kind === 'style' ? desk.styles.find(one => one.id === id)?.name ?? id : say('table-salon'), () => this.go('doc', {kind, id})),
        button(say('drop'), () => {
          this.thrown.add(forget);
          const back = button(say('undo'), () => {
            this.thrown.delete(forget);
            item.replaceChildren(...kept);
            kept[0].focus();
          }, {className: 'quiet', aria: {label: `${say('undo')}: ${id}`}});
          item.replaceChildren(el('s', {}, kept[0].textContent), ' ', back);
          back.focus();
        }, {className: 'quiet', aria: {label: `${say('drop')}: ${id}`}})];
      const item = el('li', {}, ...kept);
      return item;
    })));
  }
}

/** When a pet is due, and how far over it is. */
function dueText(due) {
  if (!due?.date) return '';
  if (due.first) return say('no-visit-yet');
  return due.over_days > 0 ? say('due-over', due.over_days) : say('due-on', dayText(due.date));
}
