// When a pet was born, as well as it is known: a day, a month, or a year.

import {el, radios, select} from './dom.js';
import {say, spoken} from './words.js';
import {isMoment} from './values.js';

/** "2019-03", "2019" and 2019 in their parts; of a day, those of its date. */
function partsOf(value) {
  const text = isMoment(value) ? value.date : value === undefined ? '' : String(value).trim();
  const [, year = '', month = '', day = ''] = /^(\d{4})(?:-(\d\d))?(?:-(\d\d))?$/.exec(text) ?? [];
  return {year, month, day, odd: text !== '' && year === ''};
}

export function birth({id, value, put, labelled, described}) {
  const {year, month, day, odd} = partsOf(value);
  if (odd) return el('input', {id, type: 'text', dir: 'auto', value: String(value), ...described, oninput: event => put(event.target.value || undefined)});
  let known = year && !day ? month ? 'month' : 'year' : 'day';
  const fields = el('div', {className: 'quantity'});
  const names = Array.from({length: 12}, (_, i) => [String(i + 1).padStart(2, '0'), new Date(Date.UTC(2020, i)).toLocaleDateString(spoken(), {month: 'long', timeZone: 'UTC'})]);
  const now = {year, month};
  // Only what is whole is written: a year has four digits, and a month its year.
  const write = () => {
    if (now.year === '') put(undefined);
    else if (!/^\d{4}$/.test(now.year) || known === 'month' && !now.month) return;
    else put(known === 'month' ? `${now.year}-${now.month}` : Number(now.year));
  };
  const draw = () => fields.replaceChildren(...(known === 'day'
    ? [el('input', {id, type: 'date', value: isMoment(value) ? value.date : '', ...described, oninput: event => put(event.target.value ? {date: event.target.value} : undefined)})]
    : [known === 'month' && select([['', say('choose-one')], ...names], now.month, name => { now.month = name; write(); }, {aria: {label: `${labelled}: ${say('birth-of-month')}`}}),
      el('input', {id, type: 'text', inputMode: 'numeric', maxLength: 4, autocomplete: 'off', className: 'short', value: now.year, placeholder: say('birth-of-year'), ...described, oninput: event => { now.year = event.target.value.trim(); write(); }})].filter(Boolean)));
  draw();
  return el('div', {}, fields, radios(say('birth-known'), [['day', say('birth-day')], ['month', say('birth-month')], ['year', say('birth-year')]], known, to => {
    known = to;
    draw();
    fields.querySelector('input').focus();
    if (known !== 'day') write();
  }));
}
