// A file being changed: what can be done with it, the dog, the form, and the sheet beside it.

import {refused} from './refused.js';
import {button, el} from './dom.js';
import {dayText, say} from './words.js';
import {desk, nameOfPet, remember, toldNames} from './desk.js';
import {ask, print} from './server.js';
import {Dog} from './dog.js';
import {Part} from './part.js';
import {Form} from './form.js';
import {Sheet} from './sheet.js';
import {TextView} from './text_view.js';
import {photoDrop} from './photos.js';
import {styleList} from './styles.js';
import {showConflicts} from './conflicts.js';
import {tell, waits} from './faults.js';
import {plainly, remarks} from './plain_words.js';
import {Safety} from './safety.js';
import {bookMenu} from './book.js';
import {headStays} from './head.js';
import {doneBar, ownerReads} from './visit_state.js';
import {alike, rowOf, steady} from './steady.js';
import {AlertOffers} from './alert_offer.js';
import {visitName, Visits} from './visits.js';

export class DocView {
  /** `go(view, what)` changes the view; `status(text)` says something to everyone. */
  constructor(doc, {go, status}) {
    Object.assign(this, {doc, go, status});
    doc.looking = desk.look;
    this.listeners = new AbortController();
    this.rest = el('div', {className: 'rest', role: 'region', aria: {label: say('to-see-to')}, hidden: true});
    this.asText = doc.typed !== null || !doc.base;
    this.notice = el('div', {className: 'notices'});
    this.dog = new Dog(part => this.part.show(this.#nameOf(part), true), (mm, first) => this.part.pull(mm, first));
    this.dog.styled = () => doc.kind !== 'pet' || Boolean(doc.at(['trim', 'style']));
    this.part = new Part(doc, this.dog);
    this.safety = new Safety(doc);
    this.offer = doc.kind === 'visit' && new AlertOffers(doc, this, () => [this.part.element, this.form?.element].filter(Boolean));
    this.state = el('div', {className: 'of-visit'});
    this.form = doc.base && new Form(doc, {pick: name => this.pick(name), extra: {photo: {make: photoDrop, always: doc.kind === 'visit'}}});
    this.text = new TextView(doc);
    this.sheet = new Sheet(doc, () => this.title());
    this.left = el('div', {className: 'left'});
    const head = this.#head();
    headStays(head, this.listeners.signal);
    this.element = el('div', {className: `doc ${doc.kind}${doc.sheet ? '' : ' alone'}`}, head, this.notice, el('div', {className: 'columns'}, this.left, this.sheet.element));
    this.#arrange();
    this.#hear();
    if (this.offer && this.form) this.offer.tell();
    this.#state();
    if (doc.answer) this.#answer(doc.answer);
    doc.preview.now();
    if (doc.kind === 'day') this.#names();
  }

  close() { this.listeners.abort(); }

  title() {
    const pet = this.doc.at(['pet', 'name']);
    if (this.doc.kind === 'pet') return typeof pet === 'string' && pet ? pet : this.doc.id;
    if (this.doc.kind === 'visit') return say('visit-of', nameOfPet(this.doc.pet), visitName(this.doc.id));
    if (this.doc.kind === 'day') return dayText(this.doc.id, true);
    return this.doc.at([this.doc.kind, 'name']) ?? this.doc.id;
  }

  /** Shows a place on the dog and its line. */
  pick(name) {
    this.dog.choose(name);
    this.part.show(name, true);
    this.part.element.scrollIntoView({block: 'nearest'});
  }
  /** A pair has one line, unless this file has one for this side. */
  #nameOf(part) {
    const place = desk.places.find(one => one.name === part.place);
    if (!place?.sides) return part.place;
    const sided = this.dog.side === 'left' ? place.left_name : place.right_name;
    return part.own && part.own.at(-1).replace(/[-_]/g, ' ') === sided ? sided : place.name;
  }

  #hear() {
    const on = (type, work) => this.doc.addEventListener(type, work, {signal: this.listeners.signal});
    on('change', event => {
      if (event.detail.shape) this.part.build();
      else alike(this.doc, [this.part, this.form]);
      this.heading.textContent = this.title();
      this.#tellVisit();
      if (this.offer) this.offer.tell();
      this.#state();
    });
    on('answer', event => this.#answer(event.detail));
    on('language', event => this.#language(event.detail));
    on('problem', event => this.status(refused(event.detail), true));
    this.form?.element.addEventListener('built', () => { if (this.offer) this.offer.stand(); this.#tellVisit(); this.#again(); });
    this.part.element.addEventListener('built', () => { if (this.offer) this.offer.stand(); });
    this.form?.element.addEventListener('toggle', () => this.#again(), true);
    document.addEventListener('keydown', event => this.#keys(event), {signal: this.listeners.signal});
  }

  /** A booking is begun for a pet: when is the first that is asked. */
  book(pet) {
    const at = (this.doc.at(['booking']) ?? []).length;
    this.doc.append(['booking'], {pet});
    this.form?.focus(['booking', at, 'at']);
  }

  /** Names of whom the day has, which its file does not say. */
  async #names() {
    const day = await ask('day', {date: this.doc.id}).catch(() => null);
    day?.bookings.forEach(remember);
    toldNames();
    if (!day) return;
    this.form?.retell();
    this.#again();
  }

  #tellVisit() {
    if (this.doc.kind === 'day' && this.doc.id < desk.salon.today) this.state.replaceChildren(el('p', {className: 'past'}, el('b', {}, say('book-past'))));
    if (this.doc.kind !== 'visit' || !this.doc.base) return;
    steady(() => this.state.replaceChildren(...[doneBar(this.doc, this.form), ownerReads(this.doc)].filter(Boolean)));
  }

  /** A text is wanted in another language: there, and nowhere else. */
  #language({path, language}) {
    if (this.asText) this.#turn();
    this.form.focus(path);
    const row = rowOf(this.form.element, path);
    row?.querySelector('.texts')?.addLanguage?.(language);
  }

  #answer(answer) { steady(() => this.#show(answer)); }
  #show(answer) {
    this.safety.tell();
    if (this.offer) this.offer.tell();
    if (answer.name && answer.name !== '…') {
      remember({id: this.doc.pet, name: answer.name, owner: answer.owner});
      this.heading.textContent = this.title();
    }
    if (answer.figure) {
      this.dog.draw(answer.figure);
      const line = this.part.element.querySelector('.line');
      if (line) line.textContent = this.dog.part()?.line ?? '';
    }
    this.#again();
    this.text.tell(answer);
    const faults = answer.faults.filter(fault => fault.level === 'error' && !waits(this.doc, {...fault, ...plainly(this.doc, fault)})).length;
    const open = (this.doc.safe?.cautions ?? answer.cautions).filter(caution => !caution.accepted);
    const notices = open.filter(caution => caution.signal === 'notice').length, cautions = open.length - notices;
    this.count.textContent = [faults && say('count-faults', faults), cautions && say('count-cautions', cautions), notices && say('count-notices', notices)].filter(Boolean).join(' · ');
    this.count.hidden = !this.count.textContent;
    this.element.dataset.answered = Number(this.element.dataset.answered ?? 0) + 1;
  }
  /** What was said, at the fields as they are now. */
  #again() {
    for (const below of this.left.querySelectorAll('.said.below')) below.remove();
    if (this.form && this.doc.answer && !this.asText) tell([this.part.element, this.form.element], this.rest, this.doc, this.doc.answer);
  }

  #head() {
    this.heading = el('h1', {tabIndex: -1}, this.title());
    this.undo = button(say('undo'), () => this.doc.undo(), {title: say('undo-key')});
    this.redo = button(say('redo'), () => this.doc.redo(), {title: say('redo-key')});
    this.save = button(say('save'), () => this.#save(), {className: 'main', title: say('save-key')});
    this.toText = button(say('text'), () => this.#turn(), {});
    this.count = button('', () => this.#first(), {className: 'count', hidden: true});
    const pet = this.doc.kind === 'visit' && button(say('to-pet'), () => this.go('doc', {kind: 'pet', id: this.doc.pet}));
    return el('header', {className: 'doc-head'}, el('div', {className: 'name-line'}, this.heading, this.count),
      el('div', {className: 'tools', role: 'toolbar', aria: {label: say('tools')}},
        !desk.look && [this.undo, this.redo], button(say('sheet'), () => this.#toSheet(), {className: 'to-sheet'}), this.doc.kind === 'pet' && [new Visits(this.doc, this).element, !desk.look && bookMenu(this.doc, this)], pet, this.#away(), !desk.look && this.toText, button(say('print'), () => this.#print(), {hidden: this.doc.kind === 'salon' || this.doc.kind === 'style'}), !desk.look && this.save));
  }

  /** A visit can be put away, and back again: what was written is not lost. */
  #away() {
    if (this.doc.kind !== 'visit' || desk.look) return null;
    return button(say('put-away'), async () => {
      try {
        if (this.doc.dirty) await this.doc.save();
        await ask('away', {kind: 'visit', id: this.doc.id});
        await this.go('doc', {kind: 'pet', id: this.doc.pet});
        this.status(el('span', {}, say('put-away-done'), ' ', button(say('undo'), async () => {
          await ask('back', {kind: 'visit', id: this.doc.id});
          this.go('doc', {kind: 'visit', id: this.doc.id});
        })));
      } catch (problem) { this.status(refused(problem), true); }
    }, {className: 'quiet'});
  }

  #keys(event) {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if (key === 's') { event.preventDefault(); this.#save(); }
    // In the text view the browser's own undo is by letters, as in any editor.
    if (event.target.matches('.file')) return;
    if (key === 'z' && !event.shiftKey) { event.preventDefault(); this.doc.undo(); }
    if (key === 'y' || key === 'z' && event.shiftKey) { event.preventDefault(); this.doc.redo(); }
  }

  #state() {
    this.undo.disabled = this.doc.steps.length === 0 || this.asText;
    this.redo.disabled = this.doc.undone.length === 0 || this.asText;
    this.save.disabled = !this.doc.dirty;
    this.toText.textContent = this.asText ? say('form') : say('text');
    this.toText.disabled = this.asText && (this.doc.typed !== null || !this.doc.base);
    document.title = `${this.doc.dirty ? '• ' : ''}${say('desk')}`;
    this.status(this.doc.dirty ? say('unsaved') : '');
  }

  #arrange() {
    const drop = button(say('drop-text'), () => { this.doc.drop(); this.#turn(); }, {className: 'drop', hidden: this.doc.typed === null});
    this.doc.addEventListener('change', () => { drop.hidden = this.doc.typed === null; }, {signal: this.listeners.signal});
    this.#tellVisit();
    this.left.replaceChildren(...(this.asText ? [this.safety.element, this.text.element, drop]
      : [this.safety.element, this.state, this.rest, ['pet', 'visit', 'style'].includes(this.doc.kind) ? el('div', {className: 'on-dog'}, this.dog.element, this.part.element) : null, this.form.element,
        this.doc.kind === 'salon' && styleList(id => this.go('doc', {kind: 'style', id}))]).filter(Boolean));
  }
  #turn() {
    if (this.asText && (this.doc.typed !== null || !this.form)) return;
    this.asText = !this.asText;
    this.text.take();
    this.#arrange();
    this.#state();
    this.#again();
    if (this.asText) this.text.begin();
    else this.heading.focus();
  }

  /** On a narrow page the sheet stands under the form. */
  #toSheet() {
    this.sheet.element.scrollIntoView();
    this.sheet.tabs.querySelector('[aria-pressed=true]')?.focus({preventScroll: true});
  }

  #first() {
    const first = this.left.querySelector('.fault.error, .fault, .caution');
    const place = first?.closest('[data-path]');
    if (place) this.form.focus(JSON.parse(place.dataset.path));
    else first?.scrollIntoView({block: 'center'});
  }

  /** What was typed and means nothing yet, so that no file has it: "Pet: Marlo". */
  #notMeant() {
    return [...this.element.querySelectorAll('[role=combobox][aria-invalid=true]')].map(one => `${one.closest('.row').querySelector('.name').firstChild.textContent}: ${one.value}`).join(', ');
  }

  async #save() {
    if (desk.look) return;
    document.activeElement?.dispatchEvent(new Event('settle'));
    await Promise.all(this.doc.settling);
    const not = this.#notMeant();
    if (!this.doc.dirty) {
      if (not) this.status(say('saved-not', not), true);
      return;
    }
    try {
      const saved = await this.doc.save();
      this.text.take();
      this.left.querySelector('.drop')?.toggleAttribute('hidden', this.doc.typed === null);
      this.status(not ? say('saved-but', not) : remarks(saved.lost).length ? say('saved-without', remarks(saved.lost).join(' ')) : say('saved'), Boolean(not));
      this.notice.replaceChildren();
      this.element.dataset.saved = Number(this.element.dataset.saved ?? 0) + 1;
      if (!this.form && this.doc.base) this.go('doc', {kind: this.doc.kind, id: this.doc.id, again: true});
    } catch (problem) {
      if (problem.conflicts?.length) showConflicts(this.notice, this.doc, problem.conflicts, () => this.#save());
      else this.status(refused(problem), true);
    }
  }

  async #print() {
    try {
      if (this.doc.dirty && !desk.look) await this.#save();
      if (this.doc.dirty && !desk.look) return;
      const what = this.doc.kind === 'day' ? {day: this.doc.id, sheet: 'day'} : [{kind: this.doc.kind, id: this.doc.id, sheet: this.doc.sheet, language: this.doc.speaks}];
      const url = await print(what);
      this.status(el('span', {}, say('printed'), ' ', el('a', {href: url, target: '_blank', rel: 'noopener'}, say('open-pdf'))));
    } catch (problem) { this.status(refused(problem), true); }
  }

  /** Another window, an editor or a file synchroniser changed the file. */
  async changedElsewhere(mark) {
    if (mark === this.doc.mark) return;  // what was saved here
    if (!this.doc.dirty) {
      try {
        await this.doc.reload();
        this.text.take();
        this.status(say('changed-shown'));
      } catch { this.status(say('file-gone'), true); }
      return;
    }
    if (this.doc.elsewhere) return;
    this.doc.elsewhere = true;
    steady(() => this.notice.replaceChildren(el('p', {className: 'notice-line', role: 'status'}, this.doc.typed === null ? say('changed-elsewhere') : say('changed-elsewhere-text'))));
  }
}
