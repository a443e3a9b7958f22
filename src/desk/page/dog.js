// The dog as it will leave, drawn as on the sheets. Each part is a button: what it says is its name,
// the arrow keys go from one to the next.

import {button, el, svg} from './dom.js';
import {say} from './words.js';
import {placeOf} from './desk.js';

export class Dog {
  /** `picked(part)` is told which part was chosen, `dragged(mm)` by how much its length is pulled: the
   *  same as by the slider of its line, for whoever points; null when it is let go. */
  constructor(picked, dragged) {
    this.picked = picked;
    this.dragged = dragged;
    this.styled = () => true; // is there a style that a part could differ from?
    this.side = 'left';
    this.chosen = null;
    this.hint = el('p', {className: 'hint', aria: {hidden: true}}, say('dog-hint'));
    this.sides = el('div', {className: 'sides', role: 'group', aria: {label: say('dog-sides')}},
      ['left', 'right'].map(side => button(say(`dog-${side}`), () => this.turn(side), {data: {side}})));
    this.drawing = el('div', {className: 'drawing', onpointerdown: event => this.#grip(event)});
    this.element = el('div', {className: 'dog', hidden: true}, this.sides, this.drawing, this.hint);
  }

  turn(side) {
    this.side = side;
    this.draw(this.figure);
  }

  /** Chooses a part by the name that a file has for it, and turns the dog so that it is seen. */
  choose(name) {
    const place = placeOf(name);
    if (place && place.side !== 'both') this.side = place.side;
    this.chosen = place?.of.name ?? name;
    if (this.figure) this.draw(this.figure);
  }

  part(region = this.chosen) { return this.#view()?.parts.find(part => part.place === region); }
  #view() { return this.figure?.[this.side] ?? this.figure?.left ?? this.figure?.right; }

  draw(figure) {
    this.figure = figure;
    const view = this.#view();
    this.element.hidden = !view;
    if (!view) return;
    this.sides.hidden = !(figure.left && figure.right);
    for (const tab of this.sides.children) tab.setAttribute('aria-pressed', tab.dataset.side === this.side);
    const focused = this.drawing.contains(document.activeElement) ? document.activeElement.dataset.place : null;
    const stop = view.parts.some(part => part.place === this.chosen) ? this.chosen : view.parts[0]?.place;
    const parts = view.parts.map(part => this.#part(part, part.place === stop));
    this.drawing.replaceChildren(svg('svg', {viewBox: grown(view.view, 5), role: 'toolbar', 'aria-label': say(figure.left && figure.right ? `dog-from-${this.side}` : 'dog'), 'aria-orientation': 'horizontal', class: 'figure', onkeydown: event => this.#key(event)},
      view.lines ? svg('g', {'aria-hidden': 'true'}, view.lines.map(({d, fill, stroke, width}) => svg('path', {d, fill, stroke, 'stroke-width': width})))
        : svg('path', {d: view.outline, class: 'outline', 'aria-hidden': 'true'}),
      parts,
      svg('g', {'aria-hidden': 'true', class: 'marks'}, view.parts.flatMap(part => marks(part, this.styled())))));
    if (focused) this.drawing.querySelector(`[data-place="${focused}"]`)?.focus({preventScroll: true});
  }

  /** Up is longer. The drawing holds the pointer, as the part itself is drawn anew on the way. */
  #grip(event) {
    if (event.target.closest('[data-place]')?.dataset.place !== this.chosen) return;
    const from = event.clientY, end = new AbortController(), {signal} = end;
    let pulled = false;
    this.drawing.addEventListener('pointermove', move => {
      const by = from - move.clientY;
      if (!pulled && Math.abs(by) < 5) return;
      if (!pulled) this.drawing.setPointerCapture(event.pointerId);
      this.dragged(Math.round(by / 3), !pulled);
      pulled = true;
    }, {signal});
    for (const over of ['pointerup', 'pointercancel']) this.drawing.addEventListener(over, () => { end.abort(); if (pulled) this.dragged(null); }, {signal});
  }

  #part(part, stop) {
    const said = [part.banned && say('no-tool'), part.sore && say('sore'), part.finding && say('found')].filter(Boolean);
    const name = [`${part.label}: ${part.line || say('as-it-grows')}`, ...said].join('. ');
    const shape = part.d ? svg('path', {d: part.d}) : svg('circle', {cx: part.at?.[0] ?? 0, cy: part.at?.[1] ?? 0, r: 4});
    const tell = () => { this.told = part.place; this.hint.textContent = name; };
    // What is read under the dog is of now, also where its length was just pulled.
    if (part.place === this.told) this.hint.textContent = name;
    return svg('g', {
      role: 'button', tabindex: stop ? 0 : -1, 'aria-label': name, 'aria-pressed': part.place === this.chosen, 'data-place': part.place,
      class: `part${part.d ? '' : ' small'}`, onclick: () => this.#pick(part), onpointerenter: tell, onfocus: tell,
    }, shape);
  }

  #pick(part) {
    this.chosen = part.place;
    this.draw(this.figure);
    this.drawing.querySelector(`[data-place="${part.place}"]`)?.focus({preventScroll: true});
    this.picked(part, this.side);
  }

  #key(event) {
    const all = [...this.drawing.querySelectorAll('[data-place]')], now = all.indexOf(document.activeElement);
    if (now < 0) return;
    const to = {ArrowRight: now + 1, ArrowDown: now + 1, ArrowLeft: now - 1, ArrowUp: now - 1, Home: 0, End: all.length - 1}[event.key];
    if (to !== undefined) {
      event.preventDefault();
      const next = all[(to + all.length) % all.length];
      all[now].setAttribute('tabindex', -1);
      next.setAttribute('tabindex', 0);
      next.focus({preventScroll: true});
    } else if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      this.#pick(this.part(document.activeElement.dataset.place));
    }
  }
}

/** Room round the dog for what stands at its edge. */
function grown(view, by) {
  const [x, y, w, h] = view.split(' ').map(Number);
  return `${x - by} ${y - by} ${w + 2 * by} ${h + 2 * by}`;
}

/** The signs of the sheets: a diamond for what differs from the style, a struck circle for no tool, a
 *  triangle for sore, a square for what was found. */
function marks(part, styled) {
  const [x, y] = part.at ?? [];
  if (x === undefined) return [];
  const out = [];
  let shift = 0;
  const put = shape => { out.push(svg('g', {transform: `translate(${x + shift} ${y})`}, shape)); shift += 8; };
  if (part.own && styled) put([svg('path', {d: 'M0-3.4 3.4 0 0 3.4-3.4 0Z', class: 'ink'})]);
  if (part.banned) put([svg('circle', {r: 3.4, class: 'sign'}), svg('path', {d: 'M-2.4-2.4 2.4 2.4', class: 'strike'})]);
  if (part.sore) put([svg('path', {d: 'M0-3.6 3.8 3-3.8 3Z', class: 'sign'}), svg('path', {d: 'M0-1.2V1.2M0 2V2.4', class: 'strike thin'})]);
  if (part.finding) put([svg('rect', {x: -3, y: -3, width: 6, height: 6, class: 'sign'}), svg('path', {d: 'M-1.4 0H1.4M0-1.4V1.4', class: 'strike thin'})]);
  return out;
}
