// What the program said at the start: the salon, the keys of its files, its drawer, its words.

import {isTable, placeKey} from './values.js';

export const desk = {};

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

/** Phrases that stand ready for a text, in the salon's language. */
export const stock = kind => desk.stock.filter(phrase => phrase.kind === kind);

/** Is a table's key one of those it lists, or a place (name, blade) beside them? A few are both. */
export const isOpenKey = (table, name, value) =>
  table.others && (!table.keys.some(key => key.name === name) || (table.others.which === 'places' && isPlaceTable(value)));
const isPlaceTable = value => isTable(value) && ['mats', 'length', 'side', 'note', 'encircling'].some(key => key in value);
