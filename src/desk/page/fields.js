// One control for each kind of key, as the reader has it (src/spec/keys.h).

import {button, el, fresh, radios, select} from './dom.js';
import {choiceName, has, helpHere, keyName, say} from './words.js';
import {desk, placeLabel, placeOptions} from './desk.js';
import {petField} from './pet_field.js';
import {isMoment, isTable, pathKey, placeKey} from './values.js';
import {quantityControl} from './quantity.js';
import {checkbox, freeText, textList} from './free_text.js';
import {birth} from './birth.js';
import {groomerField} from './room.js';

/** A key of a file with its label, control, help and what the program says of it.
 *  `nested(doc, path, key)` makes what stands in braces; form.js gives it. */
export function field(doc, path, key, table, nested) {
  const id = fresh(), value = doc.at(path);
  const labelled = table?.label ?? keyName(table?.name ?? '', key.name);
  const help = helpOf(table, key, `${id}-h`);
  const described = {'aria-describedby': `${help ? `${id}-h ` : ''}${id}-s`, ...(key.required && {required: true})};
  const put = (now, options) => doc.put(path, now, options);
  const made = control({doc, path, key, table, id, value, put, labelled, described, system: desk.salon.units, nested});
  const single = made.matches?.('input, select, textarea') ? made : made.querySelector?.(`#${id}`);
  const label = single ? el('label', {className: 'name', htmlFor: id}, labelled) : el('span', {className: 'name', id: `${id}-n`}, labelled);
  if (!single && !made.hasAttribute('aria-label')) made.setAttribute('aria-labelledby', `${id}-n`);
  if (!single && !made.hasAttribute('role')) made.setAttribute('role', 'group');
  // Beside the phrases that stand ready there is room for the help.
  const tools = help && made.querySelector?.(':scope > .tools');
  if (tools) tools.prepend(help);
  if (key.required) label.append(el('span', {className: 'must'}, say('must')));
  const row = el('div', {className: `row kind-${key.kind}`, data: {path: pathKey(path)}}, label, el('div', {className: 'value'}, made), !tools && help,
    el('div', {className: 'said', id: `${id}-s`}));
  row.remake = () => field(doc, path, key, table, nested);
  return row;
}

/** What the key is for. The reader's own words are English; a catalogue may have them otherwise. */
function helpOf(table, key, id) {
  if (key.name === 'mats') return null;  // its grades say it
  const own = [`help-${table?.name}-${key.name}`, `help-${key.name}`].map(k => k.replaceAll('_', '-')).find(has);
  if (own) return el('p', {className: 'help', id}, say(own));
  return helpHere(key.doc) ? el('p', {className: 'help', id}, key.doc) : null;
}

function control(all) {
  const {key, value} = all;
  // What does not fit its kind is shown as it stands, so that nothing a person wrote is hidden.
  const kind = fits(key.kind, value) ? key.kind : 'text';
  return (controls[kind] ?? controls.text)(all);
}

function fits(kind, value) {
  if (value === undefined) return true;
  if (kind === 'date') return isMoment(value) && 'date' in value;
  if (kind === 'time') return isMoment(value) || /^\d\d?:\d\d/.test(value);
  if (kind === 'flag') return typeof value === 'boolean';
  if (kind === 'choices' || kind === 'blades') return Array.isArray(value);
  return true;
}

const typed = ({id, value, put, described, key}, props = {}) => el('input', {
  id, type: 'text', dir: 'auto', autocomplete: 'off', value: shown(value), ...described, ...props,
  oninput: event => put(event.target.value === '' ? undefined : event.target.value),
  ...(key.name === 'phone' && {inputMode: 'tel'}), ...(key.name === 'email' && {inputMode: 'email'}),
});
const shown = value => value === undefined || value === null ? '' : isMoment(value) ? value.date ?? value.time : Array.isArray(value) ? value.join(', ') : typeof value === 'object' ? '' : String(value);

const number = all => typed(all, {
  inputMode: 'decimal', className: 'short',
  oninput: event => all.put(event.target.value === '' ? undefined : /^-?\d+(\.\d+)?$/.test(event.target.value) ? Number(event.target.value) : event.target.value),
});

const controls = {
  text: all => all.key.name === 'style' && all.table?.name === 'trim' || all.key.name === 'extends' ? styleControl(all) : all.key.name === 'pet' ? petField(all)
    : all.key.name === 'groomer' ? groomerField(all, withList(all, desk.salon.groomers)) : all.key.name === 'product' ? productName(all) : typed(all),
  texts: all => textList(all),
  free_text: freeText,
  staff_text: freeText,
  free_texts: all => textList({...all, area: true}),
  flag: ({id, value, put, key, labelled, described}) => checkbox(say('yes'), value === true, on => put(on ? true : undefined), {id, ...described, aria: {label: labelled}}),
  birth: all => birth(all),
  date: ({id, value, put, described}) => el('input', {id, type: 'date', value: value?.date ?? '', ...described,
    oninput: event => put(event.target.value ? {date: event.target.value} : undefined)}),
  time: ({id, value, put, described}) => el('input', {id, type: 'time', value: (value?.time ?? value ?? '').slice(0, 5).padStart(value ? 5 : 0, '0'), ...described,
    oninput: event => put(event.target.value ? {time: `${event.target.value}:00`} : undefined)}),
  number, whole: all => all.key.name === 'mats' ? matsControl(all) : number(all),
  choice: ({id, value, put, key, labelled, described, table}) => {
    if (key.name === 'for' && table?.name === 'finding') return audience({value, put, labelled, described});
    const ruled = word => desk.rules.find(rule => rule.id === word)?.text;
    const options = (key.words ?? []).map(word => [word, key.name === 'rule' && ruled(word) || choiceName(key.name, word)]);
    if (options.length > 5) return select([...(value === undefined ? [['', '–']] : []), ...options, ...(value !== undefined && !key.required ? [['', say('nothing')]] : [])],
      value ?? '', word => put(word || undefined), {id, ...described});
    return radios(labelled, [...options, ...(key.required ? [] : [[undefined, say('not-said')]])], value, word => put(word), described);
  },
  choices: ({value, put, key, described, called = word => choiceName(key.name, word)}) => {
    const now = new Set(value ?? []);
    return el('div', {className: 'checks', ...described}, (key.words ?? []).map(word => checkbox(called(word), now.has(word), on => {
      if (on) now.add(word); else now.delete(word);
      put(now.size ? key.words.filter(one => now.has(one)) : undefined);
    })));
  },
  length: quantityControl, mass: quantityControl, volume: quantityControl, duration: quantityControl, days: quantityControl, minutes: quantityControl,
  // One that the list does not have, such as en-GB, by its name too.
  language: ({id, value, put, described}) => select([['', '–'], ...desk.languages.map(one => [one.id, one.name]), ...otherLanguage(value)],
    desk.languages.find(one => one.id.split('-')[0] === value)?.id ?? value ?? '', code => put(code || undefined), {id, ...described}),
  place: ({id, value, put, described}) => select([...(value === undefined ? [['', '–']] : []), ...placeOptions({sides: false, groups: false})],
    known(value), name => put(name || undefined), {id, ...described}),
  places: ({id, value, put, labelled, described}) => {
    const list = Array.isArray(value) ? value : value === undefined ? [] : [value];
    const write = now => put(now.length ? now : undefined, {shape: true});
    return el('div', {className: 'chips'}, list.map((name, i) => el('span', {className: 'chip'}, placeLabel(name),
      button('×', () => write(list.filter((_, j) => j !== i)), {className: 'quiet', aria: {label: say('remove-item', labelled, placeLabel(name))}}))),
    select([['', say('add-place')], ...placeOptions()], '', name => write([...list, name]), {id, className: 'quiet', ...described}));
  },
  /** Pairs of places between which a line is meant to be seen. */
  seams: ({value, put, labelled, described}) => {
    const pairs = Array.isArray(value) ? value : [];
    const write = now => put(now.length ? now : undefined, {shape: true});
    const places = [['', say('choose-one')], ...placeOptions({sides: false, groups: false})];
    const row = (pair, i) => el('div', {className: 'quantity'}, [0, 1].map(at => select(places.slice(1), pair[at], name => write(pairs.with(i, pair.with(at, name))), {aria: {label: say('item-of', labelled, i + 1)}})),
      button('×', () => write(pairs.filter((_, j) => j !== i)), {className: 'quiet', aria: {label: say('remove-item', labelled, i + 1)}}));
    // A new pair is written when both of its places are chosen.
    const waiting = ['', ''];
    const more = button(say('one-more'), () => {
      const made = el('div', {className: 'quantity'}, [0, 1].map(at => select(places, '', name => {
        waiting[at] = name;
        if (waiting[0] && waiting[1]) write([...pairs, [...waiting]]);
      }, {aria: {label: say('item-of', labelled, pairs.length + 1)}})));
      more.replaceWith(made);
      made.firstChild.focus();
    }, {className: 'add', aria: {label: say('one-more-of', labelled)}});
    return el('div', {className: 'stacked', ...described}, pairs.map(row), more);
  },
  paper: ({id, value, put, key, described}) => select([['', '–'], ...(key.words ?? []).map(word => [word, word])], value ?? '', word => put(word || undefined), {id, ...described}),
  blades: all => controls.choices({...all, called: word => `#${word}`}),
  lengths: all => textList(all),
  blade: ({id, value, put, described}) => select([['', '–'], ...bladeOptions()], value ?? '', name => put(name || undefined), {id, ...described}),
  product: all => productControl(all),
  vaccination: ({doc, path, value, put, labelled, described}) => {
    const on = isMoment(value) ? value : value?.on, id = fresh();
    const write = (date, booster) => put(!date ? undefined : booster ? {on: date, booster: true} : date);
    return el('div', {className: 'quantity', ...described},
      el('input', {id, type: 'date', value: on?.date ?? '', aria: {label: `${labelled}: ${keyName('vaccination', 'on')}`},
        oninput: event => { if (event.target.value) write({date: event.target.value}, value?.booster); }}),
      checkbox(keyName('vaccination', 'booster'), value?.booster === true, again => write(on, again)));
  },
  focus: ({value, put, described, labelled}) => {
    const now = Array.isArray(value) ? [...value] : [0.5, 0.5];
    return el('div', {className: 'focus', ...described}, ['across', 'down'].map((way, i) => el('label', {}, say(`focus-${way}`),
      el('input', {type: 'range', min: 0, max: 1, step: 0.05, value: now[i], oninput: event => { now[i] = Number(event.target.value); put([...now]); }}))));
  },
  table: ({doc, path, key, nested}) => nested(doc, path, key),
};

function otherLanguage(value) {
  if (typeof value !== 'string' || desk.languages.some(one => one.id === value || one.id.split('-')[0] === value)) return [];
  try { return [[value, new Intl.DisplayNames([value], {type: 'language'}).of(value)]]; } catch { return []; }
}
const known = value => desk.places.find(place => placeKey(place.name) === placeKey(value ?? ''))?.name ?? value ?? '';
export const bladeOptions = () => desk.blades.map(blade => [blade.id, `#${blade.id} · ${blade.leaves}`]);

function withList(all, words) {
  const list = fresh('l');
  return el('div', {}, typed(all, {list}), el('datalist', {id: list}, (words ?? []).map(value => el('option', {value}))));
}
const styleControl = ({id, value, put, described}) => select([['', '–'], ...desk.styles.map(style => [style.id, style.name])], value ?? '', name => put(name || undefined), {id, ...described});
const productName = ({id, value, put, described}) => select([['', '–'], ...desk.products.map(one => [one.id, one.name])], value ?? '', name => put(name || undefined), {id, ...described});

function matsControl({value, put, labelled, described}) {
  return el('div', {}, radios(labelled, [0, 1, 2, 3, 4].map(grade => [grade, `${grade} ${say(`mats-${grade}`)}`]), value, grade => put(grade), {...described, className: 'radios stacked'}),
    value !== undefined && button(say('nothing'), () => put(undefined, {shape: true}), {className: 'quiet'}));
}

/** Whether the owner is told is asked, and never taken for granted. */
function audience({value, put, labelled, described}) {
  return el('div', {role: 'group', aria: {label: labelled}}, radios(labelled, [['everyone', say('owner-reads')], ['staff', say('owner-reads-not')]], value, word => put(word, {shape: true}), described),
    value === undefined && el('p', {className: 'ask'}, say('owner-ask')));
}

/** A product is its word in salon.toml, or a table that says more. */
function productControl({doc, path, id, key, value, put, described, nested}) {
  const name = isTable(value) ? value.product : value;
  const chosen = select([['', '–'], ...desk.products.map(one => [one.id, one.name])], name ?? '', one => {
    if (!one) put(undefined, {shape: true});
    else if (isTable(value)) doc.put([...path, 'product'], one);
    else put(one, {shape: true});
  }, {id, ...described});
  return el('div', {}, chosen, value !== undefined && nested(doc, path, {...key, hide: ['product']}, name));
}
