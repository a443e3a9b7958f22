// What can hurt, above all that can be changed: it stays, whatever fault the file has meanwhile.

import {el, fresh} from './dom.js';
import {say} from './words.js';
import {onlyBegun, signalMark} from './faults.js';
import {isTable} from './values.js';

const order = ['danger', 'warning', 'caution', 'notice'];
const firstText = text => typeof text === 'string' ? text : isTable(text) ? Object.entries(text).find(([name]) => name !== 'for')?.[1] ?? '' : '';

export class Safety {
  constructor(doc) {
    this.doc = doc;
    const id = fresh('s');
    this.title = el('h2', {id}, say('take-care'));
    this.why = el('p', {className: 'from'});
    this.list = el('ul');
    this.element = el('section', {className: 'safety', hidden: true, aria: {labelledby: id}}, this.title, this.why, this.list);
  }

  /** By what can be read, and was before; where the program could read nothing, by the file's words. */
  tell() {
    if (!['pet', 'visit'].includes(this.doc.kind)) return;
    const {alerts, read} = this.doc.safe ?? {alerts: [], read: 'nothing'};
    const now = this.doc.answer?.read ?? 'nothing';
    const given = alerts.length || read !== 'nothing' ? alerts : this.#written();
    const all = [...given].sort((a, b) => order.indexOf(a.signal) - order.indexOf(b.signal));
    const fine = now === 'whole' || this.doc.answer && onlyBegun(this.doc, this.doc.answer);
    const of = fine ? '' : now === 'rest' && !this.doc.whole ? say('care-of-rest') : all.length ? say('care-of-before') : say('care-unknown');
    const made = JSON.stringify([all, of]);
    if (made === this.made) return;
    this.made = made;
    this.why.textContent = of;
    this.why.hidden = !of;
    this.list.replaceChildren(...all.map(one => el('li', {className: one.signal}, signalMark(one.signal), ' ', el('b', {dir: 'auto'}, one.text), one.do && [' ', el('span', {dir: 'auto'}, one.do)])));
    this.element.hidden = all.length === 0 && !of;
  }

  #written() {
    if (this.doc.kind !== 'pet') return [];
    const list = this.doc.at(['alert']);
    return (Array.isArray(list) ? list : []).filter(isTable)
      .map(one => ({signal: order.includes(one.level) ? one.level : 'warning', text: firstText(one.text), do: firstText(one.do)}));
  }
}
