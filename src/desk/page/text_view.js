// The file itself, for who wants it. Faults are marked in the text and listed under it.

import {button, el} from './dom.js';
import {say} from './words.js';
import {desk} from './desk.js';

export class TextView {
  constructor(doc) {
    this.doc = doc;
    this.area = el('textarea', {className: 'file', spellcheck: false, wrap: 'off', readOnly: desk.look, dir: 'ltr', autocapitalize: 'off', aria: {label: say('text-of', doc.file), describedby: 'text-faults'},
      oninput: () => { doc.type(this.area.value); this.#mark([]); }, onscroll: () => this.#follow()});
    this.marks = el('pre', {className: 'marks', dir: 'ltr', aria: {hidden: true}});
    this.lines = el('pre', {className: 'lines', aria: {hidden: true}});
    this.list = el('ul', {className: 'faults', id: 'text-faults'});
    this.element = el('div', {className: 'text-view'}, el('p', {className: 'file-name'}, doc.file), el('div', {className: 'sheet-of-text'}, this.lines, this.marks, this.area), this.list);
    this.take();
  }

  /** The text as it stands with all changes, unless one was typed here. */
  take() {
    const text = this.doc.typed ?? (this.doc.steps.length ? this.doc.answer?.text : null) ?? this.doc.text;
    if (this.area.value !== text) this.area.value = text;
    this.#mark(this.doc.answer?.faults ?? []);
  }

  /** At its first letter; a browser would begin at the last. */
  begin() {
    this.area.setSelectionRange(0, 0);
    this.area.scrollTop = 0;
    this.area.focus({preventScroll: true});
  }

  tell(answer) {
    if (this.doc.typed === null) this.take();
    this.#mark(answer.faults);
    this.list.replaceChildren(...answer.faults.map(fault => el('li', {className: `fault ${fault.level}`},
      button(say('line', fault.line), () => this.#select(fault), {className: 'quiet'}), ' ', el('b', {}, say(`level-${fault.level}`)), ' ', el('span', {lang: 'en'}, `${fault.message} ${fault.hint ?? ''}`))));
  }

  #mark(faults) {
    const text = this.area.value;
    this.lines.textContent = Array.from({length: text.split('\n').length}, (_, i) => i + 1).join('\n');
    const spans = faults.filter(fault => fault.line).map(fault => this.#span(text, fault)).sort((a, b) => a[0] - b[0]);
    const out = [];
    let from = 0;
    for (const [begin, end] of spans) {
      if (begin < from) continue;
      out.push(text.slice(from, begin), el('mark', {}, text.slice(begin, end)));
      from = end;
    }
    this.marks.replaceChildren(...out, text.slice(from), '\n');
    this.#follow();
  }

  /** Columns count characters from 1; the end is behind the last. */
  #span(text, {line, column, end_line: endLine, end_column: endColumn}) {
    const starts = [0];
    for (let i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', i + 1)) starts.push(i + 1);
    const place = (l, c) => Math.min((starts[l - 1] ?? text.length) + Math.max(0, c - 1), text.length);
    const begin = place(line, column), end = place(endLine || line, endColumn || column + 1);
    return [begin, Math.max(end, Math.min(begin + 1, text.length))];
  }

  #select(fault) {
    const [begin, end] = this.#span(this.area.value, fault);
    this.area.focus();
    this.area.setSelectionRange(begin, end);
  }
  #follow() {
    this.marks.scrollTop = this.lines.scrollTop = this.area.scrollTop;
    this.marks.scrollLeft = this.area.scrollLeft;
  }
}
