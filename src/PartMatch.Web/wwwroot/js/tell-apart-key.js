// The key as a diagram: a check in a box, its answers on the arms below it, each arm ending at what it leaves or going on to the next check.
// It is a nested list, so it reads without the drawing; the squares are there to be ticked with a pencil.

import { positionName } from './choices.js';
import { el, say, sentence } from './format.js';

/** Candidates have letters, as parts in a drawing have balloons; variants have their own codes. */
export function tagsOf(candidates, isVariants) {
  const letter = index => (index < 26 ? '' : 'A') + String.fromCharCode(65 + index % 26);
  return new Map(candidates.map((one, index) => [one.candidate, isVariants ? one.candidate : letter(index)]));
}

export function balloon(tag, { final = false } = {}) {
  return el('span', { class: 'balloon', 'data-final': final }, tag);
}

export const balloons = (list, tags) => el('span', { class: 'balloons' }, list.map((one, index) => [index ? el('span', { class: 'unseen' }, ', ') : '', balloon(tags.get(one))]));

export const minutes = number => `${Number(number.toFixed(1))} min`;

const byMethod = { photo: 'by photo', label: 'by its label', eye: 'by eye', count: 'by counting', scale: 'on a scale', bench: 'on the bench' };

/** How the check is made, and what it takes to get there. */
export function checkWords(check) {
  const by = byMethod[check.method] ?? `with a ${say('method', check.method)}`;
  const reach = check.accessMinutes ? ` + ${minutes(check.accessMinutes)} to reach it` : '';
  return `${by}, ${minutes(check.minutes)}${reach}`;
}

export const checkName = (check, family) => sentence([check.position ? `${positionName(family, check.position)}: ` : '', check.name].join(''));

/** What an arm leaves: one candidate, several that this key does not part, or none. */
function end(answer, { tags, label }) {
  const [only] = answer.candidates;
  if (answer.candidates.length === 0) return el('span', { class: 'end quiet' }, 'none of them');
  if (answer.candidates.length === 1) return el('span', { class: 'end', 'data-end': 'one' }, balloon(tags.get(only), { final: true }), ' ', label(only));
  return el('span', { class: 'end', 'data-end': 'together' }, answer.candidates.map(one => el('span', { class: 'end-one' }, balloon(tags.get(one)), ' ', label(one))), el('em', null, 'not separated here'));
}

const share = number => (number > 0 && number < 1 ? el('span', { class: 'share quiet', title: 'how likely this answer is' }, number < 0.005 ? '< 1 %' : `${Math.round(number * 100)} %`) : '');

/** Draws the key. `path` holds what has to be seen before this check is reached: an answer below carries it along. */
function step(key, about, path) {
  const { family, tags, addressWith, number } = about;
  const id = `check-${number.next++}`;
  const arms = key.answers.map(answer => {
    const seen = [...path, answer.seen];
    return el('li', null,
      el('div', { class: 'arm' },
        el('a', { class: 'answer', href: addressWith(seen) }, sentence(answer.text), el('span', { class: 'unseen' }, ` seen: leaves ${answer.candidates.length === 1 ? 'one' : answer.candidates.length}`)),
        share(answer.share),
        answer.next ? balloons(answer.candidates, tags) : end(answer, about)),
      answer.next ? step(answer.next, about, seen) : null);
  });
  return el('div', { class: 'step', role: 'group', 'aria-labelledby': id },
    el('div', { class: 'check', id },
      el('b', { class: 'check-number' }, id.slice(6)), el('span', { class: 'check-name' }, checkName(key.check, family)), el('span', { class: 'check-effort' }, checkWords(key.check)),
      key.check.how ? el('span', { class: 'check-how quiet' }, sentence(key.check.how)) : null),
    el('ul', { class: 'arms' }, arms));
}

export function keyDiagram(key, about) {
  return el('div', { class: 'key-tree' }, step(key, { ...about, number: { next: 1 } }, []));
}
