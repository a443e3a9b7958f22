// What stands in a file, as values: strings, numbers, flags, {date}, {time}, lists and tables.

export const isTable = value => value !== null && typeof value === 'object' && !Array.isArray(value) && !isMoment(value);
export const isMoment = value => value !== null && typeof value === 'object' && Object.keys(value).length === 1 &&
  (typeof value.date === 'string' && /^\d{4}-\d\d-\d\d$/.test(value.date) || typeof value.time === 'string');

export function same(a, b) {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const keys = Object.keys(a);
  return Array.isArray(a) === Array.isArray(b) && keys.length === Object.keys(b).length &&
    keys.every(key => key in b && same(a[key], b[key]));
}

/** What stands at a path; undefined where nothing does. */
export const at = (tree, path) => path.reduce((value, step) => value?.[step], tree);

export const pathKey = path => JSON.stringify(path);

/** The tree with the edits in their order. The given one stays as it is. */
export function applied(tree, edits) {
  let out = structuredClone(tree ?? {});
  for (const edit of edits) apply(out, edit);
  return out;
}

function apply(tree, {op, path, value}) {
  let holder = tree;
  for (let i = 0; i + 1 < path.length; ++i) {
    if (holder[path[i]] === undefined) {
      if (op === 'remove') return;
      holder[path[i]] = typeof path[i + 1] === 'number' ? [] : {};
    }
    holder = holder[path[i]];
    if (holder === null || typeof holder !== 'object') return;
  }
  const last = path.at(-1);
  if (op === 'set') holder[last] = structuredClone(value);
  else if (op === 'append') (holder[last] ??= []).push(structuredClone(value));
  else if (op === 'rename') {
    // In its place: the order of a file is the person's.
    const all = Object.entries(holder);
    for (const key of Object.keys(holder)) delete holder[key];
    for (const [key, one] of all) holder[key === last ? value : key] = one;
  } else if (Array.isArray(holder)) holder.splice(last, 1);
  else delete holder[last];
}

/** A few words on what a value holds, for a closed section. */
export function digest(value, called = (_, word) => word, key = '') {
  if (value === undefined || value === null || value === false || value === true) return '';
  if (Array.isArray(value)) return value.map(one => digest(one, called, key)).filter(Boolean).join(' · ');
  if (isMoment(value)) return value.date ?? value.time.slice(0, 5);
  if (typeof value === 'object') return Object.entries(value).map(([name, one]) => digest(one, called, name)).filter(Boolean).join(' · ');
  return apart(String(called(key, value)));
}
/** On a page from right to left each value keeps its own order (U+2068, U+2069: UAX #9). */
const apart = text => document.documentElement.dir === 'rtl' && text ? `\u2068${text}\u2069` : text;

/** Places are written "left hock", "left-hock" or "left_hock"; all are one. */
export const placeKey = name => name.toLowerCase().replace(/[-_ ]+/g, ' ').trim();

/** The table's own key for a place, however it is spelled there; undefined if it has none. */
export const placeIn = (table, name) =>
  isTable(table) ? Object.keys(table).find(key => placeKey(key) === placeKey(name)) : undefined;
