// Words that may stand in several languages, with the phrases that every catalogue has in its own.

import {button, el, fresh, select} from './dom.js';
import {desk, stock} from './desk.js';
import {say} from './words.js';
import {isTable} from './values.js';

/** Which phrases stand ready for a key. */
const phrasesFor = {
  what: 'finding', advised: 'advice', told: 'advice', behaviour: 'behaviour', helped: 'helped', why: 'reason',
  skin: 'state', soil: 'state', shedding: 'state', eyes: 'state', ears: 'state', nails: 'state', parasites: 'state', to: 'consent',
};
function phrases(table, key) {
  if (table?.name === 'went-out') return stock('left');
  if (table?.name === 'finish' || table?.name === 'alert') return [];
  return stock(phrasesFor[key.name] ?? '');
}
const languageName = id => desk.languages.find(one => one.id === id || one.id.split('-')[0] === id)?.name ?? id;

/** A field that grows with its text. Files hold such a text on one line. */
function area(id, value, change, props = {}) {
  const made = el('textarea', {
    id, rows: 1, value, spellcheck: true, ...props,
    oninput: () => { if (/\n/.test(made.value)) made.value = made.value.replace(/\s*\n\s*/g, ' '); change(made.value); },
    onkeydown: event => { if (event.key === 'Enter') event.preventDefault(); },
  });
  return made;
}

/** `put(value, options)` as of fields.js. */
export function freeText({id, value, key, table, put, labelled, described}) {
  const many = isTable(value);
  const staff = key.kind === 'staff_text';
  const texts = many ? Object.entries(value).filter(([name]) => name !== 'for') : [['text', value ?? '']];
  const write = (name, text) => {
    if (!many) return put(text === '' ? undefined : text);
    put({...value, [name]: text});
    value = {...value, [name]: text};
  };
  const ready = phrases(table, key);
  const inputs = texts.map(([name, text], i) => {
    const own = i === 0 ? id : fresh();
    const input = area(own, typeof text === 'string' ? text : '', typed => write(name, typed),
      {...described, ...(many && {aria: {label: `${labelled}, ${name === 'text' ? languageName(desk.salon.language) : languageName(name)}`}}),
        ...(name !== 'text' && {lang: name, dir: 'auto'})});
    return el('div', {className: 'language'}, many && el('span', {className: 'tag'}, name === 'text' ? languageName(desk.salon.language) : languageName(name)),
      input,
      many && i > 0 && button('×', () => {
        const {[name]: gone, ...rest} = value;
        put(plain(rest), {shape: true});
      }, {className: 'quiet', aria: {label: say('remove-language', languageName(name))}}));
  });
  const insert = text => {
    if (!text) return;
    const first = inputs[0].querySelector('textarea');
    first.value = first.value.trim() === '' ? text : `${first.value.trim().replace(/[.]$/, '')}. ${text[0].toUpperCase()}${text.slice(1)}.`;
    first.dispatchEvent(new Event('input'));
    chosen.value = '';
  };
  // By keys one goes through the phrases; none is meant before Enter, or before one leaves.
  let looking = false;
  const chosen = ready.length > 0 && select([['', say('phrase')], ...ready.map(phrase => [phrase.text, phrase.text])], '',
    text => { if (!looking) insert(text); }, {className: 'quiet', aria: {label: say('phrase-for', labelled)},
      onpointerdown: () => { looking = false; },
      onkeydown: event => {
        looking = event.key !== 'Enter';
        if (event.key === 'Enter' && chosen.value) { event.preventDefault(); insert(chosen.value); }
      },
      onblur: () => insert(chosen.value)});
  const free = desk.languages.filter(one => !texts.some(([name]) => name === one.id.split('-')[0] || name === one.id));
  const add = select([['', say('other-language')], ...free.map(one => [one.id.split('-')[0], one.name])], '',
    code => put({...(many ? value : {text: value ?? ''}), [code]: ''}, {shape: true}),
    {className: 'quiet', aria: {label: say('other-language-for', labelled)}});
  const forEveryone = staff && checkbox(say('owner-may-read'), many && value.for === 'everyone', on => {
    const rest = {...(many ? value : {text: value ?? ''})};
    if (on) rest.for = 'everyone'; else delete rest.for;
    put(plain(rest), {shape: true});
  });
  return el('div', {className: 'texts'}, inputs, el('div', {className: 'tools'}, chosen, add, forEveryone));
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
      : el('input', {id: i === 0 ? id : fresh(), type: 'text', value: text, autocomplete: 'off', ...described,
        aria: {label: say('item-of', labelled, i + 1)}, oninput: event => write(i, event.target.value)}),
    list.length > 1 && button('×', () => put(list.filter((_, j) => j !== i), {shape: true}), {className: 'quiet', aria: {label: say('remove-item', labelled, i + 1)}})));
  const ul = el('ul', {className: 'items'}, items);
  const more = button(say('one-more'), () => {
    const input = el('input', {type: 'text', autocomplete: 'off', aria: {label: say('item-of', labelled, list.length + 1)}});
    const place = list.length;
    input.addEventListener('input', () => write(place, input.value));
    ul.append(el('li', {}, input));
    input.focus();
  }, {className: 'add', aria: {label: say('one-more-of', labelled)}});
  return el('div', {}, ul, list.length > 0 && more);
}
