// The form of a file, made from the keys that the program reads by. A section for each table;
// what is empty waits as a button at the end.

import {button, el, fresh, select} from './dom.js';
import {helpHere, keyName, say, tableName} from './words.js';
import {desk, isOpenKey, meant, nameOfPet, placeLabel, placeOptions, sidedLabel} from './desk.js';
import {digest, isMoment, isTable, pathKey, placeIn} from './values.js';
import {bladeOptions, field} from './fields.js';
import {steady} from './steady.js';

/** Sections that stand open when a file is opened; all others show in a line what they hold. */
const openAtFirst = new Set(['pet', 'alert', 'trim', 'came_in', 'finding', 'booking', 'salon', 'style', 'photo']);
/** What can hurt has its place in the form before anything is written there. */
const always = {pet: 'alert', visit: 'finding'};
/** Keys that have a control of their own, beside the form. */
const elsewhere = {visit: ['unfinished', 'not_done', 'did']};
/** Keys that a new table offers at once; the rest are a press away. */
const first = {
  alert: ['level', 'text', 'do'], finding: ['region', 'side', 'what', 'advised', 'for'], photo: ['when', 'caption'],
  booking: ['at', 'collect', 'pet', 'groomer'], consent: ['to', 'by', 'on'], identity: ['name', 'breed', 'coat', 'weight', 'born', 'sex', 'colour'],
  owner: ['name', 'phone', 'language', 'collects'], 'a visit\'s file': ['date', 'not_done', 'did', 'groomer', 'minutes', 'weight', 'next', 'told'],
  'came-in': ['behaviour', 'helped', 'skin'], trim: ['style', 'visit_every'],
  salon: ['name', 'phone', 'email', 'address', 'language', 'units', 'closed', 'rules', 'contact_on_card'], 'product-used': ['product', 'mixed'], 'product-use': ['product', 'dwell'],
};

export class Form {
  /** `pick(place)` shows a place on the dog; `extra` makes more for a section (photos to drop). */
  constructor(doc, {pick, extra = {}}) {
    this.doc = doc;
    this.pick = pick;
    this.extra = extra;
    this.folded = new Map();
    this.opened = new Set();
    this.named = new Map();
    this.element = el('fieldset', {className: 'form', disabled: desk.look, aria: {label: say('form')}});
    this.build();
    doc.addEventListener('change', event => event.detail.shape ? this.build() : this.retell());
    this.element.addEventListener('focusout', event => this.#left(event));
  }

  /** Whoever wrote into something new and goes on to something else is done with it. */
  #left({target, relatedTarget}) {
    const item = target.closest?.('.item[data-path]');
    if (!item || item.contains(relatedTarget) || !relatedTarget) return;
    const value = this.doc.at(JSON.parse(item.dataset.path));
    if (!this.doc.fresh.has(item.dataset.path) || !isTable(value) || Object.keys(value).length === 0) return;
    this.doc.fresh.delete(item.dataset.path);
    this.element.dispatchEvent(new Event('built'));
  }

  /** Fields that wait for their first word: the reason why a visit was not done. */
  asks(name) { return this.opened.has(pathKey([name])); }
  unask(...names) { for (const name of names) this.opened.delete(pathKey([name])); }
  ask(...names) {
    for (const name of names) this.opened.add(pathKey([name]));
    this.build();
    this.focus([names[0]]);
  }
  #elsewhere(name) {
    return elsewhere[this.doc.kind]?.includes(name) && (name === 'unfinished' || !this.asks(name) && this.doc.at([name]) === undefined && this.doc.at(['not_done']) === undefined);
  }

  /** Anew from the file as it is now; what had the focus has it again. */
  build() { steady(() => this.#build()); }
  #build() {
    const focus = this.element.contains(document.activeElement) && document.activeElement.closest('[data-path]')?.dataset.path;
    const given = desk.formats[this.doc.kind];
    const format = {...given, keys: given.keys.filter(key => !this.#elsewhere(key.name))};
    const single = format.keys.filter(key => key.kind !== 'table' && key.kind !== 'tables');
    const sections = format.keys.filter(key => key.kind === 'table' || key.kind === 'tables');
    const used = sections.filter(key => this.#used(key)), free = sections.filter(key => !this.#used(key));
    this.element.replaceChildren(...[
      single.length > 0 && el('section', {className: 'top'}, this.#keys([], {...format, keys: single})),
      ...used.map(key => this.#section(key)),
      free.length > 0 && el('div', {className: 'more sections', role: 'group', aria: {label: say('add-section')}}, el('span', {}, say('add-section')),
        free.map(key => button(tableName(key.name), () => this.#start(key), {className: 'add', title: helpHere(key.doc)}))),
    ].filter(Boolean));
    if (focus && document.activeElement === document.body && !this.#again(focus)) this.focus(JSON.parse(focus), false);
    this.element.dispatchEvent(new Event('built'));
  }

  /** Unfolds what holds a path and puts the focus on its field. */
  focus(path, scroll = true) {
    for (let end = path.length; end > 0; --end) {
      const found = this.element.querySelector(`[data-path="${CSS.escape(pathKey(path.slice(0, end)))}"]`);
      if (!found) continue;
      for (let up = found; up; up = up.parentElement.closest('details')) if (up.matches('details')) up.open = true;
      const target = found.matches('button') ? found : found.querySelector('input, select, textarea, button, summary');
      target?.focus({preventScroll: !scroll});
      if (scroll) found.scrollIntoView({block: 'center'});
      return;
    }
  }

  /** Is there still a field of that path, for what holds the focus to be put back into? */
  #again(key) { return this.element.querySelector(`[data-path="${CSS.escape(key)}"]`); }

  retell() {
    for (const one of this.element.querySelectorAll('[data-digest]')) one.textContent = digest(this.doc.at(JSON.parse(one.dataset.digest)), meant);
    for (const one of this.element.querySelectorAll('[data-title]')) one.textContent = this.#title(JSON.parse(one.dataset.title));
  }

  #used(key) {
    const value = this.doc.at([key.name]);
    return value !== undefined || always[this.doc.kind] === key.name || this.opened.has(pathKey([key.name])) || (key.name in this.extra && this.extra[key.name].always);
  }

  #start(key) {
    this.opened.add(pathKey([key.name]));
    this.folded.set(key.name, true);
    if (key.kind === 'tables') this.doc.append([key.name], {});
    else this.build();
    this.focus([key.name]);
    this.element.querySelector(`[data-path="${CSS.escape(pathKey([key.name]))}"] .value :is(input, select, textarea)`)?.focus();
  }

  #section(key) {
    const path = [key.name], open = this.folded.get(key.name) ?? openAtFirst.has(key.name);
    return el('details', {className: 'section', open, data: {path: pathKey(path)}, ontoggle: event => this.folded.set(key.name, event.target.open)},
      el('summary', {}, el('h2', {}, tableName(key.name)), el('span', {className: 'digest', dir: 'auto', data: {digest: pathKey(path)}}, digest(this.doc.at(path), meant))),
      el('div', {className: 'said'}),
      key.kind === 'table' ? this.#keys(path, key.table) : this.#items(path, key),
      this.extra[key.name]?.make(this.doc));
  }

  #items(path, key) {
    const list = this.doc.at(path) ?? [];
    if (!Array.isArray(list)) return field(this.doc, path, {...key, kind: 'text'}, null, () => el('span'));
    return [...list.map((_, i) => this.#item([...path, i], key, i)),
      key.name === 'photo' ? null : button(say('one-more-table', tableName(`one-${key.name}`)), () => {
        this.doc.append(path, {});
        this.focus([...path, this.doc.at(path).length - 1]);
      }, {className: 'add'})];
  }

  #item(path, key, i) {
    const title = this.#title(path), level = this.doc.at([...path, 'level']);
    return el('div', {className: 'item', role: 'group', aria: {label: title}, data: {path: pathKey(path), ...(level && {level})}},
      el('h3', {className: 'title', data: {title: pathKey(path)}}, title), el('div', {className: 'said'}), this.#keys(path, key.table),
      button(say('remove', `${tableName(`one-${key.name}`)} ${i + 1}`), () => this.doc.remove(path), {className: 'remove'}));
  }
  /** What an element of a list is called: whom and when it is about, as far as it says. */
  #title(path) {
    const one = this.doc.at(path), name = tableName(`one-${path[0]}`);
    const parts = !isTable(one) ? [] : path[0] === 'booking' ? [one.at && digest(one.at), one.pet && nameOfPet(one.pet)]
      : path[0] === 'finding' ? [one.region && sidedLabel(one.region, one.side)] : [];
    const said = parts.filter(Boolean).join(' ');
    return said ? `${name}: ${said}` : `${name} ${path[1] + 1}`;
  }

  /** The keys of a table: those that say something, then a button for each of the rest. */
  #keys(path, table, {hide = []} = {}) {
    const value = this.doc.at(path), nothing = !isTable(value) || Object.keys(value).length === 0;
    const start = first[table.name] ?? (nothing ? table.keys.map(key => key.name) : []);
    const keys = table.keys.filter(key => !hide.includes(key.name));
    const open = key => this.opened.has(pathKey([...path, key.name]));
    const has = key => isTable(value) && key.name in value && !(table.others && isOpenKey(table, key.name, value[key.name]) && isTable(value[key.name]));
    const shown = keys.filter(key => has(key) || key.required || open(key) || start.includes(key.name));
    const rest = keys.filter(key => !shown.includes(key) && !(isTable(value) && key.name in value));
    return [
      shown.map(key => field(this.doc, [...path, key.name], key, table, (...all) => this.#nested(...all))),
      table.others && this.#others(path, table),
      rest.length > 0 && el('div', {className: 'more'}, rest.map(key => button(keyName(table.name, key.name), () => this.#open(path, key), {className: 'add', title: helpHere(key.doc)}))),
    ];
  }

  #open(path, key) {
    this.opened.add(pathKey([...path, key.name]));
    this.build();
    this.focus([...path, key.name]);
  }

  /** A table in braces. `word` is what stands there in place of one: a product's short key. */
  #nested(doc, path, key, word) {
    if (typeof doc.at(path) !== 'string') return el('div', {className: 'braces', role: 'group'}, this.#keys(path, key.table, {hide: key.hide}));
    const rest = key.table.keys.filter(one => !(key.hide ?? []).includes(one.name));
    return el('div', {className: 'more'}, rest.slice(0, 2).map(one => button(keyName(key.table.name, one.name), () => {
      this.opened.add(pathKey([...path, one.name]));
      doc.put(path, {product: word}, {shape: true, merge: null});
      this.focus([...path, one.name]);
    }, {className: 'add'})));
  }

  /** Keys beside those listed: places, blades, names of the salon's own. */
  #others(path, table) {
    const value = this.doc.at(path), info = table.others.value;
    const names = isTable(value) ? Object.keys(value).filter(name => isOpenKey(table, name, value[name])) : [];
    // Named, and nothing said of it yet: a vaccination that waits for its day.
    for (const name of this.named.get(pathKey(path)) ?? []) if (!names.includes(name)) names.push(name);
    const places = table.others.which === 'places';
    const rows = names.map(name => places && info.kind === 'table'
      ? this.#place([...path, name], name)
      : el('div', {className: 'other'}, field(this.doc, [...path, name], {...info, name, required: false}, {name: '', label: placeLabel(name)}, (...all) => this.#nested(...all)),
        button('×', () => this.#unname(path, name), {className: 'quiet', aria: {label: say('remove', places ? placeLabel(name) : name)}})));
    return [...rows, this.#addOther(path, table, names)];
  }

  /** A place is changed on the dog; here stands what its line says. */
  #place(path, name) {
    const value = this.doc.at(path);
    return el('button', {type: 'button', className: 'place', data: {path: pathKey(path)}, onclick: () => this.pick(name)},
      el('span', {className: 'name'}, placeLabel(name)), el('span', {className: 'digest', dir: 'auto', data: {digest: pathKey(path)}}, digest(value, meant)), el('span', {className: 'said'}));
  }

  #addOther(path, table, names) {
    const {which, value: info} = table.others;
    if (which === 'names') {
      const id = fresh(), list = fresh('l');
      const input = el('input', {id, type: 'text', list, autocomplete: 'off', placeholder: say('name-of-it')});
      const add = () => { const name = input.value.trim(); if (name && !names.includes(name)) this.#addNamed(path, name, info); };
      input.addEventListener('change', add);
      return el('div', {className: 'row adding'}, el('label', {className: 'name', htmlFor: id}, say('one-more')), el('div', {className: 'value'}, input),
        el('datalist', {id: list}, (info.kind === 'vaccination' ? desk.vaccinations : []).filter(name => !names.includes(name)).map(value => el('option', {value}))));
    }
    const options = (which === 'blades' ? bladeOptions() : placeOptions()).filter(([name]) => !placeIn(this.doc.at(path), name));
    return select([['', say(which === 'blades' ? 'add-blade' : 'add-place')], ...options], '', name => {
      if (which === 'places' && info.kind === 'table') this.pick(name);
      else this.#addNamed(path, name, info);
    }, {className: 'quiet', aria: {label: `${say(which === 'blades' ? 'add-blade' : 'add-place')}: ${keyName('', path.at(-1))}`}});
  }

  #addNamed(path, name, info) {
    const key = pathKey(path), waits = info.kind === 'vaccination';
    if (waits) {
      this.named.set(key, [...this.named.get(key) ?? [], name]);
      this.build();
    } else this.doc.change([{op: 'set', path: [...path, name], value: info.kind === 'table' ? {} : ''}], {shape: true});
    this.focus([...path, name]);
  }
  #unname(path, name) {
    const key = pathKey(path), there = this.doc.at([...path, name]) !== undefined;
    this.named.set(key, (this.named.get(key) ?? []).filter(one => one !== name));
    if (there) this.doc.remove([...path, name]); else this.build();
  }
}
