// The key as a diagram: a check in a box, its answers on the arms below it, each arm ending at what it leaves or going on to the next check.
// It is a nested list, so it reads without the drawing; the squares are there to be ticked with a pencil.

import { el, plain, say, sentence, sentences } from './format.js';

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

const by = method => byMethod[method] ?? `with a ${say('method', method)}`;

/** How the check is made, and what it takes to get there. */
export function checkWords(check) {
  return `${by(check.method)}, ${minutes(check.minutes)}${check.accessMinutes ? ` + ${minutes(check.accessMinutes)} to reach it` : ''}`;
}

/** A code or several as words; a measured value stays as it is. */
export const plainValue = text => (/^[a-z][a-z0-9|-]*$/.test(text) ? plain(text).replaceAll('|', ' and ') : text);

/** An observation in words: `intake-camshaft.nose@photo:fixed` becomes “intake camshaft, nose, by photo: fixed”. */
export function seenText(seen) {
  const [, what, method, value] = /^([^:@]*)(?:@([^:]*))?:?(.*)$/.exec(seen);
  return `${plain(what.replace('.', ', '))}${method ? `, ${by(method)}` : ''}: ${plainValue(value)}`;
}

/** What an arm leaves: one candidate, several that this key does not part, or none. */
function end(answer, { tags, label }) {
  const [only] = answer.candidates;
  if (answer.candidates.length === 0) return el('span', { class: 'end quiet' }, 'none of them');
  if (answer.candidates.length === 1) return el('span', { class: 'end', 'data-end': 'one' }, balloon(tags.get(only), { final: true }), ' ', label(only));
  return el('span', { class: 'end', 'data-end': 'together' }, answer.candidates.map(one => el('span', { class: 'end-one' }, balloon(tags.get(one)), ' ', label(one))), el('em', null, 'not separated here'));
}

const share = number => (number > 0 && number < 1 ? el('span', { class: 'share quiet', title: 'how likely this answer is' }, number < 0.005 ? '< 1 %' : `${Math.round(number * 100)} %`) : '');

function how(check) {
  const words = [check.how, check.access && check.accessMinutes ? `To reach it: ${check.access}` : ''].filter(Boolean).map(sentences).join(' ');
  return words ? el('span', { class: 'check-how quiet' }, words) : null;
}

/** Draws the key. `path` holds what has to be seen before this check is reached: an answer below carries it along. */
function step(key, about, path) {
  const { tags, addressWith, number } = about;
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
      el('b', { class: 'check-number' }, id.slice(6)), el('span', { class: 'check-name' }, sentence(key.check.name)), el('span', { class: 'check-effort' }, checkWords(key.check)),
      how(key.check)),
    el('ul', { class: 'arms' }, arms));
}

export function keyDiagram(key, about) {
  return el('div', { class: 'key-tree' }, step(key, { ...about, number: { next: 1 } }, []));
}
