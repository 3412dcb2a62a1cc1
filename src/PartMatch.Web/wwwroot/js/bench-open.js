// What is still unknown of a variant, and what would settle most.

import { ask } from './api.js';
import { el, count, partLink, plain, say, sentence } from './format.js';

const most = 8;

const hanging = ({ alone, together }) => [
  alone ? `${count(alone, 'question')} ${alone === 1 ? 'hangs' : 'hang'} on it alone` : '',
  together ? `${together} with other things` : '',
].filter(Boolean).join(', ');

const how = ({ check, minutes, how: text }) =>
  (check ? `${sentence(say('method', check))}, ${minutes} min${text ? `: ${text}` : ''}.` : 'No check is recorded.');

function measure(fault, toPosition) {
  const { name, part } = fault.measure;
  return el('li', null, el('a', { href: toPosition(fault.position) }, sentence(name)), ' of ', partLink(part), `. ${how(fault.measure)} `,
    el('span', { class: 'quiet' }, `${sentence(hanging(fault.unlocks))}.`));
}

function position(fault, toPosition, names) {
  return el('li', null, el('a', { href: toPosition(fault.position) }, names.get(fault.position) ?? plain(fault.position)), '. ',
    el('span', { class: 'quiet' }, fault.unlocks ? `${sentence(hanging(fault.unlocks) || 'no question hangs on it')}.` : ''));
}

/** A place that fills itself; `toPosition(code)` leads to a position on this sheet. */
export function stillOpen(answer, toPosition) {
  const { family, variant } = answer.asked;
  const names = new Map(answer.positions.map(one => [one.position, one.name]));
  const place = el('section', { class: 'open', 'aria-label': 'Still unknown', 'aria-busy': 'true' }, el('h2', null, 'Still unknown'),
    el('p', { class: 'waiting' }, 'Counting …'));
  async function fill() {
    const { counts, measureNext, faults } = await ask(`/api/consistency?${new URLSearchParams({ family, variant, limit: '1000' })}`);
    const open = faults.filter(fault => fault.sort === 'not-recorded' && (fault.unlocks?.alone || fault.unlocks?.together)).slice(0, most);
    const rest = counts['not-recorded'];
    const listed = (title, rows) => (rows.length ? [el('h3', null, title), el('ol', null, rows)] : []);
    place.replaceChildren(el('h2', null, 'Still unknown'),
      el('p', null, `${count(rest, 'position')} not recorded, ${count(counts['missing-value'], 'value')} missing that something reads.`),
      ...listed('Measure next', measureNext.slice(0, most).map(fault => measure(fault, toPosition))),
      ...listed('Look up next', open.map(fault => position(fault, toPosition, names))));
    place.removeAttribute('aria-busy');
  }

  fill().catch(error => {
    place.replaceChildren(el('h2', null, 'Still unknown'), el('p', null, `It could not be counted: ${error.message}.`));
    place.removeAttribute('aria-busy');
  });
  return place;
}
