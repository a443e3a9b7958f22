// What is done to one place: which tool, how long it stays, how the tool goes, what else to see to.

import {el, fresh, radios, select} from './dom.js';
import {choiceName, keyName, say} from './words.js';
import {desk} from './desk.js';
import {bladeOptions} from './fields.js';
import {checkbox} from './free_text.js';
import {number, parts} from './quantity.js';
import {isTable, pathKey} from './values.js';

const tools = ['brush', 'blade', 'comb', 'shears', 'strip'];
const toolOf = work => tools.find(tool => work?.[tool] !== undefined) ?? (work?.leave !== undefined ? 'shears' : null);
const longest = 150; // mm; longer ones are typed

/** `now` is what holds there (a table of the keys of keys::work), `own` whether this file says so.
 *  `set(work, options)` takes the whole line, `undefined` to go back to the style's. `begun` keeps
 *  a tool of which nothing is chosen yet, and so nothing written: {tool, work}; `again` draws anew. */
export function workControls(now, own, set, {back = say('as-the-style'), path = null, begun = {}, again = () => {}} = {}) {
  const row = (name, made, key) => plainRow(name, made, key && path ? [...path, key] : null);
  let work = begun.tool ? begun.work : isTable(now) ? {...now} : {};
  const change = (changed, options = {}) => {
    work = {...work, ...changed};
    for (const key of Object.keys(work)) if (work[key] === undefined || work[key] === '') delete work[key];
    if (begun.tool) {
      begun.work = work;
      if (!whole(begun.tool, work)) return;
      begun.tool = null;
    }
    set(work, options);
  };
  const how = radios(say('how'), [...tools.map(tool => [tool, say(`tool-${tool}`)]), [null, back]], begun.tool ?? (own ? toolOf(work) : null), tool => {
    begun.tool = null;
    if (!tool) { again(); return set(undefined, {shape: true}); }
    const kept = {...work};
    for (const key of [...tools, 'over', 'leave', ...(tool === 'brush' || tool === 'strip' ? ['lay'] : [])]) if (key !== tool && !(key === 'leave' && tool === 'shears')) delete kept[key];
    work = tool === 'brush' ? {...kept, brush: true} : kept;
    if (whole(tool, work)) return change({}, {shape: true});
    Object.assign(begun, {tool, work});
    again();
  }, {className: 'radios how'});
  const tool = begun.tool ?? toolOf(work);
  const open = [['', say('choose-one')]];
  return el('div', {className: 'work'}, row(say('how'), how),
    tool === 'blade' && row(keyName('work', 'blade'), id => select(work.blade ? bladeOptions() : [...open, ...bladeOptions()], work.blade ?? '', blade => change({blade}, {shape: !own}), {id}), 'blade'),
    tool === 'comb' && [row(keyName('work', 'comb'), id => select([...(work.comb ? [] : open), ...desk.combs.map(comb => [comb.id, comb.mm ? `${comb.id} · ${comb.mm} mm` : comb.id])], work.comb ?? '', comb => change({comb}, {shape: !own}), {id}), 'comb'),
      row(keyName('work', 'over'), id => select([['', '–'], ...bladeOptions()], work.over ?? '', over => change({over}), {id}), 'over')],
    tool === 'shears' && [row(keyName('work', 'shears'), radios(keyName('work', 'shears'), desk.shears.map(kind => [kind, choiceName('shears', kind)]), work.shears, shears => change({shears})), 'shears'),
      row(keyName('work', 'leave'), (id, said) => length(id, work.leave, leave => change({leave}, {merge: 'leave'}), said), 'leave')],
    tool === 'strip' && row(keyName('work', 'strip'), radios(keyName('work', 'strip'), ['hand', 'knife'].map(way => [way, choiceName('strip', way)]), work.strip, strip => change({strip})), 'strip'),
    (tool === 'blade' || tool === 'comb' || tool === 'shears') && row(keyName('work', 'lay'), radios(keyName('work', 'lay'), [...['with', 'across', 'against'].map(lay => [lay, choiceName('lay', lay)]), [undefined, say('not-said')]], work.lay, lay => change({lay})), 'lay'),
    begun.tool && el('p', {className: 'help'}, say('choose-first')),
    tool && row(keyName('work', 'note'), id => el('input', {id, type: 'text', dir: 'auto', autocomplete: 'off', value: work.note ?? '', oninput: event => change({note: event.target.value}, {merge: 'note'})}), 'note'),
    tool && tool !== 'brush' && row('', checkbox(keyName('work', 'before_bath'), work.before_bath === true, on => change({before_bath: on || undefined}))));
}

/** Is all chosen without which a tool is no line? No blade and no length is taken for granted. */
const whole = (tool, work) => work[tool] !== undefined && (tool !== 'shears' || work.leave !== undefined);

/** `path`: what the row writes, so that what is said of it is said there. */
export function row(name, made, path = null) {
  const id = fresh(), control = typeof made === 'function' ? made(id, `${id}-s`) : made;
  const named = typeof made === 'function' ? el('label', {className: 'name', htmlFor: id}, name) : el('span', {className: 'name'}, name);
  return el('div', {className: 'row', data: path ? {path: pathKey(path)} : {}}, named, el('div', {className: 'value'}, control), path && el('div', {className: 'said', id: `${id}-s`}));
}
const plainRow = row;

/** A length by dragging, by keys, or as it is written. The slider is in millimetres; what it writes
 *  is in the unit that stood there, inches to the nearest eighth. */
export function length(id, value, change, said) {
  const inches = value === undefined ? desk.salon.units === 'us' : /in|"|″/.test(value);
  const mm = millimetres(value);
  const slider = el('input', {type: 'range', id, min: 1, max: longest, step: 1, value: mm ?? longest / 2, className: `length${value === undefined ? ' unset' : ''}`, aria: {valuetext: value ?? say('choose-one')},
    oninput: () => { slider.classList.remove('unset'); written.value = inches ? inInches(slider.value) : `${slider.value} mm`; slider.setAttribute('aria-valuetext', written.value); change(written.value); }});
  const written = el('input', {type: 'text', className: 'short', dir: 'ltr', value: value ?? '', placeholder: say('choose-one'), autocomplete: 'off', aria: {label: say('length-written'), ...(said && {describedby: said})},
    oninput: () => {
      // A number alone is in the unit that stood there.
      const typed = written.value.trim(), text = number.test(typed) ? `${typed} ${inches ? 'in' : 'mm'}` : typed, now = millimetres(text);
      if (now) slider.value = now;
      slider.classList.toggle('unset', !now);
      change(text);
    }});
  return el('div', {className: 'drag'}, slider, written);
}

function millimetres(text) {
  const plain = text && parts(text, 'length');
  if (plain) return Number(plain.number.replace(',', '.')) * {mm: 1, cm: 10, in: 25.4}[plain.unit];
  const fraction = text?.match(/^(?:(\d+)[ -])?(\d+)\/(\d+)\s*(?:in|")/);
  return fraction ? (Number(fraction[1] ?? 0) + fraction[2] / fraction[3]) * 25.4 : null;
}
function inInches(mm) {
  const eighths = Math.max(1, Math.round(mm / 25.4 * 8)), whole = Math.floor(eighths / 8), rest = eighths % 8;
  const by = rest % 4 === 0 ? 4 : rest % 2 === 0 ? 2 : 1;
  const fraction = rest ? `${rest / by}/${8 / by}` : '';
  return `${[whole || '', fraction].filter(Boolean).join(' ')} in`;
}
