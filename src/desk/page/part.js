// The chosen part of the dog: its line of the trim, what must not happen there, and at a visit how it
// came in, what was done otherwise, how it left and what was found.

import {button, el, fresh, radios} from './dom.js';
import {choiceName, keyName, say} from './words.js';
import {desk, meant, placeLabel, placeOf, sidedLabel, stock} from './desk.js';
import {steady} from './steady.js';
import {digest, isTable, placeIn, placeKey} from './values.js';
import {workControls, row} from './work.js';
import {field} from './fields.js';

export class Part {
  constructor(doc, dog) {
    this.doc = doc;
    this.dog = dog;
    this.name = null;
    this.blocks = new Map();
    this.begun = {}; // a tool of which nothing is chosen yet
    this.element = el('section', {className: 'part-lines', hidden: true, onchange: () => { if (this.held) { this.held = false; this.build(); } }});
  }

  /** `name` is as a file has it: "ears", "left hock", "head". */
  show(name, focus = false) {
    if (this.name !== name) {
      this.blocks.clear();
      this.begun = {};
    }
    this.name = name;
    this.held = false;
    this.build();
    if (focus) this.element.querySelector('h2')?.focus({preventScroll: false});
  }
  close() {
    this.element.hidden = true;
    this.name = null;
  }

  build() { steady(() => this.#build()); }
  #build() {
    if (!this.name || this.held) return;
    const focus = this.element.contains(document.activeElement) && fieldOf(document.activeElement);
    const part = this.dog.part(placeOf(this.name)?.of.name);
    this.element.hidden = false;
    this.element.replaceChildren(
      el('header', {}, el('h2', {tabIndex: -1}, placeLabel(this.name)), el('p', {className: 'line'}, part?.line ?? ''),
        button('×', () => this.close(), {className: 'quiet', aria: {label: say('close-part')}})),
      el('fieldset', {disabled: desk.look}, this.#side(), ...(this.doc.kind === 'visit' ? this.#visit(part) : this.#trim(part, ['trim']))));
    if (focus) focusField(this.element, focus);
    this.element.dispatchEvent(new Event('built'));
  }

  /** Both, or one of the two, where they differ. */
  #side() {
    const place = placeOf(this.name);
    if (!place?.of.sides) return null;
    const {name, left_name: left, right_name: right} = place.of;
    return row(say('which-side'), radios(say('which-side'), [[name, say('both')], [left, say('left')], [right, say('right')]], place.name, to => {
      this.dog.choose(to);
      this.show(to);
    }));
  }

  /** The length pulled on the dog: as by the slider. */
  pull(mm, first) {
    const slider = this.element.querySelector('.length:not(:disabled)');
    if (!slider) return;
    if (mm === null) {
      slider.dispatchEvent(new Event('change', {bubbles: true}));
      return;
    }
    if (first) this.pulledFrom = Number(slider.value);
    slider.value = this.pulledFrom + mm;
    slider.dispatchEvent(new Event('input'));
  }

  #trim(part, path) {
    const table = this.doc.at(path), key = placeIn(table, this.name);
    const own = key !== undefined && isTable(table[key]);
    // What holds for the place now: its own line, else that of what is round it.
    const wide = placeOf(this.name)?.of.name;
    const around = placeIn(table, wide ?? '');
    const now = own ? table[key] : around !== undefined ? table[around] : part?.work ?? {};
    const {why, ...rest} = isTable(now) ? now : {};
    const target = [...path, key ?? this.name];
    return [workControls(rest, own, (work, options) => this.#write(target, own, work, options), {path: target, begun: this.begun, again: () => this.build(), ...(!this.#styled() && {back: say('not-said')})}),
      ...(this.doc.kind === 'style' ? [] : [own && this.#styled() && el('p', {className: 'differs'}, say('differs')), this.#safety()])];
  }
  /** Is there a style that a line could differ from? */
  #styled() { return this.doc.kind === 'pet' && Boolean(this.doc.at(['trim', 'style'])); }

  /** One value where the line is in the file already; else the whole line. */
  #write(target, own, work, options) {
    const old = own ? this.doc.at(target) : undefined;
    // What is being dragged or typed must not be made anew under the hand.
    this.held = Boolean(options.merge);
    if (work === undefined) this.doc.change([{op: 'remove', path: target}], {shape: true});
    else if (!isTable(old)) this.doc.put(target, work, {shape: true, merge: options.merge ? `all of ${target}` : null});
    else {
      const keys = new Set([...Object.keys(old), ...Object.keys(work)]);
      const edits = [...keys].filter(key => JSON.stringify(old[key]) !== JSON.stringify(work[key]) && !(key === 'why' && work.why === undefined))
        .map(key => work[key] === undefined ? {op: 'remove', path: [...target, key]} : {op: 'set', path: [...target, key], value: work[key]});
      // Another tool is another line: at one go, as half of it would be a fault.
      if (edits.length > 1) this.doc.change([{op: 'set', path: target, value: {...work, ...(old.why !== undefined && {why: old.why})}}], {shape: true});
      else if (edits.length) this.doc.change(edits, {merge: options.merge && `${target} ${options.merge}`, shape: options.shape});
    }
    if (options.shape || !own && !options.merge) this.build();
  }

  /** Alerts that name this place, and a new one. */
  #safety() {
    const alerts = (this.doc.at(['alert']) ?? []).map((alert, i) => ({alert, i})).filter(({alert}) => (Array.isArray(alert?.avoid) ? alert.avoid : []).some(name => placeKey(name) === placeKey(this.name)));
    const id = fresh();
    const text = el('input', {id, type: 'text', autocomplete: 'off'});
    let level = 'caution', ban = true;
    const add = () => this.doc.append(['alert'], {level, text: text.value.trim() || say('mark-text', placeLabel(this.name)), ...(ban && {avoid: [this.name]})});
    return el('details', {className: 'mark'}, el('summary', {}, say('mark-place')),
      alerts.map(({alert, i}) => el('p', {}, el('b', {}, say('no-tool')), ' ', isTable(alert.text) ? Object.values(alert.text)[0] : alert.text, ' ',
        button(say('lift-ban'), () => this.#lift(alert, i), {className: 'quiet'}))),
      row(say('mark-what'), radios(say('mark-what'), [[true, say('no-tool')], [false, say('sore')]], true, to => { ban = to; })),
      el('div', {className: 'row'}, el('label', {className: 'name', htmlFor: id}, say('mark-why')), el('div', {className: 'value'}, text)),
      row(keyName('alert', 'level'), radios(keyName('alert', 'level'), ['danger', 'warning', 'caution', 'notice'].map(word => [word, choiceName('level', word)]), level, to => { level = to; })),
      button(say('mark-do'), add));
  }
  #lift(alert, i) {
    const rest = alert.avoid.filter(name => placeKey(name) !== placeKey(this.name));
    this.doc.change([rest.length ? {op: 'set', path: ['alert', i, 'avoid'], value: rest} : {op: 'remove', path: ['alert', i, 'avoid']}], {shape: true});
  }

  #visit(part) {
    const came = desk.formats.visit.keys.find(key => key.name === 'came_in').table.others.value.table;
    const left = desk.formats.visit.keys.find(key => key.name === 'went_out').table.others.value.table;
    const done = this.doc.at(['done']), key = placeIn(done, this.name), own = key !== undefined && isTable(done[key]);
    const target = ['done', key ?? this.name];
    const why = desk.formats.visit.keys.find(key => key.name === 'done').table.others.value.table.keys.find(one => one.name === 'why');
    const at = path => { const table = this.doc.at(path), key = placeIn(table, this.name); return key && table[key]; };
    return [
      this.#block('place-came-in', at(['came_in']), this.#state(['came_in'], came, ['mats', 'length', 'skin', 'note'])),
      this.#block('place-done', own ? done[key] : undefined, [workControls(own ? done[key] : part?.work ?? {}, own, (work, options) => this.#write(target, own, work, options), {back: say('as-planned'), path: target, begun: this.begun, again: () => this.build()}),
        own && field(this.doc, [...target, 'why'], why, {name: 'work-done'}, () => el('span'))]),
      this.#block('place-left', at(['went_out']), this.#state(['went_out'], left, ['length', 'note'])),
      this.#block('place-found', true, this.#finding()),
    ];
  }
  /** Open where it says something, or was opened before. */
  #block(title, value, inside) {
    const open = this.blocks.get(title) ?? value !== undefined;
    return el('details', {className: 'block', open, ontoggle: event => this.blocks.set(title, event.target.open)},
      el('summary', {}, el('h3', {}, say(title)), value !== true && el('span', {className: 'digest'}, digest(value, meant))), inside);
  }

  #state(path, table, names) {
    const key = placeIn(this.doc.at(path), this.name) ?? this.name;
    // "ears" and "eyes" may hold words alone: those are changed in the form.
    if (typeof this.doc.at([...path, key]) === 'string') return el('p', {}, this.doc.at([...path, key]));
    return names.map(name => field(this.doc, [...path, key, name], table.keys.find(one => one.name === name), table, () => el('span')));
  }

  #finding() {
    const list = this.doc.at(['finding']) ?? [], place = placeOf(this.name);
    const region = place?.of.name ?? this.name, side = place?.side ?? 'both';
    const table = desk.formats.visit.keys.find(key => key.name === 'finding').table;
    const mine = list.map((finding, i) => ({finding, i})).filter(({finding}) => placeKey(finding.region ?? '') === placeKey(region) && (side === 'both' || [side, 'both', undefined].includes(finding.side)));
    const sore = stock('finding').find(phrase => phrase.key === 'sore-skin')?.text;
    const add = what => {
      this.doc.append(['finding'], {region, ...(place?.of.sides && {side: side === 'both' ? this.dog.side : side}), ...(what && {what})});
      const first = this.element.querySelector(`.block:last-child .item:last-of-type ${what ? '[type=radio]' : 'textarea'}`);
      first?.focus({preventScroll: true});
      // What the owner reads grew above it meanwhile: out from under the state at the window's foot.
      first?.scrollIntoView({block: 'nearest'});
    };
    return [mine.map(({i}) => el('div', {className: 'item'}, el('h4', {className: 'title'}, sidedLabel(list[i].region, list[i].side)), ['what', 'advised', ...(place?.of.sides ? [] : ['side']), 'for'].map(name => field(this.doc, ['finding', i, name], table.keys.find(one => one.name === name), table, () => el('span'))),
      button(say('remove', say('table-one-finding')), () => this.doc.remove(['finding', i]), {className: 'remove'}))),
    el('div', {className: 'more'}, button(say('found-here'), () => add(), {className: 'add'}), sore && button(say('sore-here'), () => add(sore), {className: 'add'}))];
  }
}

/** Which control of the part had the focus: by its place among them, as they are made anew. */
const fieldOf = element => {
  const all = [...element.closest('.part-lines').querySelectorAll('input, select, textarea, button, summary')];
  return {index: all.indexOf(element), id: element.getAttribute('aria-label') ?? element.type, radio: element.type === 'radio', path: element.closest('[data-path]')?.dataset.path};
};
function focusField(within, {index, path}) {
  const named = path && within.querySelector(`[data-path="${CSS.escape(path)}"] :is(input, select, textarea)`);
  (named ?? within.querySelectorAll('input, select, textarea, button, summary')[index])?.focus({preventScroll: true});
}
