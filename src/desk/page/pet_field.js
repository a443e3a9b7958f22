// Which pet: typed as people say it, by its name or its owner's, and written as its file is called.

import {el, fresh, later} from './dom.js';
import {say} from './words.js';
import {desk, nameOfPet, remember} from './desk.js';
import {ask} from './server.js';

const called = pet => pet.owner ? `${pet.name} · ${pet.owner}` : pet.name;
const plain = text => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().trim();

/** `put(id)` takes the pet that was chosen. */
export function petField({doc, id, value, put, described}) {
  const list = fresh('pets');
  let pets = [], at = -1, chosen = value, asked = 0;
  const shown = () => chosen === undefined || chosen === '' ? '' : nameOfPet(chosen);
  const input = el('input', {id, type: 'text', dir: 'auto', autocomplete: 'off', spellcheck: false, value: shown(), role: 'combobox', ...described,
    'aria-expanded': 'false', 'aria-controls': list, 'aria-autocomplete': 'list',
    oninput: () => look(), onkeydown: event => key(event), onblur: () => settle(), onsettle: () => settle(true),
    onfocus: () => input.select()});
  const options = el('ul', {id: list, className: 'pets', role: 'listbox', hidden: true, aria: {label: say('find-label')}});
  const state = el('p', {role: 'status', hidden: true});

  const look = later(async () => {
    const words = input.value.trim(), mine = ++asked;
    if (!words) { put(undefined); chosen = undefined; show([]); return; }
    const found = await ask('find', {words}).catch(() => ({pets: []}));
    if (mine !== asked) return;
    found.pets.forEach(remember);
    show(found.pets.slice(0, 8));
  }, 30);
  const show = found => {
    pets = found;
    at = found.length ? 0 : -1;
    options.replaceChildren(...found.map((pet, i) => el('li', {id: `${list}-${i}`, role: 'option', aria: {selected: i === at},
      onpointerdown: event => { event.preventDefault(); take(pet); }}, el('b', {}, pet.name), ' ', pet.owner, ' ', el('span', {className: 'looks'}, pet.looks))));
    open(found.length > 0);
  };
  const open = on => {
    options.hidden = !on;
    input.setAttribute('aria-expanded', on);
    if (on && at >= 0) input.setAttribute('aria-activedescendant', `${list}-${at}`); else input.removeAttribute('aria-activedescendant');
    [...options.children].forEach((one, i) => one.setAttribute('aria-selected', i === at));
  };
  const take = pet => {
    chosen = pet.id;
    remember(pet);
    input.value = shown();
    wrong('');
    open(false);
    put(pet.id);
  };
  const wrong = text => {
    state.textContent = text;
    state.hidden = !text;
    state.className = text ? 'fault error' : '';
    if (text) input.setAttribute('aria-invalid', 'true'); else input.removeAttribute('aria-invalid');
  };
  const key = event => {
    if (event.key === 'Escape') { open(false); return; }
    if (options.hidden || !pets.length) return;
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      at = (at + (event.key === 'ArrowDown' ? 1 : pets.length - 1)) % pets.length;
      open(true);
    } else if (event.key === 'Enter') { event.preventDefault(); take(pets[at]); }
  };
  /** Who typed a whole name and went on meant it; what could be several is asked. */
  const settle = now => {
    const left = leave(now).finally(() => doc.settling.delete(left));
    doc.settling.add(left);
  };
  const leave = async now => {
    if (plain(input.value) === plain(shown())) { open(false); wrong(''); return; }
    if (input.value.trim() === '') { open(false); return; }
    await look.now();
    const same = pets.filter(pet => [pet.name, pet.id, called(pet)].some(text => plain(text) === plain(input.value)));
    if (document.activeElement === input && !now) return;
    const only = same.length === 1 ? same[0] : pets.length === 1 ? pets[0] : null;
    if (only) take(only);
    else { open(false); wrong(pets.length ? say('pet-several', input.value) : say('pet-none', input.value)); }
  };
  // A name that came in after the form was made.
  desk.heard.addEventListener('names', () => { if (input.isConnected && document.activeElement !== input && chosen) input.value = shown(); });
  return el('div', {className: 'pet-field'}, input, options, state);
}
