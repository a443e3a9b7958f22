// What the program said at the start: the salon, the keys of its files, its drawer, its words.

import {isTable, placeKey} from './values.js';
import {choiceName} from './words.js';

export const desk = {heard: new EventTarget()};

/** Names of pets and their owners by the names of their files, as far as they were told. */
const pets = new Map();
export function remember({id, name, pet, owner}) {
  const known = pets.get(id) ?? {};
  pets.set(id, {name: name ?? pet ?? known.name ?? id, owner: owner ?? known.owner ?? ''});
}
export const nameOfPet = id => pets.get(id)?.name ?? id;
export const ownerOfPet = id => pets.get(id)?.owner ?? '';
export const toldNames = () => desk.heard.dispatchEvent(new Event('names'));

export function begin(started) {
  Object.assign(desk, started);
  // Each language in its own words, as those who look for it know it.
  desk.languages = desk.languages.map(one => one.id ?? one).map(id => ({id, name: new Intl.DisplayNames([id], {type: 'language'}).of(id.split('-')[0])}));
  desk.shears = desk.shears.map(one => one.id ?? one);
  desk.byPlace = new Map();
  for (const place of desk.places) {
    desk.byPlace.set(placeKey(place.name), {...place, side: 'both', of: place});
    if (!place.sides) continue;
    desk.byPlace.set(placeKey(place.left_name), {name: place.left_name, label: place.left, side: 'left', of: place});
    desk.byPlace.set(placeKey(place.right_name), {name: place.right_name, label: place.right, side: 'right', of: place});
  }
}

/** How a place that a file names is called on the page; the file's own word where it is none. */
export const placeLabel = name => desk.byPlace.get(placeKey(name))?.label ?? name;
/** The same of a region and the side that stands beside it, if one does. */
export function sidedLabel(region, side) {
  const place = placeOf(region);
  if (side !== 'left' && side !== 'right') return placeLabel(region);
  return place?.of.sides ? place.of[side] : `${placeLabel(region)}, ${choiceName('side', side)}`;
}
export const placeOf = name => desk.byPlace.get(placeKey(name));

/** [name, label] of all places, groups last; with the sides of those that have two. */
export function placeOptions({sides = true, groups = true} = {}) {
  const out = [];
  for (const place of desk.places) {
    if (place.group && !groups) continue;
    out.push([place.name, place.label]);
    if (sides && place.sides) out.push([place.left_name, place.left], [place.right_name, place.right]);
  }
  return out;
}

/** A word that a file holds under a key, as people call what it means. */
export function meant(key, value) {
  if (typeof value !== 'string') return value;
  if (key === 'pet') return nameOfPet(value);
  if (key === 'style' || key === 'extends') return desk.styles.find(one => one.id === value)?.name ?? value;
  if (['product', 'shampoo', 'conditioner'].includes(key)) return desk.products.find(one => one.id === value)?.name ?? value;
  if (key === 'rule') return desk.rules.find(one => one.id === value)?.text ?? value;
  if (['region', 'avoid', 'well'].includes(key)) return placeLabel(value);
  if (key === 'language') return languageName(value);
  return choiceName(key, value);
}
export const languageName = id => desk.languages.find(one => one.id === id || one.id.split('-')[0] === id.split('-')[0])?.name ?? id;

/** The table and the key that stand at a path of a kind of file; null where none is known. */
export function keyAt(kind, path) {
  let table = desk.formats[kind], key = null;
  for (const step of path) {
    if (typeof step === 'number') continue;
    if (!table) return null;
    key = table.keys.find(one => one.name === step) ?? table.others?.value ?? null;
    if (!key) return null;
    if (step !== path.findLast(one => typeof one !== 'number')) table = key.table;
  }
  return key && {key, table};
}

/** Phrases that stand ready for a text, in the salon's language. */
export const stock = kind => desk.stock.filter(phrase => phrase.kind === kind);

/** Is a table's key one of those it lists, or a place (name, blade) beside them? A few are both. */
export const isOpenKey = (table, name, value) =>
  table.others && (!table.keys.some(key => key.name === name) || (table.others.which === 'places' && isPlaceTable(value)));
const isPlaceTable = value => isTable(value) && ['mats', 'length', 'side', 'note', 'encircling'].some(key => key in value);
