// Two numbers one above the other, with the characters marked in which they differ.

import { el, partLink } from './format.js';

/** A number key with the characters marked in which it differs; what is missing shows as an open box. */
function marked(key, places) {
  const nodes = [];
  let end = 0;
  for (const { index, length } of places) {
    nodes.push(key.slice(end, index), length ? el('mark', null, key.slice(index, index + length)) : el('mark', { class: 'gap', title: 'nothing here' }, '␣'));
    end = index + length;
  }
  return el('span', { class: 'number key' }, nodes, key.slice(end));
}

const placesInFirst = at => at.map(({ index, asked }) => ({ index, length: asked.length }));

/** `at` counts in the first key; each character more or less moves what follows in the second. */
function placesInSecond(at) {
  let shift = 0;
  return at.map(({ index, asked, other }) => {
    const place = { index: index + shift, length: other.length };
    shift += other.length - asked.length;
    return place;
  });
}

/** Both keys, one above the other, with `at` marked in each. */
export function sideBySide(askedKey, other) {
  const otherKey = other.number.toUpperCase().replace(/[^\p{L}\p{N}]/gu, '');
  return el('div', { class: 'keys' },
    el('div', null, el('span', { class: 'quiet small' }, 'asked '), marked(askedKey, placesInFirst(other.near.at))),
    el('div', null, el('span', { class: 'quiet small' }, 'other '), marked(otherKey, placesInSecond(other.near.at))));
}

/** Places in a key, as places in the number with its separators. */
function asWritten(number, places) {
  const at = [...number.matchAll(/[\p{L}\p{N}]/gu)].map(found => found.index);
  return places.map(({ index, length }) => {
    const from = at[index] ?? number.length;
    return { index: from, length: length ? at[index + length - 1] + 1 - from : 0 };
  });
}

/** Both numbers of a pair as written, each leading to its part, with what differs marked. */
export function twoNumbers({ a, b, near }) {
  const line = ({ part, number, name }, places) => el('div', null, partLink(part, marked(number, asWritten(number, places))), el('span', { class: 'plain-name' }, ` ${name ?? 'of no family here'}`));
  return [line(a, near ? placesInFirst(near.at) : []), line(b, near ? placesInSecond(near.at) : [])];
}
