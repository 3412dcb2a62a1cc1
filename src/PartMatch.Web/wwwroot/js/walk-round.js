// Once round an engine: at each position one check, its answers to be marked; all that is marked goes into the address at once.
// One swapped part deceives a key, which ends at the first that decides; it does not deceive a walk round.

import { count, el, ruled, section, sentence, sentences } from './format.js';
import { balloons, checkWords } from './tell-apart-key.js';

function choices({ position, check, answers }, tags, change) {
  const name = `walk-${position}`;
  const one = (value, text, candidates) => el('label', { class: 'choice' }, el('input', { type: 'radio', name, value, checked: value === '', onchange: change }), el('span', null, text), candidates ? balloons(candidates, tags) : null);
  return el('div', { class: 'choices', role: 'group', 'aria-label': sentence(check.name) }, one('', 'not seen'), answers.map(answer => one(answer.seen, sentence(answer.text), answer.candidates)));
}

function row(stop, tags, change) {
  const { check } = stop;
  const how = [check.how, check.access].filter(Boolean).map(sentences).join(' ');
  return [[sentence(check.name), how ? el('p', { class: 'quiet' }, how) : ''], choices(stop, tags, change), checkWords(check)];
}

/** `addressWith(seen)` is this page with more observations. */
export function walkRound(stops, tags, addressWith) {
  if (!stops?.length) return null;
  const take = el('a', { class: 'button' });
  const nothing = el('span', { class: 'quiet' }, 'Nothing is marked yet.');
  const places = el('div');
  const change = () => {
    const seen = [...places.querySelectorAll('input:checked')].map(box => box.value).filter(Boolean);
    take.textContent = `Take in ${count(seen.length, 'observation')}`;
    take.setAttribute('href', addressWith(seen));
    take.hidden = seen.length === 0;
    nothing.hidden = !take.hidden;
  };
  const table = (caption, list) => (list.length === 0 ? null : ruled(caption, ['Position', 'What is seen', 'Effort'], list.map(stop => row(stop, tags, change)), { className: 'restack walk' }));
  const outside = stops.filter(stop => !stop.check.accessMinutes);
  const inside = stops.filter(stop => stop.check.accessMinutes);
  const last = inside.at(-1)?.check;
  places.append(...[table('Seen from outside', outside),
    inside.length ? el('details', { class: 'inside' }, el('summary', null, `${count(inside.length, 'position')} that something has to come off for, up to ${last.accessMinutes} min away`), table('Seen once it is reached, the soonest first', inside)) : null].filter(Boolean));
  change();
  return section('Once round the engine',
    el('p', null, `The key stops at the first check that decides, so one swapped part deceives it. At ${count(stops.length, 'position')} the variants differ. Mark what you see: a part as on another variant shows up then.`),
    places, el('p', { class: 'actions' }, take, nothing));
}
