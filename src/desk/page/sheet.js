// The sheet beside the form, as it will print.

import {button, el, fresh, select} from './dom.js';
import {desk} from './desk.js';
import {say} from './words.js';
import {onlyBegun} from './faults.js';

export const sheetsOf = {pet: ['card', 'style', 'care', 'note'], visit: ['note-owner', 'note', 'care'], day: ['day'], salon: [], style: []};

export class Sheet {
  constructor(doc, name) {
    this.doc = doc;
    this.name = name;
    const kinds = sheetsOf[doc.kind];
    doc.sheet ??= kinds[0] ?? null;
    // Scrolled by keys too, where it is higher than the window.
    this.pages = el('div', {className: 'pages', tabIndex: 0, role: 'group', aria: {label: say('sheet')}});
    this.state = el('p', {className: 'stale-why', role: 'status'});
    this.tabs = el('div', {className: 'kinds', role: 'group', aria: {label: say('which-sheet')}}, kinds.map(kind => button(say(`sheet-${kind}`), () => this.choose(kind), {data: {kind}})));
    this.language = el('div', {className: 'sheet-language', hidden: true});
    this.element = el('section', {className: 'beside', aria: {label: say('sheet')}}, this.tabs, this.language, this.state, this.pages);
    this.urls = [];
    this.mark();
    doc.addEventListener('answer', event => this.show(event.detail));
  }

  choose(kind) {
    this.doc.show(kind);
    this.mark();
  }
  mark() {
    for (const tab of this.tabs.children) tab.setAttribute('aria-pressed', tab.dataset.kind === this.doc.sheet);
    this.#languages();
  }

  /** Who takes the pet home may read another language than its owner. */
  #languages() {
    this.language.hidden = !['care', 'note-owner'].includes(this.doc.sheet);
    if (this.language.hidden || this.language.firstChild) return;
    const id = fresh();
    this.language.append(el('label', {htmlFor: id}, say('sheet-language')), select([['', say('as-usual')], ...desk.languages.map(one => [one.id, one.name])], this.doc.speaks, language => {
      this.doc.speaks = language;
      this.doc.preview.now();
    }, {id}));
  }

  /** Pictures take the place of the last ones only when they are decoded, so that nothing flickers. */
  async show(answer) {
    const none = answer.pages.length === 0;
    // A sheet of before is told by words and a frame, and stays as easy to read as it was.
    this.pages.classList.toggle('stale', none);
    this.state.textContent = none && this.doc.sheet ? answer.faults.some(fault => fault.level === 'error') ? say(onlyBegun(this.doc, answer) ? 'sheet-waits' : this.urls.length ? 'sheet-stale' : 'sheet-none') : say('sheet-nothing') : '';
    if (none) return;
    const urls = answer.pages.map(page => URL.createObjectURL(new Blob([page.svg ?? page], {type: 'image/svg+xml'})));
    const title = `${say(`sheet-${this.doc.sheet}`)}: ${this.name()}`;
    const images = urls.map((src, i) => el('img', {src, alt: urls.length > 1 ? say('sheet-page', title, i + 1, urls.length) : title}));
    this.newest = urls;
    await Promise.allSettled(images.map(image => image.decode()));
    if (this.newest !== urls) { urls.forEach(URL.revokeObjectURL); return; }
    this.urls.forEach(URL.revokeObjectURL);
    this.urls = urls;
    this.pages.replaceChildren(...images);
    this.pages.dataset.shown = Number(this.pages.dataset.shown ?? 0) + 1;
    performance.mark('sheet-shown');
  }
}
