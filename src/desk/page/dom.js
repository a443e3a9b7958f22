// Elements of the page. Text goes in as text, never as markup, so nothing in a file can become code.

/** An element with properties, and with what stands inside it. `data` and `aria` are objects. */
export function el(tag, props = {}, ...inside) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(props)) {
    if (value === undefined || value === null) continue;
    if (name === 'data') Object.assign(made.dataset, value);
    else if (name === 'aria') for (const [a, v] of Object.entries(value)) made.setAttribute(`aria-${a}`, v);
    else if (name.startsWith('on')) made.addEventListener(name.slice(2), value);
    else if (name in made && name !== 'list' && name !== 'form') made[name] = value;
    else made.setAttribute(name, value);
  }
  made.append(...inside.flat(Infinity).filter(one => one !== null && one !== undefined && one !== false));
  return made;
}

/** The same in SVG, where everything is an attribute. */
export function svg(tag, attributes = {}, ...inside) {
  const made = document.createElementNS('http://www.w3.org/2000/svg', tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === null) continue;
    if (name.startsWith('on')) made.addEventListener(name.slice(2), value);
    else made.setAttribute(name, value);
  }
  made.append(...inside.flat(Infinity).filter(Boolean));
  return made;
}

export function button(text, click, props = {}) {
  return el('button', {type: 'button', onclick: click, ...props}, text);
}

let counted = 0;
/** An id that nothing else on the page has. */
export const fresh = (stem = 'f') => `${stem}-${++counted}`;

/** What one of several radio buttons was set to. `options` are [value, text] pairs. */
export function radios(label, options, now, change, props = {}) {
  const name = fresh('r');
  return el('div', {className: 'radios', role: 'radiogroup', aria: {label}, ...props},
    options.map(([value, text]) => {
      const id = fresh('r');
      return el('span', {}, el('input', {type: 'radio', name, id, value, checked: value === now, onchange: () => change(value)}),
        el('label', {htmlFor: id}, text));
    }));
}

/** A list to choose from. `options` are [value, text] pairs; a value that is not among them stays. */
export function select(options, now, change, props = {}) {
  const known = options.some(([value]) => value === now);
  return el('select', {...props, onchange: event => change(event.target.value)},
    (known || now === undefined ? options : [...options, [now, now]])
      .map(([value, text]) => el('option', {value, selected: value === now}, text)));
}

/** Calls `work` when no further call came for so long; `now` does not wait. */
export function later(work, milliseconds) {
  let timer = 0;
  const run = () => { clearTimeout(timer); timer = setTimeout(work, milliseconds); };
  run.now = () => { clearTimeout(timer); return work(); };
  run.stop = () => clearTimeout(timer);
  return run;
}

/** A button that, pressed, shows what there is to choose from, a button each. Nothing is meant before
 *  one of them is pressed. `options()`: [value, text] pairs of the moment. */
export function picker(text, label, options, choose) {
  const list = el('div', {className: 'picks', role: 'group', aria: {label}});
  const made = el('details', {className: 'picker', onkeydown: event => { if (event.key === 'Escape' && made.open) { event.stopPropagation(); made.open = false; summary.focus(); } },
    ontoggle: () => { if (made.open) list.replaceChildren(...options().map(([value, name]) => button(name, () => { made.open = false; choose(value); }, {data: {value}}))); }});
  const summary = el('summary', {aria: {label}}, text);
  made.append(summary, list);
  return made;
}
