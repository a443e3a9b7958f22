// The styles that trims follow: the salon's own, which can be changed, and those that come along.

import {button, el} from './dom.js';
import {say} from './words.js';
import {desk} from './desk.js';

/** `open(id)` goes to one of the salon's own. */
export function styleList(open) {
  const row = style => el('li', {}, style.own ? button(style.name, () => open(style.id)) : el('b', {}, style.name), style.looks && el('span', {className: 'looks'}, style.looks));
  const group = (title, list) => list.length > 0 && [el('h3', {}, title), el('ul', {}, list.map(row))];
  return el('section', {className: 'styles', aria: {label: say('styles')}}, el('h2', {}, say('styles')),
    group(say('styles-own'), desk.styles.filter(one => one.own)), group(say('styles-given'), desk.styles.filter(one => !one.own)));
}
