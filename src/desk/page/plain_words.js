// Faults in the words of the salon, and in its language. The program's own are English and speak of
// how files are written; what has no words here is shown in those.

import {keyName, say} from './words.js';
import {keyAt, languageName, nameOfPet} from './desk.js';
import {isMoment} from './values.js';

/** Codes of the program that are one sentence here. */
const plainCodes = {
  'before-birth': 'fault-before-birth', 'visit-before-birth': 'fault-before-birth', 'day-after-today': 'fault-later', 'visit-after-today': 'fault-later',
  'collect-before': 'fault-collect', 'no-dilution': 'fault-dilution', 'next-visit': 'fault-next', 'next-not-later': 'fault-next', 'next-far': 'fault-next-far', 'next-closed': 'closed-day',
  'weighed-without-weight': 'fault-no-weight', 'weight-jump': 'fault-weight', 'no-such-day': 'fault-no-day', 'two-tools': 'fault-tools', 'no-tool': 'fault-tools', 'leave-with-tool': 'fault-leave',
  'unknown-vaccination': 'fault-vaccination', 'did-of-done': 'fault-did', 'photo-missing': 'fault-photo', 'photo-path': 'fault-photo', 'stale-acceptance': 'fault-stale',
};
const quantities = ['length', 'lengths', 'mass', 'volume', 'duration', 'days', 'minutes'];
const unquoted = text => (text ?? '').replace(/^"(.*)"$/, '$1');
const shown = value => value === undefined ? '' : isMoment(value) ? value.date ?? value.time : Array.isArray(value) ? value.join(', ') : typeof value === 'object' ? '' : String(value);

/** Is it said as files are written, and no help to who does not write them? */
export const ofFiles = text => /\b(key|keys|table|array|TOML|section|heading|braces|folder)\b|\[\[?\w|\.toml\b|\w\/|[a-z]_[a-z]|`|(^|\s)--[a-z]|\w = |= \w|, errno/i.test(text ?? '');
/** What people wrote beside what was taken out; the program's own remark goes without a word. */
export const remarks = lost => (lost ?? []).map(one => one.replace(/^#\s*/, '')).filter(one => one !== '' && one !== 'take this line out when the visit is done');

/** {text, path} in plain words, or {} where there are none. `add`: a language that is wanted. */
export function plainly(doc, {code, message, hint, path, level}) {
  if (code === 'missing-key') {
    const name = /^'?`?([\w-]+)/.exec(message)?.[1], there = path ? keyAt(doc.kind, [...path, name]) : null;
    return there ? {path: [...path, name], text: say('fault-missing', keyName(there.table?.name ?? '', name))} : {};
  }
  if (code === 'other-language') {
    const [page, own] = [...message.matchAll(/'([\w-]+)'/g)].map(found => found[1]);
    return page && own ? {text: say('fault-language', languageName(page), languageName(own)), add: {path, language: page.split('-')[0]}} : {};
  }
  const booked = clash(code, message);
  if (booked) return {text: booked};
  const there = path?.length ? keyAt(doc.kind, path) : null, value = shown(doc.at(path ?? []));
  // A number and its unit stay on one line.
  const example = unquoted(there?.key.example).replace(/(\d) (?=[a-z])/g, '$1\u00A0');
  switch (code) {
    case 'no-pet': return {text: say('pet-none', value)};
    case 'blank': return {text: say('fault-blank')};
    case 'no-audience': return {text: say('fault-audience')};
    case 'visit-unfinished': return {text: say('fault-unfinished', /\d{4}-\d\d-\d\d/.exec(message)?.[0] ?? '')};
    case 'visit-unwritten': return {text: say('fault-unwritten', /\d{4}-\d\d-\d\d/.exec(message)?.[0] ?? '')};
    case 'bad-quantity': return {text: say('fault-quantity', value, example)};
    case 'out-of-bounds': return there?.key.bounds ? {text: say('fault-bounds', value, plainBounds(there.key.bounds))} : {};
    case 'wrong-type':
      if (!there || value === '') return {};
      return {text: quantities.includes(there.key.kind) ? say('fault-quantity', value, example) : say('fault-word', value, example)};
    default:
  }
  if (level === 'error' && /^no .+ '/.test(message) && value) return {text: say('fault-unknown', value)};
  const plain = plainCodes[code];
  if (plain) return {text: say(plain)};
  if (ofFiles(message)) return {text: say(level === 'error' ? 'fault-here' : 'fault-look')};
  return ofFiles(hint) ? {hint: ''} : {};
}

/** What cannot go as a day is booked, by the names of the pets. */
function clash(code, message) {
  const found = {
    'groomer-twice': /^(.+) has (\S+) and (\S+) at once$/, 'booked-twice': /^(\S+) is booked twice at once$/,
    'booked-short': /^(\S+) is booked from (\S+) to (\S+), and (.+) are expected$/,
  }[code]?.exec(message);
  if (!found) return code === 'booked-closed' ? say('closed-day') : null;
  const [, a, b, c, d] = found;
  return code === 'groomer-twice' ? say('clash-at-once', a, nameOfPet(b), nameOfPet(c)) : code === 'booked-twice' ? say('clash-self', nameOfPet(a)) : say('clash-short', nameOfPet(a), b, c, d);
}

/** "at least 1 mm and at most 40 mm" as 1 mm – 40 mm. */
const plainBounds = text => text.replace(/^(at least|more than|from) (.+?) (and (at most|under)|to) (.+)$/, '$2 – $5');
