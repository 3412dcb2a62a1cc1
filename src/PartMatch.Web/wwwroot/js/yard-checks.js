// Checks to be made by hand, away from the bench: each with what has to come out, and a box to tick with a pencil.

import { el, plain, say, sentence } from './format.js';

const ways = { photo: 'look at it', eye: 'look at it', label: 'read it', count: 'count', scale: 'on a scale', gauge: 'with a gauge', meter: 'with a meter',
  'steel-rule': 'with a steel rule', caliper: 'with a caliper', bench: 'on the bench' };

export const toolWords = { 'photo': 'a phone that takes pictures', 'steel-rule': 'a steel rule', 'caliper': 'a caliper',
  'gauge': 'a thread gauge and feeler gauges',
  'scale': 'a kitchen scale', 'meter': 'a multimeter' };

/** A code or several as words; a measured value stays as it is. */
export const markWords = text => (/^[a-z][a-z0-9|-]*$/.test(text) ? plain(text).replaceAll('|', ' and ') : text);

const small = (check, rulesOut, otherwise) => [
  check.access && check.accessMinutes > 0 && sentence(check.access), check.how && sentence(check.how), rulesOut.length > 0 && sentence(otherwise(rulesOut)),
].filter(Boolean).join('. ');

/** `otherwise(codes)` says what it is where the check comes out otherwise. */
export function checkList(checks, otherwise) {
  return checks.length === 0 ? null : el('ol', { class: 'checks' }, checks.map(({ check, expect, rulesOut }) => {
    const more = small(check, rulesOut, otherwise);
    return el('li', null, el('div', null,
      el('p', null, el('strong', null, `${sentence(check.name)}: ${markWords(expect)}`),
        el('span', { class: 'quiet' }, ` (${ways[check.method] ?? say('method', check.method)})`)),
      more ? el('p', { class: 'quiet small' }, more, '.') : null));
  }));
}
