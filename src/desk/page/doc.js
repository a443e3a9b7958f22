// A file that is being changed: its text as it was opened, and the changes since, step by step.
// The program keeps none of this; the steps go with every preview and save, so that undo is to drop
// the last one, and a change made elsewhere to the same file survives.

import {ask} from './server.js';
import {applied, at, pathKey, same} from './values.js';
import {later} from './dom.js';

const previewAfter = 25, draftAfter = 400;  // milliseconds without a further change

export class Doc extends EventTarget {
  constructor(opened) {
    super();
    this.steps = [];
    this.undone = [];
    this.typed = null;      // the text view's text, where it was changed
    this.answer = null;     // the last preview
    this.sheet = null;
    this.elsewhere = false; // changed by another window since it was opened
    this.asked = 0;
    this.fresh = new Set(); // elements that were begun and not left yet: nobody is told off for them
    this.open = new Map();  // fields that wait for a text in a language, by path
    this.safe = null;       // alerts and cautions of the last reading that there was
    this.whole = null;      // the last answer for which all of the file could be read
    this.phrases = new Map(); // ready phrases that were put in last, by path
    this.settling = new Set(); // fields that are asking what was meant by what was typed
    this.speaks = '';       // the sheet's language, where a person chose one
    this.preview = later(() => this.#preview(), previewAfter);
    this.keep = later(() => this.#draft(), draftAfter);
    this.take(opened);
  }

  take({kind, id, mark, text, tree, path_of_file: file, visits, away}) {
    Object.assign(this, {kind, id, mark, base: tree, text, file, visits: visits ?? [], away: away ?? [], elsewhere: false});
    this.tree = this.base && applied(this.base, this.edits);
  }

  get edits() { return this.steps.flatMap(step => step.edits); }
  get dirty() { return this.steps.length > 0 || this.typed !== null; }
  get pet() { return this.id.split('/')[0]; }
  at(path) { return at(this.tree, path); }

  /** One step of one or more edits. Typing in one field is one step: `merge` names the field.
   *  `shape` says that the form has to be built anew. */
  change(edits, {merge = null, shape = false} = {}) {
    const last = this.steps.at(-1);
    if (merge && last?.merge === merge) this.steps.pop();
    const before = applied(this.base, this.edits);
    const after = applied(before, edits);
    if (!same(before, after)) this.steps.push({edits, merge});
    this.undone = [];
    this.tree = after;
    this.#changed(shape);
  }

  /** Sets a value, or takes it out where it is undefined. */
  put(path, value, options = {}) {
    const gone = value === undefined || value === '';
    if (gone && this.at(path) === undefined && !options.merge) return;
    this.change([gone ? {op: 'remove', path} : {op: 'set', path, value}], {merge: pathKey(path), ...options});
  }
  append(path, value) {
    this.fresh.add(pathKey([...path, this.at(path)?.length ?? 0]));
    this.change([{op: 'append', path, value}], {shape: true});
  }
  remove(path) {
    // Those behind it have other numbers now.
    for (const key of [...this.fresh]) if (key.startsWith(pathKey(path.slice(0, -1)).slice(0, -1))) this.fresh.delete(key);
    this.change([{op: 'remove', path}], {shape: true});
  }
  /** Is a path in an element that somebody has only just begun? */
  isFresh(path) {
    return (path ?? []).some((_, i) => this.fresh.has(pathKey(path.slice(0, i + 1))));
  }

  undo() { this.#move(this.steps, this.undone); }
  redo() { this.#move(this.undone, this.steps); }
  #move(from, to) {
    const step = from.pop();
    if (!step) return;
    to.push({...step, merge: null});
    this.tree = applied(this.base, this.edits);
    this.#changed(true);
  }

  /** The text view: the whole text stands for all steps. */
  type(text) {
    this.typed = text === this.text && !this.steps.length ? null : text;
    this.#changed(false);
  }
  /** Back to the file as it was opened. */
  drop() {
    this.steps = [];
    this.undone = [];
    this.typed = null;
    this.tree = this.base && applied(this.base, []);
    this.#changed(true);
  }
  /** What was not saved when the page last closed. */
  restore({edits, text}) {
    this.typed = text ?? null;
    this.steps = (edits ?? []).map(edit => ({edits: [edit], merge: null}));
    this.tree = this.base && applied(this.base, this.edits);
    this.#changed(true);
  }
  /** The same with a new base, where another window's change is to be seen. */
  rebase(opened, keep = () => true) {
    this.steps = this.steps.map(step => ({...step, edits: step.edits.filter(keep)})).filter(step => step.edits.length);
    this.take(opened);
    this.#changed(true);
  }

  show(sheet) {
    this.sheet = sheet;
    this.preview.now();
  }

  /** @throws Refusal with conflicts, where both changed one value */
  async save() {
    const question = {kind: this.kind, id: this.id, mark: this.mark};
    const what = this.#sent();
    const sent = this.steps.length;
    this.fresh.clear();
    this.keep.stop();
    const saved = await ask('save', {...question, ...what}).catch(async problem => {
      if (problem.status !== 410) throw problem;
      await this.reload();
      return ask('save', {...question, mark: this.mark, ...what});
    });
    // What was typed while the save was under way stays to be saved.
    this.steps = what.text === undefined ? this.steps.slice(sent) : [];
    if (what.text !== undefined && this.typed === what.text) this.typed = null;
    this.take({...saved, kind: this.kind, id: this.id, path_of_file: this.file, visits: this.visits, away: this.away});
    this.undone = [];
    this.#changed(true);
    return saved;
  }

  async reload() { this.rebase(await ask('open', {kind: this.kind, id: this.id})); }

  #sent() { return this.typed !== null ? {text: this.typed} : {edits: this.#begun()}; }
  /** An element that was begun, and into which nothing was written, is not there yet. */
  #begun() {
    const empty = one => one && typeof one === 'object' && Object.keys(one).length === 0;
    const idle = [...this.fresh].map(key => JSON.parse(key)).filter(path => empty(this.at(path)) && path.at(-1) === this.at(path.slice(0, -1)).length - 1);
    const edits = this.edits;
    for (const path of idle) {
      const key = pathKey(path.slice(0, -1)), at = edits.findLastIndex(edit => edit.op === 'append' && pathKey(edit.path) === key && empty(edit.value));
      if (at >= 0) edits.splice(at, 1);
    }
    return edits;
  }

  #changed(shape) {
    this.dispatchEvent(new CustomEvent('change', {detail: {shape}}));
    this.preview();
    this.keep();
  }

  /** Only the newest answer counts; one question at a time, so that a slow sheet never makes a queue. */
  async #preview() {
    if (this.waiting) { this.again = true; return; }
    this.waiting = true;
    try {
      const given = await ask('preview', {kind: this.kind, id: this.id, mark: this.mark, edits: [], ...this.#sent(), sheet: this.sheet ?? '', language: this.speaks});
      this.answer = given;
      if (given.expected) this.expected = given.expected;  // minutes, of the pets of a day
      this.#mind(given);
      this.dispatchEvent(new CustomEvent('answer', {detail: given}));
    } catch (problem) {
      // Started again since, the program does not know the text any more that this began with.
      if (problem.status === 410) await this.reload().catch(() => {});
      else this.dispatchEvent(new CustomEvent('problem', {detail: problem}));
    } finally {
      this.waiting = false;
      if (this.again) { this.again = false; this.preview.now(); }
    }
  }

  /** What can hurt: while something cannot be read, what was known before counts too. */
  #mind(given) {
    if (!given.read || given.read === 'nothing') return;
    if (given.read === 'whole') this.whole = given;
    const both = key => [...given[key], ...(this.whole?.[key] ?? []).filter(one => !given[key].some(other => other.text === one.text))];
    this.safe = {read: given.read, alerts: both('alerts'), cautions: both('cautions')};
  }

  async #draft() {
    if (this.looking) return;
    try {
      await ask('draft', {kind: this.kind, id: this.id, mark: this.mark, edits: [], ...this.#sent()});
    } catch (problem) {
      this.dispatchEvent(new CustomEvent('problem', {detail: problem}));
    }
  }
}
