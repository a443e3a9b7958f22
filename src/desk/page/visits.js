// The visits of a pet: a menu of them, and of what was put away.

import {refused} from './refused.js';
import {button, el} from './dom.js';
import {dayText, say} from './words.js';
import {desk} from './desk.js';
import {ask} from './server.js';

/** The day of a visit, with its number where it is not the first of that day. */
export function visitName(id, full = false) {
  const name = id.split('/')[1], day = dayText(name.slice(0, 10), full), number = name.slice(11);
  return number ? say('visit-nth', day, number) : day;
}

const most = 30;

export class Visits {
  /** `view`: go and status, as of doc_view.js. */
  constructor(doc, view) {
    this.doc = doc;
    this.view = view;
    this.element = el('details', {className: 'menu', onkeydown: event => { if (event.key === 'Escape') { event.currentTarget.open = false; event.currentTarget.firstChild.focus(); } }});
    this.draw();
    doc.addEventListener('change', event => { if (event.detail.shape && !this.element.open) this.draw(); });
  }

  draw() {
    const list = [...this.doc.visits].sort((a, b) => order(b.id) - order(a.id)).slice(0, most), {away} = this.doc;
    this.element.replaceChildren(el('summary', {}, say('visits', this.doc.visits.length)), el('div', {},
      // A second one of a day would be the last visit, and empty.
      !desk.look && !list.some(visit => visit.date === desk.salon.today) && button(say('new-visit'), () => this.#begin(), {className: 'main'}),
      list.map(visit => button(visitName(visit.id, true), () => this.view.go('doc', {kind: 'visit', id: visit.id}))),
      away.length > 0 && [el('h3', {}, say('put-away-list')), away.map(visit => el('p', {}, visitName(visit.id), ' ',
        !desk.look && button(say('put-back'), () => this.#back(visit.id), {className: 'quiet', aria: {label: `${say('put-back')}: ${visitName(visit.id)}`}})))]));
  }

  async #begin() {
    try {
      const made = await ask('create', {kind: 'visit', id: this.doc.id, edits: []});
      this.view.go('doc', {kind: 'visit', id: made.id, opened: made});
    } catch (problem) { this.view.status(refused(problem), true); }
  }
  async #back(id) {
    try {
      await ask('back', {kind: 'visit', id});
      await this.doc.reload();
      this.element.open = false;
      this.draw();
    } catch (problem) { this.view.status(refused(problem), true); }
  }
}

/** By day, then by number. */
function order(id) {
  const name = id.split('/')[1];
  return Number(name.slice(0, 10).replaceAll('-', '')) * 1000 + Number(name.slice(11) || 1);
}
