// What a visit says of how the pet behaved belongs on its card, where the next one to hold it reads
// it: a bite is asked about wherever it is written, all other behaviour can be put there.

import {refused} from './refused.js';
import {button, el} from './dom.js';
import {say} from './words.js';
import {desk, nameOfPet, sidedLabel} from './desk.js';
import {ask} from './server.js';
import {tellsOfBite} from './told_words.js';
import {isTable, pathKey, same} from './values.js';

const behaviour = ['came_in', 'behaviour'];
const textsOf = value => typeof value === 'string' ? [value] : isTable(value) ? Object.entries(value).filter(([name]) => name !== 'for').map(([, text]) => text).filter(text => typeof text === 'string') : [];

/** An offer at each text that tells of a bite, and at the behaviour. */
export class AlertOffers {
  /** `view`: go and status, as of doc_view.js; `forms()`: where fields stand, the nearest to the eyes first. */
  constructor(doc, view, forms) { Object.assign(this, {doc, view, forms, all: new Map()}); }

  tell() {
    const findings = this.doc.at(['finding']);
    const paths = [behaviour, ['not_done'], ...(Array.isArray(findings) ? findings.map((_, i) => ['finding', i, 'what']) : [])];
    for (const path of paths) {
      const key = pathKey(path);
      if (!this.all.has(key)) this.all.set(key, new AlertOffer(this.doc, this.view, path));
    }
    for (const [key, one] of this.all) {
      if (paths.some(path => pathKey(path) === key)) { one.tell(); continue; }
      one.element.remove();
      this.all.delete(key);
    }
    this.stand();
  }
  stand() { for (const one of this.all.values()) one.stand(this.forms()); }
}

class AlertOffer {
  constructor(doc, view, path) {
    Object.assign(this, {doc, view, path, done: null, doneOf: null, declined: null});
    this.element = el('div', {className: 'alert-offer', role: 'status', hidden: true});
  }

  /** Beside the words it is about; where those have no field now, nowhere. */
  stand(forms) {
    const row = forms.map(form => !form.hidden && form.querySelector(`[data-path='${pathKey(this.path)}']`)).find(Boolean);
    if (!row) this.element.remove();
    else if (row.nextElementSibling !== this.element) row.after(this.element);
  }

  tell() {
    const value = this.doc.at(this.path), texts = textsOf(value), words = texts.join(' ').trim();
    const known = (this.doc.safe?.alerts ?? []).some(one => texts.some(text => text && one.text.includes(text)));
    const how = !words || desk.look ? 'none' : this.done && (this.#usual() || this.doneOf === words) ? 'done' : known ? 'known'
      : tellsOfBite(words) && this.declined !== words ? 'ask' : this.#usual() ? 'may' : 'none';
    const made = `${how} ${how === 'done' ? '' : words}`;
    if (made === this.made) return;
    this.made = made;
    this.element.hidden = how === 'none' || how === 'known';
    this.element.classList.toggle('ask', how === 'ask');
    const put = className => button(say('offer-do'), () => this.#put(), {className});
    this.element.replaceChildren(...{
      none: [], known: [],
      ask: [el('p', {}, say('offer-ask')), put('main'), ' ', button(say('offer-no'), () => { this.declined = words; this.tell(); })],
      may: [put('quiet')],
      done: [el('p', {}, say('offer-done', nameOfPet(this.doc.pet)), ' ', button(say('undo'), () => this.#back(), {aria: {label: `${say('undo')}: ${say('offer-do')}`}}))],
    }[how]);
  }

  #usual() { return this.path === behaviour; }

  /** It goes into the pet's own file at once, as the card is made of that. */
  async #put() {
    const value = this.doc.at(this.path), {for: whom, ...texts} = isTable(value) ? value : {text: value};
    const found = this.path[0] === 'finding' && this.doc.at(this.path.slice(0, 2)), where = found && found.region ? `${sidedLabel(found.region, found.side)}: ` : '';
    const helped = this.doc.at(['came_in', 'helped']), plain = Object.keys(texts).length === 1 && 'text' in texts ? where + texts.text : texts;
    const alert = {level: 'warning', text: plain, ...(typeof helped === 'string' && helped && {do: helped})};
    await this.#change(() => [{op: 'append', path: ['alert'], value: alert}], () => { this.done = alert; this.doneOf = textsOf(value).join(' ').trim(); });
  }
  async #back() {
    await this.#change(pet => {
      const at = (pet.tree?.alert ?? []).findLastIndex(one => same(one, this.done));
      return at < 0 ? [] : [{op: 'remove', path: ['alert', at]}];
    }, () => { this.done = null; });
  }
  async #change(edits, then) {
    try {
      const pet = await ask('open', {kind: 'pet', id: this.doc.pet}), all = edits(pet);
      if (all.length) await ask('save', {kind: 'pet', id: this.doc.pet, mark: pet.mark, edits: all});
      then();
      this.tell();
      this.element.querySelector('button')?.focus({preventScroll: true});
      this.doc.preview.now();
    } catch (problem) { this.view.status(refused(problem), true); }
  }
}
