// A number and its unit, in two fields; what is no plain number ("10 lb 3 oz", "1/2 in") in one.

import {el, select} from './dom.js';
import {firstOf, say} from './words.js';

const units = {
  length: ['mm', 'cm', 'in'], mass: ['kg', 'g', 'lb'], volume: ['ml', 'l', 'fl oz'],
  duration: ['min', 'h', 's'], days: ['days', 'weeks', 'months'], minutes: ['min', 'h'],
};
const usual = {
  metric: {length: 'mm', mass: 'kg', volume: 'ml', duration: 'min', days: 'weeks', minutes: 'min'},
  us: {length: 'in', mass: 'lb', volume: 'fl oz', duration: 'min', days: 'weeks', minutes: 'min'},
};
/** Other spellings that files have for the same unit. */
const same = {day: 'days', week: 'weeks', wk: 'weeks', wks: 'weeks', month: 'months', inch: 'in', lbs: 'lb', minutes: 'min', hour: 'h', hours: 'h'};

/** A number alone: 4.6, 4,6, 1/2, 1 1/2, 1½. */
export const number = /^([0-9]+([.,][0-9]+)?|([0-9]+ )?[0-9]+\/[0-9]+|[0-9]*[¼½¾])$/;

const unitName = unit => firstOf([`unit-${unit.replace(' ', '-')}`], unit);

/** "4.6 kg" as its number and unit; null if it is not so plain. */
export function parts(text, kind) {
  const found = String(text).trim().match(/^([0-9]+(?:[.,][0-9]+)?)\s*([a-zA-Z ]+)$/);
  if (!found) return null;
  const unit = same[found[2].trim()] ?? found[2].trim();
  return units[kind].includes(unit) ? {number: found[1], unit} : null;
}

export function quantityControl({id, value, key, put, system, described}) {
  const kind = key.kind;
  const now = value === undefined ? {number: '', unit: usual[system][kind]} : parts(value, kind);
  const plainNumber = kind === 'minutes' && typeof value === 'number' ? {number: String(value), unit: 'min'} : now;
  const input = el('input', {
    id, type: 'text', dir: 'auto', inputMode: plainNumber ? 'decimal' : 'text', autocomplete: 'off',
    value: plainNumber ? plainNumber.number : String(value ?? ''), ...described,
    oninput: () => say_(),
  });
  const unit = plainNumber && select(units[kind].map(u => [u, unitName(u)]), plainNumber.unit, () => say_(), {className: 'unit', aria: {label: say('unit-of')}});
  // Whoever writes the unit too means what is written.
  const say_ = () => {
    const text = input.value.trim();
    if (text === '') put(undefined);
    else if (!unit || !number.test(text)) put(text);
    else if (kind === 'minutes' && unit.value === 'min' && typeof value !== 'string' && /^[0-9]+$/.test(text)) put(Number(text));
    else put(`${text} ${unit.value}`);
  };
  return el('div', {className: 'quantity'}, input, unit);
}
