// Photos of a visit, dropped in or chosen. The program turns them, takes out what the camera wrote
// beside the picture and copies them into the salon's folder; the file gets the new name.

import {refused} from './refused.js';
import {el, fresh, radios} from './dom.js';
import {choiceName, keyName, say} from './words.js';
import {desk} from './desk.js';
import {sendPhoto} from './server.js';

export function photoDrop(doc) {
  if (desk.look) return null;
  const id = fresh();
  let when = 'after';
  const state = el('p', {role: 'status', className: 'photo-state'});
  const take = async files => {
    for (const file of files) {
      if (!file.type.startsWith('image/')) { state.textContent = say('photo-not', file.name); continue; }
      state.textContent = say('photo-taking', file.name);
      try {
        const {path} = await sendPhoto(doc.id, file);
        doc.append(['photo'], {file: path, when});
        state.textContent = '';
      } catch (problem) { state.textContent = `${file.name}: ${refused(problem)}`; }
    }
  };
  const input = el('input', {type: 'file', id, multiple: true, accept: 'image/jpeg,image/png,image/webp', className: 'hidden-file', onchange: () => { take([...input.files]); input.value = ''; }});
  const drop = el('div', {className: 'drop-zone', role: 'group', aria: {label: say('add-photos')},
    ondragover: event => { event.preventDefault(); drop.classList.add('over'); },
    ondragleave: () => drop.classList.remove('over'),
    ondrop: event => { event.preventDefault(); drop.classList.remove('over'); take([...event.dataTransfer.files]); }},
  el('label', {htmlFor: id, className: 'like-button'}, say('add-photos')), input, el('span', {}, say('photo-drop')),
  radios(keyName('photo', 'when'), ['before', 'after'].map(word => [word, choiceName('when', word)]), when, to => { when = to; }), state);
  return drop;
}
