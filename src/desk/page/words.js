// The desk's words in the salon's language, from the catalogues' [desk].

let words = {};
let language = 'en';
let counts = new Intl.PluralRules('en');
let apart = part => part;

export function speak(all, tag, rightToLeft = false) {
  words = all;
  language = tag;
  counts = new Intl.PluralRules(tag);
  // On a page from right to left what is put in keeps its own order (U+2068, U+2069: UAX #9).
  apart = rightToLeft ? part => typeof part === 'string' && part ? `\u2068${part}\u2069` : part : part => part;
}
export const spoken = () => language;

/** The program's own explanations are English, and only shown where the page is; those of how a file
 *  is written are for who reads files. */
export const helpHere = text => language.startsWith('en') && !/\.toml|_|[{}]|\b(table|heading|see below)\b/.test(text ?? '') ? text : '';
export const has = key => key in words;

/** The text of a key with its parts put in: {0}, and {0, plural, one {# day} other {# days}}. */
export function say(key, ...parts) {
  const text = words[key];
  return text === undefined ? key : fill(text, parts);
}

function fill(text, parts) {
  let out = '';
  for (let i = 0; i < text.length; ++i) {
    if (text[i] !== '{') { out += text[i]; continue; }
    const end = closing(text, i);
    out += part(text.slice(i + 1, end), parts);
    i = end;
  }
  return out;
}

function closing(text, from) {
  let depth = 0;
  for (let i = from; i < text.length; ++i) {
    if (text[i] === '{') ++depth;
    else if (text[i] === '}' && --depth === 0) return i;
  }
  return text.length;
}

function part(inside, parts) {
  const counted = inside.match(/^(\d+), plural, ([^]*)$/);
  if (!counted) return apart(parts[Number(inside)] ?? '');
  const number = Number(parts[Number(counted[1])]);
  const forms = {};
  for (let rest = counted[2].trim(); rest;) {
    const open = rest.indexOf('{');
    const end = closing(rest, open);
    forms[rest.slice(0, open).trim()] = rest.slice(open + 1, end);
    rest = rest.slice(end + 1).trim();
  }
  const form = forms[`=${number}`] ?? forms[counts.select(number)] ?? forms.other ?? '';
  return fill(form.replaceAll('#', number.toLocaleString(language)), parts);
}

/** The first of several keys that there is, else the word itself. */
export const firstOf = (keys, otherwise) => { const key = keys.find(has); return key ? words[key] : otherwise; };

/** What a key of a file is called; the same key may read otherwise in one table. */
export const keyName = (table, name) =>
  firstOf([`key-${table}-${name}`, `key-${name}`, `word-coat-${name}`, `word-${name}`].map(dashed), name.replaceAll('_', ' '));
export const tableName = name => firstOf([dashed(`table-${name}`)], name);
/** A word that a file may hold ("double", "after clipping"), as people say it. */
export const choiceName = (key, word) => firstOf([`word-${key}-${word}`, `word-${word}`].map(dashed), word);

const dashed = key => key.replace(/[ _]/g, '-').toLowerCase();

/** "2026-11-24" as the language writes it. */
export function dayText(date, long = false) {
  const [y, m, d] = date.split('-').map(Number);
  const day = new Date(Date.UTC(y, m - 1, d));
  return Number.isNaN(day.getTime()) ? date
    : day.toLocaleDateString(language, {timeZone: 'UTC', day: 'numeric', month: long ? 'long' : 'short', year: 'numeric', ...(long && {weekday: 'long'})});
}
