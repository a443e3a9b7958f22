// The desk: finds, opens and changes the salon's files. Which view is shown stands in the browser's
// history and never in the address, which would tell whose pet it is.

import {refused} from './refused.js';
import {button, el} from './dom.js';
import {say, speak} from './words.js';
import {begin, desk} from './desk.js';
import {ask, listen} from './server.js';
import {Doc} from './doc.js';
import {DocView} from './doc_view.js';
import {FindView} from './find_view.js';
import {DayView} from './day_view.js';

const docs = new Map();   // what was opened and not saved yet, by kind and id
let drafts = [];          // the same of an earlier page
let view = null;
const main = document.querySelector('main');
const state = document.querySelector('#state');
const key = (kind, id) => `${kind} ${id}`;

function status(what, wrong = false) {
  state.classList.toggle('wrong', wrong);
  state.replaceChildren(what);
}

async function opened({kind, id, opened: given}) {
  const known = docs.get(key(kind, id));
  if (known?.dirty) return known;
  const doc = new Doc(given ?? await ask('open', {kind, id}));
  docs.set(key(kind, id), doc);
  const draft = drafts.find(one => one.kind === kind && one.id === id);
  if (draft) {
    drafts = drafts.filter(one => one !== draft);
    doc.restore(draft);
    doc.restored = true;
  }
  return doc;
}

/** What is not saved, for the list on the first view. */
function unsaved() {
  const here = [...docs.values()].filter(doc => doc.dirty);
  return [...here.map(doc => ({kind: doc.kind, id: doc.id, forget: () => doc.drop()})),
    ...drafts.map(draft => ({kind: draft.kind, id: draft.id, forget: () => {
      drafts = drafts.filter(one => one !== draft);
      ask('draft', {kind: draft.kind, id: draft.id, mark: draft.mark, edits: []});
    }}))];
}

async function show({name, ...what}, remember = true) {
  status('');
  const tools = {go: (to, more) => show({name: to, ...more}), status};
  let next;
  try {
    if (name === 'doc') {
      const doc = await opened(what);
      next = new DocView(doc, tools);
      if (doc.restored) { status(say('restored')); doc.restored = false; }
    } else if (name === 'day') next = new DayView(tools, what.date);
    else next = new FindView({...tools, open: unsaved});
  } catch (problem) {
    console.warn(problem);
    status(refused(problem), true);
    return;
  }
  view?.close();
  view = next;
  main.replaceChildren(view.element);
  main.dataset.view = name;
  for (const one of document.querySelectorAll('nav button')) one.setAttribute('aria-current', one.dataset.view === name || name === 'doc' && one.dataset.view === what.kind ? 'page' : 'false');
  if (name !== 'doc') document.title = say('desk');
  const {opened: given, again, book, ...place} = what;
  if (remember && !again) history.pushState({name, ...place}, '');
  window.scrollTo(0, 0);
  if (book) view.book(book);
  else if (view.focus) view.focus();
  else view.heading.focus();
}

function frame() {
  document.documentElement.lang = desk.language;
  document.documentElement.dir = desk.dir;
  document.querySelector('#salon').textContent = desk.salon.name;
  const skip = document.querySelector('#skip');
  skip.textContent = say('skip');
  // By hand: following the link would be a step in the history that no view belongs to.
  skip.addEventListener('click', event => { event.preventDefault(); main.focus(); });
  document.querySelector('nav').append(...[['find', say('find')], ['day', say('day')]].map(([name, text]) => button(text, () => show({name}), {data: {view: name}})),
    button(say('salon-page'), () => show({name: 'doc', kind: 'salon', id: ''}), {data: {view: 'salon'}}),
    desk.look ? el('span', {className: 'look', title: say('look')}, say('look-short')) : '');
  document.querySelector('nav').setAttribute('aria-label', say('desk'));
}

async function start() {
  const started = await ask('start');
  speak(started.words, started.language, started.dir === 'rtl');
  begin(started);
  drafts = started.drafts ?? [];
  frame();
  let away = false;
  listen(({kind, id, mark}) => {
    if (view instanceof DocView && view.doc.kind === kind && view.doc.id === id) view.changedElsewhere(mark);
    else if (view instanceof DayView && kind === 'day' && id === view.date) view.to(id);
    const doc = docs.get(key(kind, id));
    if (doc && !doc.dirty && view?.doc !== doc) docs.delete(key(kind, id));
  }, reached => {
    if (!reached) status(say('not-reached'), true);
    else if (away) status('');
    away = !reached;
  });
  window.addEventListener('popstate', event => show(event.state ?? {name: 'find'}, false));
  // The last half second of typing goes out when the page does.
  window.addEventListener('pagehide', () => { for (const doc of docs.values()) if (doc.dirty) doc.keep.now(); });
  history.replaceState({name: 'find'}, '');
  await show({name: 'find'}, false);
  document.body.dataset.ready = 'yes';
}

start().catch(problem => status(problem.message || 'The desk cannot be reached. Start it again.', true));
