// Words that may stand in several languages, with the phrases that every catalogue has in its own.

import {button, el, fresh, picker, select} from './dom.js';
import {desk, languageName, stock} from './desk.js';
import {say} from './words.js';
import {isTable, pathKey} from './values.js';

/** Which phrases stand ready for a key. */
const phrasesFor = {
  what: 'finding', advised: 'advice', told: 'advice', behaviour: 'behaviour', helped: 'helped', why: 'reason', not_done: 'not_done',
  skin: 'state', soil: 'state', shedding: 'state', eyes: 'state', ears: 'state', nails: 'state', parasites: 'state', to: 'consent',
};
/** Of the states of a coat those that fit what is asked. */
const statesOf = {
  skin: ['sound', 'dry', 'red', 'sore', 'greasy'], soil: ['clean', 'dust', 'mud', 'dry-mud-on-the-belly', 'sand', 'greasy'], shedding: ['none', 'little', 'heavy', 'blowing-in-tufts'],
  eyes: ['clear', 'weeping', 'red', 'stained'], ears: ['clean', 'waxy', 'red', 'smelling'], nails: ['short', 'long', 'curled', 'split'], parasites: ['none-seen'],
};
function phrases(table, key) {
  if (table?.name === 'went-out') return stock('left');
  if (table?.name === 'finish' || table?.name === 'alert') return [];
  const ready = stock(phrasesFor[key.name] ?? '');
  return statesOf[key.name]?.map(name => ready.find(phrase => phrase.key === name)).filter(Boolean) ?? ready;
}

/** A field that grows with its text. Files hold such a text on one line. */
function area(id, value, change, props = {}) {
  const made = el('textarea', {
    id, rows: 1, value, spellcheck: true, dir: 'auto', ...props,
    oninput: () => { if (/\n/.test(made.value)) made.value = made.value.replace(/\s*\n\s*/g, ' '); change(made.value); },
    onkeydown: event => { if (event.key === 'Enter') event.preventDefault(); },
  });
  return made;
}

/** `put(value, options)` as of fields.js. */
export function freeText({doc, path, id, value, key, table, put, labelled, described}) {
  const waiting = doc.open.get(pathKey(path)) ?? new Set();
  const languages = () => isTable(value) ? Object.keys(value).filter(name => name !== 'for') : ['text'];
  const code = name => name === 'text' ? desk.salon.language.split('-')[0] : name;
  // A language that was asked for, and waits for its first letter, is in no file yet.
  const write = (name, text) => {
    const next = isTable(value) ? {...value} : value === undefined ? {} : {text: value};
    if (text === '' && name !== 'text') delete next[name]; else next[name] = text;
    if (text === '' && Object.keys(next).length === 1) value = undefined; else value = plain(next);
    put(value);
  };
  const lines = el('div', {className: 'languages'});
  const line = (name, i) => {
    const many = languages().length + waiting.size > 1 || name !== 'text';
    const text = isTable(value) ? value[name] : name === 'text' ? value : '';
    const input = area(i === 0 ? id : fresh(), typeof text === 'string' ? text : '', typed => write(name, typed),
      {...described, ...(many && {aria: {label: `${labelled}, ${languageName(code(name))}`}}), ...(name !== 'text' && {lang: name, dir: 'auto'}), data: {language: name}});
    const drop = () => {
      waiting.delete(name);
      if (isTable(value) && name in value) { const {[name]: gone, ...rest} = value; value = plain(rest); put(value, {shape: true}); }
      else draw();
    };
    return el('div', {className: 'language'}, many && el('span', {className: 'tag'}, languageName(code(name))), input,
      many && i > 0 && button('×', drop, {className: 'quiet', aria: {label: say('remove-language', languageName(code(name)))}}));
  };
  const draw = () => lines.replaceChildren(...[...languages(), ...[...waiting].filter(name => !languages().includes(name))].map(line));
  draw();
  /** One field for one language, and the cursor in it. */
  const add = name => {
    if (!languages().includes(name)) { waiting.add(name); doc.open.set(pathKey(path), waiting); }
    draw();
    lines.querySelector(`[data-language="${CSS.escape(name)}"]`)?.focus();
  };

  const insert = text => {
    if (!text) return;
    const first = lines.querySelector('textarea'), last = doc.phrases.get(pathKey(path));
    // Another phrase takes the place of the one before it; what was written by hand stays.
    const before = (last && first.value.endsWith(last) ? first.value.slice(0, -last.length) : first.value).trim();
    const added = before === '' ? text : ` ${text[0].toUpperCase()}${text.slice(1)}.`;
    first.value = before === '' ? text : `${before.replace(/[.]$/, '')}.${added}`;
    doc.phrases.set(pathKey(path), added);
    first.dispatchEvent(new Event('input'));
    chosen.value = '';
  };
  // By keys one goes through the phrases; none is meant before Enter, or before one leaves.
  const ready = phrases(table, key);
  let looking = false;
  const chosen = ready.length > 0 && select([['', say('phrase')], ...ready.map(phrase => [phrase.text, phrase.text])], '',
    text => { if (!looking) insert(text); }, {className: 'quiet', aria: {label: say('phrase-for', labelled)},
      onpointerdown: () => { looking = false; },
      onkeydown: event => {
        looking = event.key !== 'Enter';
        if (event.key === 'Enter' && chosen.value) { event.preventDefault(); insert(chosen.value); }
      },
      onblur: () => insert(chosen.value)});
  const other = picker(say('other-language'), say('other-language-for', labelled),
    () => desk.languages.map(one => [one.id.split('-')[0], one.name]).filter(([name]) => name !== code('text') && !languages().includes(name) && !waiting.has(name)), add);
  const forEveryone = key.kind === 'staff_text' && checkbox(say('owner-may-read'), isTable(value) && value.for === 'everyone', on => {
    const rest = {...(isTable(value) ? value : {text: value ?? ''})};
    if (on) rest.for = 'everyone'; else delete rest.for;
    value = plain(rest);
    put(value, {shape: true});
  });
  const made = el('div', {className: 'texts'}, lines, el('div', {className: 'tools'}, chosen, other, forEveryone));
  made.addLanguage = add;
  return made;
}

/** One text in the salon's language needs no braces. */
const plain = texts => Object.keys(texts).length === 1 && 'text' in texts ? texts.text : texts;

export function checkbox(text, checked, change, props = {}) {
  const id = props.id ?? fresh();
  return el('span', {className: 'check'}, el('input', {type: 'checkbox', checked, ...props, id, onchange: event => change(event.target.checked)}),
    el('label', {htmlFor: id}, text));
}

/** Several of them, each on its line. */
export function textList({id, value, key, put, labelled, described, area: asArea = false}) {
  const list = Array.isArray(value) ? value : value === undefined ? [] : [value];
  const write = (i, text) => { list[i] = text; put(list.map(one => one).filter(one => one !== '')); };
  const items = [...list, ...(list.length ? [] : [''])].map((text, i) => el('li', {},
    asArea && typeof text !== 'string' ? el('span', {}, Object.values(text).join(' / '))
      : el('input', {id: i === 0 ? id : fresh(), type: 'text', dir: 'auto', value: text, autocomplete: 'off', ...described,
        aria: {label: say('item-of', labelled, i + 1)}, oninput: event => write(i, event.target.value)}),
    list.length > 1 && button('×', () => put(list.filter((_, j) => j !== i), {shape: true}), {className: 'quiet', aria: {label: say('remove-item', labelled, i + 1)}})));
  const ul = el('ul', {className: 'items'}, items);
  const more = button(say('one-more'), () => {
    const input = el('input', {type: 'text', dir: 'auto', autocomplete: 'off', aria: {label: say('item-of', labelled, list.length + 1)}});
    const place = list.length;
    input.addEventListener('input', () => write(place, input.value));
    ul.append(el('li', {}, input));
    input.focus();
  }, {className: 'add', aria: {label: say('one-more-of', labelled)}});
  return el('div', {}, ul, list.length > 0 && more);
}
