// A day: who comes when to whom, what does not fit, what to mix, whom to ring, and all its cards.

import {refused} from './refused.js';
import {button, el, fresh, radios} from './dom.js';
import {dayText, say} from './words.js';
import {desk, remember} from './desk.js';
import {ask, print} from './server.js';
import {headStays} from './head.js';
import {signalMark} from './faults.js';

export class DayView {
  constructor({go, status}, date = desk.salon.today) {
    Object.assign(this, {go, status, date, by: 'time'});
    this.heading = el('h1', {tabIndex: -1});
    this.body = el('div', {className: 'day-body'});
    const id = fresh();
    this.picker = el('input', {type: 'date', id, value: date, onchange: () => { if (/^[0-9]{4}-/.test(this.picker.value)) this.to(this.picker.value); else this.picker.value = this.date; }});
    this.element = el('div', {className: 'day-view'},
      el('header', {className: 'doc-head'}, el('div', {className: 'name-line'}, this.heading),
        el('div', {className: 'tools', role: 'toolbar', aria: {label: say('tools')}},
          button(say('day-before'), () => this.move(-1)), el('label', {className: 'unseen', htmlFor: id}, say('day')), this.picker, button(say('day-after'), () => this.move(1)),
          this.change = button('', () => this.#change(), {hidden: desk.look}), button(say('print-day'), () => this.#print('day')), this.cards = button(say('print-day-cards'), () => this.#print('card'), {className: 'main'}))),
      radios(say('order'), [['time', say('by-time')], ['groomer', say('by-groomer')]], 'time', by => { this.by = by; this.draw(); }), this.body);
    this.ended = new AbortController();
    headStays(this.element.firstChild, this.ended.signal);
    this.to(date);
  }
  close() { this.ended.abort(); }
  focus() { this.heading.focus(); }

  move(days) {
    const [y, m, d] = this.date.split('-').map(Number);
    return this.to(new Date(Date.UTC(y, m - 1, d + days)).toISOString().slice(0, 10));
  }
  async to(date) {
    this.date = this.picker.value = date;
    this.heading.textContent = dayText(date, true);
    try {
      const day = await ask('day', {date});
      if (date !== this.date) return;
      this.day = day;
      [...day.bookings, ...day.ring ?? []].forEach(remember);
      this.draw();
    } catch (problem) { this.status(refused(problem), true); }
  }

  draw() {
    const {day} = this, none = day.bookings.length === 0 && !day.unread;
    this.change.textContent = say(day.exists === false ? 'start-day' : 'change-bookings');
    this.cards.disabled = none;
    const groups = this.by === 'time' ? [['', day.bookings]] : grouped(day.bookings);
    const list = (title, rows) => rows?.length > 0 && el('section', {className: 'beside-day'}, el('h2', {}, title), el('ul', {}, rows));
    this.body.replaceChildren(...[day.unread && el('p', {className: 'none'}, el('b', {}, day.unread)), day.closed && el('p', {className: 'none'}, say('closed-day')), none && !day.closed && el('p', {className: 'none'}, say('no-bookings')),
      ...groups.map(([groomer, bookings]) => bookings.length > 0 && this.#table(groomer, bookings)),
      el('div', {className: 'lists'}, list(say('day-mix'), day.mix?.map(one => el('li', {}, el('b', {}, one.product), ' ', one.amount))),
        list(say('day-ring'), day.ring?.map(ringRow)))].filter(Boolean));
    this.body.dataset.day = day.date;
  }

  #table(groomer, bookings) {
    const head = (key, className) => el('th', {scope: 'col', className}, say(key));
    return el('table', {className: 'bookings'}, el('caption', {className: groomer ? '' : 'unseen'}, groomer || (this.by === 'time' ? say('bookings') : say('nobody-yet'))),
      el('thead', {}, el('tr', {}, head('day-at'), head('day-pet'), head('day-groomer'), head('day-minutes', 'number'), head('day-collect'), head('day-alert'))),
      el('tbody', {}, bookings.map(one => [el('tr', {}, el('td', {className: 'when'}, one.time),
        el('td', {}, el('button', {type: 'button', className: 'link', onclick: () => this.go('doc', {kind: 'pet', id: one.id})}, one.pet), one.note && el('span', {className: 'note'}, one.note)),
        el('td', {}, one.groomer ?? ''), el('td', {className: 'number'}, this.#minutes(one)), el('td', {}, one.pickup ?? ''), el('td', {}, signalMark(one.gravest))),
      clashes(one).map(text => el('tr', {className: 'clash'}, el('td', {}), el('td', {colSpan: 5}, el('b', {}, say('clash')), ' ', text)))])));
  }
  /** What it takes of what is booked; too long is bold and says so. */
  #minutes({expected, minutes}) {
    if (!expected) return minutes ? `${minutes}` : '';
    const text = minutes ? say('minutes-of', Math.round(expected), minutes) : say('minutes', Math.round(expected));
    return minutes && expected > minutes ? el('b', {}, text) : text;
  }

  async #change() {
    try {
      if (this.day.exists === false) await ask('create', {kind: 'day', name: this.date, edits: []});
      this.go('doc', {kind: 'day', id: this.date});
    } catch (problem) { this.status(refused(problem), true); }
  }
  async #print(sheet) {
    try { await print({day: this.date, sheet}); }
    catch (problem) { this.status(refused(problem), true); }
  }
}

/** What cannot go as it is booked, in the order of its gravity; until when where anybody knows. */
function clashes(one) {
  const span = ({time, until}) => until ? `${time}–${until}` : say('from-time', time);
  const out = [];
  if (one.unknown) out.push(say('pet-none', one.pet));
  for (const other of one.clashes) out.push(other.id === one.id ? say('clash-twice', span(other)) : say('clash-with', one.groomer, other.pet, span(other)));
  if (one.overlap) out.push(say('clash-overlap', one.overlap.pet, one.overlap.time));
  return out;
}
function ringRow(one) {
  const number = one.phone?.replace(/[^+\d]/g, '');
  return el('li', {}, el('b', {}, one.pet), one.owner && `, ${one.owner}`, ' ', one.phone ? el('a', {href: `tel:${number}`, className: 'phone', dir: 'ltr'}, one.phone) : one.email && el('span', {dir: 'ltr'}, one.email), ' ', el('span', {dir: 'auto'}, one.why));
}

/** [groomer, bookings] in the order in which each first comes. */
function grouped(bookings) {
  const out = new Map();
  for (const one of bookings) out.set(one.groomer ?? '', [...out.get(one.groomer ?? '') ?? [], one]);
  return [...out];
}
