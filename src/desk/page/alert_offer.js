// What a visit says of how the pet behaved belongs on its card, where the next one to hold it reads
// it: a bite is asked about, all else can be put there.

import {refused} from './refused.js';
import {button, el} from './dom.js';
import {say} from './words.js';
import {desk, nameOfPet} from './desk.js';
import {ask} from './server.js';
import {isTable, same} from './values.js';

const path = ['came_in', 'behaviour'];
const textsOf = value => typeof value === 'string' ? [value] : isTable(value) ? Object.entries(value).filter(([name]) => name !== 'for').map(([, text]) => text).filter(text => typeof text === 'string') : [];

const wordsOf = text => text.toLowerCase().replaceAll('’', "'").match(/[\p{L}\p{M}]+(?:'[\p{L}\p{M}]+)*/gu) ?? [];
const listed = key => say(key).split('|').map(one => one.trim());

/** Do words tell of a bite, as the page's language has them? A star stands for more letters; what
 *  takes a bite back ("never bites") stands beside it, between the same points and commas. */
export function tellsOfBite(text) {
  const bites = listed('bite-words'), not = listed('bite-not');
  const isBite = word => bites.some(one => one.endsWith('*') ? word.startsWith(one.slice(0, -1)) : word === one);
  return text.split(/[.,;:!?،؛]/).some(clause => {
    const words = wordsOf(clause);
    return words.some((word, i) => isBite(word) && !not.some(one => {
      const all = one.split(' '), last = all.at(-1) === word ? i : i - 1;  // "a bit" is none by itself
      return words.slice(Math.max(0, last - all.length + 1), last + 1).join(' ') === one || words[i + 1] === one;
    }));
  });
}

export class AlertOffer {
  /** `view`: go and status, as of doc_view.js. */
  constructor(doc, view) {
    Object.assign(this, {doc, view, done: null, declined: null});
    this.element = el('div', {className: 'alert-offer', role: 'status', hidden: true});
  }

  /** Beside the words it is about; where those have no field now, nowhere. */
  stand(form) {
    const row = form.querySelector(`[data-path='${JSON.stringify(path)}']`);
    if (row && row.nextElementSibling !== this.element) row.after(this.element);
  }

  tell() {
    const value = this.doc.at(path), texts = textsOf(value), words = texts.join(' ').trim();
    const known = (this.doc.safe?.alerts ?? []).some(one => texts.some(text => text && one.text.includes(text)));
    const how = !words || desk.look ? 'none' : this.done ? 'done' : known ? 'known' : tellsOfBite(words) && this.declined !== words ? 'ask' : 'may';
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

  /** It goes into the pet's own file at once, as the card is made of that. */
  async #put() {
    const {for: whom, ...texts} = isTable(this.doc.at(path)) ? this.doc.at(path) : {text: this.doc.at(path)};
    const helped = this.doc.at(['came_in', 'helped']), plain = Object.keys(texts).length === 1 && 'text' in texts ? texts.text : texts;
    const alert = {level: 'warning', text: plain, ...(typeof helped === 'string' && helped && {do: helped})};
    await this.#change(() => [{op: 'append', path: ['alert'], value: alert}], () => { this.done = alert; });
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
