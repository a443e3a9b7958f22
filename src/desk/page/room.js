// Who has room on a day: each groomer's free spans between its bookings, to choose from.

import {button, el} from './dom.js';
import {say} from './words.js';
import {desk} from './desk.js';

const minutesOf = time => { const [, h, m] = /^(\d\d?):(\d\d)/.exec(time ?? '') ?? []; return h === undefined ? null : Number(h) * 60 + Number(m); };
const clock = minutes => `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
const sameName = (a, b) => a.trim().toLowerCase() === b.trim().toLowerCase();

/** Spans in which a groomer has nobody, [from, until]; the last has no end. `work`: [from, until] of
 *  what is booked, in the order of its hours; `opens`: the day's first hour. */
export function freeSpans(work, opens) {
  const out = [];
  let from = opens;
  for (const [begin, end] of work) {
    if (begin > from) out.push([from, begin]);
    from = Math.max(from, end);
  }
  return [...out, [from, null]];
}

/** The field of a booking's groomer, with who has room beneath it. */
export function groomerField({doc, path, put, labelled}, made) {
  if (path[0] !== 'booking' || desk.look) return made;
  const list = el('ul', {className: 'room', aria: {label: `${labelled}: ${say('room')}`}});
  const choose = name => {
    const input = made.querySelector('input');
    input.value = name;
    input.focus();
    put(name);
    tell();
  };
  // Of who has somebody already it is told only while they are at it.
  const show = () => { list.hidden = !list.firstChild || Boolean(doc.at([...path.slice(0, 2), 'groomer'])) && !made.contains(document.activeElement); };
  const tell = () => {
    const bookings = (doc.at(['booking']) ?? []).map((one, i) => ({...one, i}));
    const me = bookings[path[1]], at = minutesOf(me?.at?.time ?? me?.at);
    const spans = bookings.filter(one => one.i !== path[1] && one.groomer && minutesOf(one.at?.time ?? one.at) !== null).map(one => {
      const begin = minutesOf(one.at?.time ?? one.at), planned = doc.expected?.[one.pet], end = minutesOf(one.collect?.time ?? one.collect);
      return {groomer: one.groomer, begin, end: planned ? begin + planned : end ?? begin};
    });
    const opens = Math.min(...spans.map(one => one.begin), at ?? Infinity);
    const names = [...desk.salon.groomers ?? []];
    for (const one of spans) if (!names.some(name => sameName(name, one.groomer))) names.push(one.groomer);
    const needs = doc.expected?.[me?.pet];
    const rows = names.map(name => {
      const work = spans.filter(one => sameName(one.groomer, name)).sort((a, b) => a.begin - b.begin).map(one => [one.begin, one.end]);
      const free = freeSpans(work, opens);
      const now = at === null ? null : free.find(([from, until]) => from <= at && (until === null || at < until));
      const left = now ? now[1] === null ? Infinity : now[1] - at : 0;
      const fits = at !== null && left > 0 && (!needs || left >= needs);
      return {name, fits, left, free, at};
    }).sort((a, b) => b.fits - a.fits || b.left - a.left);
    const spanText = ([from, until]) => until === null ? say('from-time', clock(from)) : `${clock(from)}–${clock(until)}`;
    const words = ({free, left}) => at === null || !Number.isFinite(opens) ? say('room-free', free.map(spanText).join(', '))
      : left === 0 ? say('room-busy', clock((free.find(([from]) => from > at) ?? free.at(-1))[0]))
        : left === Infinity ? say('room-rest', clock(at)) : say('room-left', left, clock(at));
    const now = !spans.length && at === null ? [] : rows.map(one => el('li', {className: one.fits ? 'fits' : ''}, button(one.name, () => choose(one.name), {aria: {label: say('choose-groomer', one.name)}}), ' ', words(one)));
    // What is the same stays: a button that is pressed while an answer comes must still be there.
    if (now.map(one => one.outerHTML).join() !== [...list.children].map(one => one.outerHTML).join()) list.replaceChildren(...now);
    show();
  };
  tell();
  for (const type of ['answer', 'change']) {
    const heard = () => { if (list.isConnected) tell(); else if (list.shown) doc.removeEventListener(type, heard); };
    doc.addEventListener(type, heard);
  }
  queueMicrotask(() => { list.shown = list.isConnected; });
  made.addEventListener('focusin', show);
  made.addEventListener('focusout', () => setTimeout(show));
  made.append(list);
  return made;
}
