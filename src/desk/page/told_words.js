// What people's words tell, by the words that the page's language lists for it (sheet/told_words.h).

import {say} from './words.js';

const wordsOf = text => text.toLowerCase().replaceAll('’', "'").match(/[\p{L}\p{M}]+(?:'[\p{L}\p{M}]+)*/gu) ?? [];
const listed = key => say(key).split('|').map(one => one.trim().split(' '));
const sameWord = (word, wanted) => wanted.endsWith('*') ? word?.startsWith(wanted.slice(0, -1)) : word === wanted;
const stands = (words, at, entry) => at >= 0 && entry.every((wanted, i) => sameWord(words[at + i], wanted));

/** A star stands for more letters; what takes a word back ("never bites", "a bit") stands beside it
 *  or ends with it, between the same points and commas. */
function tells(text, list, not) {
  const wanted = listed(list), back = listed(not);
  return String(text).split(/[.,;:!?،؛؟]/).some(clause => {
    const words = wordsOf(clause);
    return words.some((_, i) => wanted.some(entry => {
      const last = i + entry.length - 1;
      return stands(words, i, entry) && !back.some(one => stands(words, i - one.length, one) || stands(words, last + 1, one) || stands(words, last + 1 - one.length, one));
    }));
  });
}

/** Do words tell of a bite? */
export const tellsOfBite = text => tells(text, 'bite-words', 'bite-not');
/** Do they tell of what a vet should see? */
export const asksForVet = text => tells(text, 'vet-words', 'vet-not');
